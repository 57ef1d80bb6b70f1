// What the screens looked like when somebody last looked at them and said that it is good: small grey pictures in baselines/, by size, theme
// and screen. Plain: one size and theme. After a change that is meant: node tests/pitchside/baselines.mjs --renew, and look at each.
// usage: node tests/pitchside/baselines.mjs [--renew]     as part of the suite: ./test [--long] baselines
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { serveDevPage } from "./dev_server.mjs";
import { halved, readBack, sideBySide, written } from "./grey_picture.mjs";
import { root } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";

const kFolder = join(root, "tests/pitchside/baselines");
const kDiffers = "build/baselines";
const kSizes = [[360, 740], [412, 915], [740, 360]];
const kThemes = { usual: "", sun: "?sun" };
const kNow = "2026-11-26T18:05:00+01:00"; // in the sample's evening

// A pixel differs from 3 of 16 greys on, and a picture where 1 in 3000 do (22 of the smallest). The app's own type is in the page and the picture
// at half its size, so that an edge drawn a little otherwise is less; two runs differ in no pixel, another word of seven letters in some 120.
const kLeastLevels = 3;
const kMostShare = 1 / 3000;

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

function compared(name, is) {
  const file = join(kFolder, `${name}.png`);
  const result = (passed, detail) => ({ name: `baselines: ${name}`, passed, detail });
  if (!existsSync(file)) return result(false, `there is no ${file}; look at the screen, then: node tests/pitchside/baselines.mjs --renew`);
  const was = readBack(readFileSync(file), file);
  let differ = was.width === is.width && was.height === is.height ? 0 : is.levels.length;
  for (let at = 0; at < is.levels.length && differ < is.levels.length; at++) if (Math.abs(is.levels[at] - was.levels[at]) >= kLeastLevels) differ += 1;
  if (differ <= kMostShare * is.levels.length) return result(true, "");
  mkdirSync(kDiffers, { recursive: true });
  const to = join(kDiffers, `${name}.png`);
  writeFileSync(to, written(sideBySide(was, is, kLeastLevels)));
  const share = ((100 * differ) / is.levels.length).toFixed(2);
  return result(false, `${share} % of it is different (at most ${(100 * kMostShare).toFixed(2)} %): as it was, as it is and where, in ${to}. Is it meant? node tests/pitchside/baselines.mjs --renew`);
}

async function lookedAt({ program, wasm, long, renew }) {
  const server = await serveDevPage(samplePackage(program), wasm);
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu", "--font-render-hinting=none", "--disable-lcd-text", "--force-color-profile=srgb"] });
  const results = [];
  try {
    const reader = await browser.newPage();
    const take = async (name, screenshot) => {
      const picture = await halved(reader, screenshot);
      if (renew) writeFileSync(join(kFolder, `${name}.png`), written(picture));
      else results.push(compared(name, picture));
    };
    const kinds = kSizes.flatMap((size) => Object.keys(kThemes).map((theme) => [size, theme]));
    for (const [size, theme] of long ? kinds : kinds.slice(0, 1)) await picturesOf(browser, server.url, size, theme, take);
    return results;
  } finally {
    await browser.close();
    server.close();
  }
}

export const baselines = {
  name: "baselines",
  run: ({ build, wasm, mode }) => lookedAt({ program: join(root, build, "lanework"), wasm, long: mode === "long" }),
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const renew = process.argv.includes("--renew");
  if (renew) {
    rmSync(kFolder, { recursive: true, force: true });
    mkdirSync(kFolder, { recursive: true });
  }
  const results = await lookedAt({ program: join(root, "build/test/lanework"), wasm: "build/wasm/lanework.wasm", long: true, renew });
  if (renew) {
    const sizes = readdirSync(kFolder).map((name) => readFileSync(join(kFolder, name)).length);
    console.log(`${sizes.length} pictures, ${Math.round(sizes.reduce((sum, size) => sum + size, 0) / 1000)} kB, in ${kFolder}: look at each`);
  }
  for (const { name, detail } of results.filter(({ passed }) => !passed)) console.log(`FAILED ${name}\n      ${detail}`);
  process.exit(results.every(({ passed }) => passed) ? 0 : 1);
}
