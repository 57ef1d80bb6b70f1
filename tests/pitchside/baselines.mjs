// What the screens looked like when somebody last looked at them and said that it is good: small grey pictures in baselines/, by size, theme
// and screen. Plain: one size and theme. After a change that is meant: node tests/pitchside/baselines.mjs --renew, and look at each.
// usage: node tests/pitchside/baselines.mjs [--renew]     as part of the suite: ./test [--long] baselines
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { Approved, finish, kSteadyFlags } from "./approved.mjs";
import { serveDevPage } from "./dev_server.mjs";
import { root } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";

const kApproved = { suite: "baselines", folder: join(root, "tests/pitchside/baselines"), differs: "build/baselines", renew: "node tests/pitchside/baselines.mjs --renew" };
const kSizes = [[360, 740], [412, 915], [740, 360]];
const kThemes = { usual: "", sun: "?sun" };
const kNow = "2026-11-26T18:05:00+01:00"; // in the sample's evening

const overlay = (name) => (page) => page.evaluate((shown) => (window.pitch.overlay.value = shown), name);
const happen = (page, event) => page.evaluate((what) => window.pitch.happen(what), event);

// In the order of an evening; each starts from where the one before it left off.
const kScreens = {
  tonight: async () => {},
  settings: overlay("settings"),
  "change-code": overlay("change-code"),
  hurt: overlay("hurt"),
  "lay-out": async (page) => {
    await overlay("none")(page);
    await happen(page, { event: "go", screen: "lay-out" });
  },
  run: async (page) => {
    await page.evaluate((now) => {
      const { pitch } = window;
      const at = Date.parse(now);
      const to = pitch.evening.value.plan.items.findIndex(({ drill }) => drill === "side-plank");
      pitch.happen({ event: "start", at: at - 100_000 });
      for (let item = 0; item < to; item++) pitch.happen({ event: "skip", item, at: at - 95_000 + 2000 * item });
    }, kNow);
    await page.waitForSelector(".figure svg");
  },
  "wrap-up": (page) => happen(page, { event: "go", screen: "wrap-up" }),
};

async function picturesOf(browser, url, size, theme, take) {
  const context = await browser.newContext({ viewport: { width: size[0], height: size[1] }, timezoneId: "Europe/Berlin", locale: "en-GB", reducedMotion: "reduce", deviceScaleFactor: 1 });
  try {
    const page = await context.newPage();
    const faults = [];
    page.on("pageerror", (error) => faults.push(error.message));
    await page.clock.setFixedTime(new Date(kNow));
    await page.goto(url + kThemes[theme]);
    await page.waitForFunction(() => window.pitch?.evening.value.plan && !window.pitch.planning.value);
    for (const [name, go] of Object.entries(kScreens)) {
      await go(page);
      await page.evaluate(async () => {
        await document.fonts.ready;
        scrollTo(0, 0);
        await new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted)));
      });
      await take(`${size.join("x")}-${theme}-${name}`, await page.screenshot({ animations: "disabled", caret: "hide" }));
    }
    if (faults.length > 0) throw new Error(faults.join("\n"));
  } finally {
    await context.close();
  }
}

async function lookedAt({ program, wasm, long, renew }) {
  const server = await serveDevPage(samplePackage(program), wasm);
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: kSteadyFlags });
  try {
    const approved = await Approved.open(kApproved, browser, renew);
    const kinds = kSizes.flatMap((size) => Object.keys(kThemes).map((theme) => [size, theme]));
    for (const [size, theme] of long ? kinds : kinds.slice(0, 1)) await picturesOf(browser, server.url, size, theme, (...picture) => approved.take(...picture));
    return approved;
  } finally {
    await browser.close();
    server.close();
  }
}

export const baselines = {
  name: "baselines",
  run: async ({ build, wasm, mode }) => (await lookedAt({ program: join(root, build, "lanework"), wasm, long: mode === "long" })).results,
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const renew = process.argv.includes("--renew");
  finish(await lookedAt({ program: join(root, "build/test/lanework"), wasm: "build/wasm/lanework.wasm", long: true, renew }));
}
