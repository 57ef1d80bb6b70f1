// What every test of the desk begins with: the real bundle on the real server with the demo's season, a browser, and the
// lead signed in; and what is looked for on every screen.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { bundleDesk } from "../../tools/bundle_desk.mjs";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { Contract } from "../serve/contract.mjs";
import { People } from "../serve/people.mjs";
import { Demo, killAll } from "../serve/server.mjs";

const kAxe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const kPictures = process.env.LANEWORK_PICTURES; // a folder for whoever wants to look
const kClub = new URL("../../demo/quillmere", import.meta.url).pathname;

export const kHostile = [
  '<img src=x onerror="document.title=\'taken\'">',
  "x".repeat(200),
  "فريق العصافير תחת שלוש",
  "👩‍👩‍👧‍👦🏃🏽‍♀️ \u202eesrever",
];
const kPatience = 3; // times an aim of milliseconds, where other things run beside; the aim itself under long

export const kWide = { width: 1920, height: 1080 };
export const kUsual = { width: 1280, height: 800 };
export const kPhone = { width: 412, height: 915 };

// Once for all tests of a run.
export async function openHouse({ build, wasm, mode, program = `${process.cwd()}/${build}/lanework` }) {
  const web = mkdtempSync(join(tmpdir(), "lanework-desk-"));
  await bundlePitchside(web, { door: wasm });
  const { files, first } = await bundleDesk(web, { door: wasm });
  const demo = await Demo.make(program);
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
  const shared = {}; // the server of the tests that only look
  const close = async () => {
    await browser.close();
    await killAll();
    demo.remove();
    rmSync(web, { recursive: true, force: true });
  };
  return { web, files, first, demo, browser, contract: new Contract(), shared, patience: mode === "long" ? 1 : kPatience, close };
}

export class Desk {
  // signed_in: as the lead, by the API; a test of coming in does it by hand. Within five minutes no code is asked for again.
  // only_looks: it enters nothing and counts nothing, so that it may have a server and a session with others of its kind.
  static async open(house, { viewport = kUsual, locale = "en-GB", signed_in = true, role = "lead", folder, flags = ["--plan-from", kClub], only_looks = false } = {}) {
    const desk = new Desk();
    const serve = () => house.demo.serve({ ...(folder && { folder }), flags: ["--web", house.web, ...flags], mayRestart: true });
    if (only_looks) {
      house.shared.server ??= serve(); // once, also where two begin together
      house.shared.caller ??= house.shared.server.then((server) => new People(house.demo, server, house.contract).signIn("lead"));
    }
    desk.only_looks = only_looks;
    desk.server = await (only_looks ? house.shared.server : serve());
    desk.url = `http://127.0.0.1:${desk.server.port}/desk/index.html`;
    desk.people = new People(house.demo, desk.server, house.contract);
    desk.browser = house.browser;
    desk.said = []; // by the browser: faults of the page, refused scripts and styles
    desk.windows = [];
    if (signed_in) desk.caller = await (only_looks ? house.shared.caller : desk.people.signIn(role));
    desk.page = await desk.window({ viewport, locale, cookie: desk.caller?.cookie });
    return desk;
  }

  // Another browser's window: of somebody else, or of the same.
  async window({ viewport = kUsual, locale = "en-GB", cookie } = {}) {
    const context = await this.browser.newContext({ viewport, locale, timezoneId: "Europe/Berlin", reducedMotion: "reduce" });
    this.windows.push(context);
    if (cookie) await context.addCookies([{ name: "lanework", value: cookie, domain: "127.0.0.1", path: "/", httpOnly: true, sameSite: "Strict" }]);
    context.setDefaultTimeout(8000);
    const page = await context.newPage();
    page.on("pageerror", (error) => this.said.push(`error: ${error.message}`));
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type()) && !/status of \d+|ERR_INTERNET_DISCONNECTED/.test(message.text())) this.said.push(message.text());
    });
    return page;
  }

  // A screen by its address, once its heading is there and nothing is waited for.
  async at(hash, page = this.page) {
    await page.goto(`${this.url}${hash}`);
    await this.settled(page);
    return page;
  }

  async settled(page = this.page) {
    await page.waitForSelector("main h1");
    await page.waitForFunction(() => document.querySelector(".waiting") === null);
  }

  async picture(name, page = this.page) {
    if (kPictures) await page.screenshot({ path: join(kPictures, `desk-${name}.png`), fullPage: true });
  }

  // What is wrong with the screen as it stands: axe, text below 15 px, targets below 24 px, anything beside the screen.
  async faults(page = this.page) {
    await page.evaluate(kAxe);
    return page.evaluate(async () => {
      const out = [];
      const { violations } = await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
      for (const one of violations) out.push(`${one.id}: ${one.nodes.map(({ html }) => html).join(" | ").slice(0, 400)}`);
      const open = [...document.querySelectorAll("dialog[open]")].at(-1) ?? document;
      for (const one of open.querySelectorAll("p, h1, h2, li, label, button, input, td, th")) {
        const size = parseFloat(getComputedStyle(one).fontSize);
        if (size < 15) out.push(`${size} px: ${one.textContent}`);
      }
      for (const one of open.querySelectorAll("button, input, select, summary")) {
        const { width, height } = one.getBoundingClientRect();
        const seen = width > 1 && height > 1 && one.type !== "checkbox" && one.type !== "radio";
        if (seen && (width < 24 || height < 24)) out.push(`${width} by ${height}: ${one.outerHTML}`);
      }
      if (document.documentElement.scrollWidth > innerWidth) out.push(`${document.documentElement.scrollWidth} px wide on ${innerWidth}`);
      return out.join("\n");
    });
  }

  // How far the page moved what was already shown, without anybody's doing.
  shifts(page = this.page) {
    return page.evaluate(() => new Promise((resolve) => {
      let sum = 0;
      new PerformanceObserver((list) => {
        for (const one of list.getEntries()) if (!one.hadRecentInput) sum += one.value;
      }).observe({ type: "layout-shift", buffered: true });
      setTimeout(() => resolve(sum), 50);
    }));
  }

  async close() {
    for (const context of this.windows) await context.close();
    if (!this.only_looks) await this.server.stop();
  }
}

export async function withDesk(house, options, work) {
  const desk = await Desk.open(house, options);
  try {
    return [await work(desk), desk.said.join("\n")].find((fault) => fault !== "") ?? "";
  } finally {
    await desk.close();
  }
}
