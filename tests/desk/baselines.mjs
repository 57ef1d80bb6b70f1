// What the desk's screens looked like when somebody last looked at them and said that it is good: small grey pictures in
// baselines/, one a screen and width, of the demo on the real server at one moment. After a change that is meant:
// node tests/desk/baselines.mjs --renew, and look at each.
// usage: node tests/desk/baselines.mjs [--renew]     as part of the suite: ./test desk-baselines
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { bundleDesk } from "../../tools/bundle_desk.mjs";
import { Approved, finish, kSteadyFlags } from "../pitchside/approved.mjs";
import { DemoOfADay } from "../serve/demo_of_a_day.mjs";
import { killAll } from "../serve/server.mjs";
import { kPhone, kUsual } from "./harness.mjs";
import { planned } from "./planned.mjs";

const kApproved = { suite: "desk-baselines", folder: "tests/desk/baselines", differs: "build/desk-baselines", renew: "node tests/desk/baselines.mjs --renew" };
const kMoment = "2026-11-26T17:30:00+01:00"; // the demo's Thursday, before the evening's trainings
const kSquads = ["u13-kestrels", "u10-wrens", "u16-merlins"]; // that have a plan

// By name: the address, and what stands there once all of it is drawn.
const kScreens = {
  week: ["#/week", ".week-table"],
  squad: ["#/squad/u13-kestrels", ".block-table"],
  evening: ["#/squad/u13-kestrels?session=2026-12-01-18.00", ".ribbon-row"],
  drill: ["#/drills/side-plank", "main svg"],
  coaches: ["#/coaches", "tbody tr"],
  injuries: ["#/injuries", "tbody tr"],
  evidence: ["#/evidence?from=2026-08-31&to=2026-11-25", "main h2"],
  people: ["#/people", "tbody tr"],
  releases: ["#/releases", "main h1"],
  "set-up": ["#/set-up", "main input"],
};

async function picturesOf(browser, { demo, url, viewport }, take) {
  const context = await browser.newContext({ viewport, timezoneId: "Europe/Berlin", locale: "en-GB", reducedMotion: "reduce", deviceScaleFactor: 1 });
  await context.addCookies([{ name: "lanework", value: demo.lead.cookie, domain: "127.0.0.1", path: "/", httpOnly: true, sameSite: "Strict" }]);
  const page = await context.newPage();
  const faults = [];
  page.on("pageerror", (error) => faults.push(error.message));
  await page.clock.setFixedTime(new Date(kMoment));
  for (const [name, [hash, until]] of Object.entries(kScreens)) {
    await page.goto("about:blank");
    await page.goto(`${url}${hash}`);
    await page.waitForSelector(until);
    await page.waitForFunction(() => document.querySelector(".waiting") === null);
    await page.waitForLoadState("networkidle");
    await page.evaluate(async () => {
      await document.fonts.ready;
      await new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted)));
    });
    await take(`${viewport.width}-${name}`, await page.screenshot({ animations: "disabled", caret: "hide" }));
  }
  await context.close();
  if (faults.length > 0) throw new Error(faults.join("\n"));
}

async function lookedAt({ program, wasm, renew }) {
  const web = mkdtempSync(join(tmpdir(), "lanework-desk-"));
  await bundleDesk(web, { door: wasm });
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: kSteadyFlags });
  try {
    const approved = await Approved.open(kApproved, browser, renew);
    const demo = await DemoOfADay.open(program, { moment: kMoment, flags: ["--web", web, "--plan-from", "demo/quillmere"] });
    await planned({ caller: demo.lead }, kSquads);
    const url = `http://127.0.0.1:${demo.server.port}/desk/index.html`;
    for (const viewport of [kUsual, kPhone]) await picturesOf(browser, { demo, url, viewport }, (...picture) => approved.take(...picture));
    await demo.close();
    return approved;
  } finally {
    await browser.close();
    await killAll();
    rmSync(web, { recursive: true, force: true });
  }
}

export const deskBaselines = {
  name: "desk-baselines",
  run: async ({ build, wasm }) => (await lookedAt({ program: `${process.cwd()}/${build}/lanework`, wasm })).results,
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  finish(await lookedAt({ program: `${process.cwd()}/build/test/lanework`, wasm: "build/wasm/lanework.wasm", renew: process.argv.includes("--renew") }));
}
