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
  async kill() {
    process.kill(this.process, "SIGKILL");
    await this.context.close().catch(() => {});
  }

  async remove() {
    phones.delete(this);
    await this.context.close().catch(() => {});
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

export const removeAll = () => Promise.all([...phones].map((phone) => phone.remove()));
