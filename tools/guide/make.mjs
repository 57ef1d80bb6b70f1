// Makes the pictures of docs/guide anew: the demo that ./run serves, on one day, gone through in Chromium. Look at each.
// usage: node tools/guide/make.mjs [phone | desk] [--program build/release/lanework] [--wasm build/wasm/lanework.wasm]
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { chromium } from "playwright-core";
import { kSteadyFlags } from "../../tests/pitchside/approved.mjs";
import { removeAll } from "../../tests/pitchside/phone.mjs";
import { planned } from "../../tests/desk/planned.mjs";
import { DemoOfADay } from "../../tests/serve/demo_of_a_day.mjs";
import { killAll } from "../../tests/serve/server.mjs";
import { bundleDesk } from "../bundle_desk.mjs";
import { bundlePitchside } from "../bundle_pitchside.mjs";
import { inFewColours } from "../picture/few_colours.mjs";
import { deskPictures } from "./desk_pictures.mjs";
import { phonePictures } from "./phone_pictures.mjs";

const kFolder = "docs/guide/pictures";
const kMoment = "2026-11-26T17:30:00+01:00"; // the demo's Thursday, before the evening's trainings

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { program: { type: "string", default: "build/release/lanework" }, wasm: { type: "string", default: "build/wasm/lanework.wasm" } },
});
const wanted = (part) => positionals.length === 0 || positionals.includes(part);

const web = mkdtempSync(join(tmpdir(), "lanework-guide-"));
await bundlePitchside(web, { door: values.wasm });
await bundleDesk(web, { door: values.wasm });
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: kSteadyFlags });
try {
  mkdirSync(kFolder, { recursive: true });
  const demo = await DemoOfADay.open(resolve(values.program), { moment: kMoment, flags: ["--web", web, "--plan-from", "demo/quillmere"] });
  await planned({ caller: demo.lead });
  const reader = await browser.newPage();
  const take = async (name, page) => {
    await page.evaluate(() => document.fonts.ready);
    const picture = await inFewColours(reader, await page.screenshot({ animations: "disabled", caret: "hide" }));
    writeFileSync(join(kFolder, `${name}.png`), picture);
    console.log(`${name}.png, ${Math.round(picture.length / 1000)} kB`);
  };
  const url = `http://127.0.0.1:${demo.server.port}`;
  if (wanted("desk")) await deskPictures(browser, demo, `${url}/desk/index.html`, kMoment, take);
  if (wanted("phone")) await phonePictures(demo, url, kMoment, take);
  await demo.close();
} finally {
  await browser.close();
  await removeAll();
  await killAll();
  rmSync(web, { recursive: true, force: true });
}
