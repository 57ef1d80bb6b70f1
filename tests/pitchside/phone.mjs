// A phone: Chromium with a folder of its own, which lives on when the browser is killed.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const kFlags = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
const phones = new Set();

// The browser's own process is the one with our folder and of no type.
function processOf(folder) {
  return readdirSync("/proc").filter((name) => /^\d+$/.test(name)).map(Number).find((id) => {
    try {
      const words = readFileSync(`/proc/${id}/cmdline`, "utf8").split("\0");
      return words.includes(`--user-data-dir=${folder}`) && !words.some((word) => word.startsWith("--type="));
    } catch {
      return false;
    }
  });
}

// It and all that it began, the browser's own processes for storage and pages among them.
function familyOf(id) {
  const parents = new Map();
  for (const name of readdirSync("/proc").filter((one) => /^\d+$/.test(one))) {
    try {
      const said = readFileSync(`/proc/${name}/stat`, "utf8");
      parents.set(Number(name), Number(said.slice(said.lastIndexOf(")") + 2).split(" ")[1]));
    } catch {
      // It has ended meanwhile.
    }
  }
  const family = [id];
  for (const one of family) for (const [child, parent] of parents) if (parent === one) family.push(child);
  return family;
}

const ended = (id) => {
  try {
    return readFileSync(`/proc/${id}/stat`, "utf8").includes(") Z ");
  } catch {
    return true;
  }
};

export class Phone {
  static async make(options = {}) {
    const phone = new Phone();
    phone.folder = mkdtempSync(join(tmpdir(), "lanework-phone-"));
    phone.options = options;
    phone.said = [];
    phones.add(phone);
    await phone.open();
    return phone;
  }

  async open() {
    this.context = await chromium.launchPersistentContext(this.folder, { executablePath: "/usr/bin/chromium", args: kFlags, viewport: { width: 360, height: 740 }, locale: "en-GB", ...this.options });
    this.process = processOf(this.folder);
  }

  async page(url) {
    const page = await this.context.newPage();
    page.on("console", (message) => this.said.push(message.text()));
    page.on("pageerror", (error) => this.said.push(`error: ${error.message}`));
    await page.goto(url);
    return page;
  }

  // A page of harness.ts, ready.
  async lane(url) {
    const page = await this.page(url);
    await page.waitForFunction(() => window.lane ?? window.laneFault);
    const fault = await page.evaluate(() => window.laneFault);
    if (fault) throw new Error(fault);
    return page;
  }

  // As when the battery dies: nothing is told to end.
  // All of the browser at once: a part that outlived the rest would write beside the next one, and no battery dies so.
  async kill() {
    const family = familyOf(this.process);
    for (const id of family) {
      try {
        process.kill(id, "SIGKILL");
      } catch {
        // It went with its parent.
      }
    }
    await this.context.close().catch(() => {});
    for (const from = Date.now(); !family.every(ended) && Date.now() - from < 5000;) await new Promise((resolve) => setTimeout(resolve, 20));
  }

  async remove() {
    phones.delete(this);
    await this.context.close().catch(() => {});
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

export const removeAll = () => Promise.all([...phones].map((phone) => phone.remove()));
