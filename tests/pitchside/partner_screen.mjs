// Run with drills that have a partner or things: they are drawn and move beside the figure, the partner in thinner ink behind it, and
// stand still for whoever wants less motion. The sample's side plank is given their figures. --pictures FOLDER keeps a picture of each.
import assert from "node:assert/strict";
import { join } from "node:path";
import { after, test } from "node:test";
import { chromium } from "playwright-core";
import { serveDevPage } from "./dev_server.mjs";
import { costOfFrames } from "./frames.mjs";
import { program, wasmModule } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";

const at = process.argv.indexOf("--pictures");
const pictures = at >= 0 ? process.argv[at + 1] : undefined;
const long = process.argv.includes("--long");
const kFrameMilliseconds = 8;

const pack = samplePackage(program());
const drillOf = (id) => pack.catalogue.drills.find((drill) => drill.id === id);
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium" });
after(() => browser.close());

// A page on Run, at the side plank with that figure, and what the test does there.
async function run(figure, name, settings, work) {
  const plank = drillOf("side-plank");
  const drills = pack.catalogue.drills.map((drill) => (drill === plank ? { ...plank, figure, rung_figure: undefined } : drill));
  const server = await serveDevPage(JSON.parse(JSON.stringify({ ...pack, catalogue: { ...pack.catalogue, drills } })), wasmModule());
  const context = await browser.newContext({ viewport: { width: 412, height: 915 }, locale: "en-GB", ...settings });
  try {
    const page = await context.newPage();
    const faults = [];
    page.on("pageerror", (error) => faults.push(error.message));
    await page.goto(server.url);
    await page.waitForFunction(() => window.pitch?.evening.value.plan && !window.pitch.planning.value);
    await page.evaluate(() => {
      const { pitch } = window;
      const now = Date.now();
      const to = pitch.evening.value.plan.items.findIndex(({ drill }) => drill === "side-plank");
      pitch.happen({ event: "start", at: now - 100_000 });
      for (let item = 0; item < to; item++) pitch.happen({ event: "skip", item, at: now - 95_000 + 2000 * item });
    });
    await page.waitForSelector(".figure svg");
    await work(page, context);
    if (pictures) await page.screenshot({ path: join(pictures, `run-${name}.png`) });
    assert.deepEqual(faults, []);
  } finally {
    await context.close();
    server.close();
  }
}

const drawn = (page) =>
  page.evaluate(() => {
    const svg = document.querySelector(".figure svg");
    const of = (name) => svg.querySelector(`[data-body="${name}"]`);
    return {
      order: [...svg.querySelectorAll("[data-body], [data-prop]")].map(({ dataset }) => dataset.body ?? "thing"),
      figure: of("figure").outerHTML,
      partner: of("partner")?.outerHTML,
      things: [...svg.querySelectorAll("[data-prop]")].map((one) => one.getAttribute("transform")),
      lines: ["figure", "partner"].map((name) => Number(of(name)?.querySelector("circle").getAttribute("stroke-width"))),
    };
  });

test("a partner moves too, behind the figure and in thinner ink", () =>
  run(drillOf("pair-squat").figure, "pair-squat", {}, async (page) => {
    const first = await drawn(page);
    assert.deepEqual(first.order, ["partner", "figure"]);
    assert.ok(first.lines[1] < first.lines[0] / 2, `${first.lines}`);
    await page.waitForTimeout(700);
    const later = await drawn(page);
    assert.notEqual(later.figure, first.figure);
    assert.notEqual(later.partner, first.partner);
  }));

test("a ball goes along with the hands, before the figure", () =>
  run(drillOf("ball-around-the-body").figure, "ball-around-the-body", {}, async (page) => {
    const first = await drawn(page);
    assert.deepEqual(first.order, ["figure", "thing"]);
    await page.waitForTimeout(700);
    assert.notDeepEqual((await drawn(page)).things, first.things);
  }));

test("what stands on the ground stays, and is behind", () =>
  run(drillOf("kneeling-hamstring-lower-at-bar").figure, "kneeling-hamstring-lower-at-bar", {}, async (page) => {
    const first = await drawn(page);
    assert.deepEqual(first.order, ["thing", "thing", "thing", "figure"]);
    await page.waitForTimeout(700);
    const later = await drawn(page);
    assert.deepEqual(later.things, first.things);
    assert.notEqual(later.figure, first.figure);
  }));

test("whoever wants less motion sees the card's picture, partner and all, and it stands still", () =>
  run(drillOf("kneeling-hamstring-lower").figure, "kneeling-hamstring-lower-still", { reducedMotion: "reduce" }, async (page) => {
    const first = await drawn(page);
    assert.ok(first.partner);
    await page.waitForTimeout(700);
    assert.deepEqual(await drawn(page), first);
    const main = await page.evaluate(async () => {
      const { items } = window.pitch.evening.value.plan;
      const { drill, rung } = items.find((item) => item.drill === "side-plank");
      const { frames, main } = await window.pitch.figure(drill, rung);
      return [main, Math.round(frames[main].head.x), Number(document.querySelector(".figure [data-body=figure] [data-head]").getAttribute("cx"))];
    });
    assert.ok(main[0] > 0, "the card's picture is the first frame of this drill");
    assert.equal(main[2], main[1]);
  }));

for (const id of long || pictures ? ["back-to-back-ball-pass", "leg-swings-partner", "shoulder-contact-jump", "shadow-a-partner", "wall-drives", "one-leg-ball-throw", "adductor-hold-partner", "walking-lunge"] : []) {
  test(`${id} is drawn and moves`, () =>
    run(drillOf(id).figure, id, {}, async (page) => {
      const first = await drawn(page);
      await page.waitForTimeout(600);
      const later = await drawn(page);
      assert.ok(first.order.length > 1);
      if (drillOf(id).figure.cycle !== "hold") assert.notEqual(later.figure, first.figure);
    }));
}

if (long) {
  for (const id of ["squat", "pair-squat", "mirror-jump", "back-to-back-ball-pass"]) {
    test(`a frame of ${id} is within its budget on a slow phone`, () =>
      run(drillOf(id).figure, `${id}-cost`, {}, async (page, context) => {
        const frames = await costOfFrames({ context }, page, { slowdown: 4, seconds: 6 });
        console.log(`# ${id}: ${frames.mean.toFixed(1)} ms a frame, median ${frames.median.toFixed(1)}, one in twenty above ${frames.nineteenth.toFixed(1)}, ${frames.count} frames`);
        assert.ok(frames.mean <= kFrameMilliseconds && frames.count > 60, `${frames.mean} ms of ${frames.count} frames`);
      }));
  }
}
