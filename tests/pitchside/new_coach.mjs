// The real app as a coach goes through it who has never seen it: paired, a code, the first evening read, tonight, laid out,
// run, somebody hurt, wrapped up. A picture of each step, of the whole page where it is longer than the screen.
// usage: node tests/pitchside/new_coach.mjs --pictures FOLDER [--size 360x740] [--language en|es] [--larger] [--right-to-left]
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { Contract } from "../serve/contract.mjs";
import { Demo } from "../serve/server.mjs";
import english from "../../web/pitchside/words/en.json" with { type: "json" };
import spanish from "../../web/pitchside/words/es.json" with { type: "json" };
import { PairedApp } from "./paired_app.mjs";
import { program, root, wasmModule } from "./places.mjs";
import { Way } from "./way.mjs";

const kCode = "482913";
const { values } = parseArgs({
  options: {
    pictures: { type: "string" }, size: { type: "string", default: "360x740" }, language: { type: "string", default: "en" },
    larger: { type: "boolean", default: false }, "right-to-left": { type: "boolean", default: false },
  },
});
if (!values.pictures) {
  console.error("usage: node tests/pitchside/new_coach.mjs --pictures FOLDER [--size 360x740] [--language en|es] [--larger] [--right-to-left]");
  process.exit(2);
}
const [width, height] = values.size.split("x").map(Number);
const words = values.language === "es" ? spanish : english;
const locale = values.language === "es" ? "es-ES" : "en-GB";
mkdirSync(values.pictures, { recursive: true });
process.chdir(root);

// Worn from the first moment, as by a phone that is set so.
const wear = ([larger, rtl]) => document.addEventListener("DOMContentLoaded", () => {
  const sheet = new CSSStyleSheet(); // the page's own rules let no style in between its lines
  sheet.replaceSync(larger ? "html { font-size: 157.5% !important }" : "");
  document.adoptedStyleSheets = [sheet];
  if (rtl) document.documentElement.dir = "rtl";
});

let pictures = 0;
async function take(page, name) {
  await page.waitForTimeout(250);
  const file = (part) => join(values.pictures, `${String(pictures).padStart(2, "0")}-${name}${part}.png`);
  pictures += 1;
  await page.screenshot({ path: file("") });
  const longer = await page.evaluate(() => document.documentElement.scrollHeight > innerHeight + 40);
  if (longer) await page.screenshot({ path: file("-whole"), fullPage: true });
}

async function walk(app) {
  const phone = await app.phone({ viewport: { width, height }, locale, hasTouch: true });
  await phone.context.addInitScript(wear, [values.larger, values["right-to-left"]]);
  const tap = (page, name) => page.getByRole("button", { name, exact: true }).first().click();
  const opened = (await app.lead.post("/api/pairings", { account: app.coach.account })).json;
  const bare = await phone.page(app.between.url);
  await bare.waitForSelector(".pair-form");
  await take(bare, "no-link");
  await bare.close();
  const page = await phone.page(`${app.between.url}/#pair=${opened.link}`);
  await page.waitForSelector(".pair-code");
  await take(page, "read-the-code");
  await app.lead.post(`/api/pairings/${opened.pairing}/confirm`, { code: (await page.textContent(".pair-code")).replace(/\D/g, "") });
  await page.waitForSelector("main button:not([type=submit])");
  await take(page, "paired");
  await page.click("main button");
  await page.waitForSelector("#code-again");
  await take(page, "choose-a-code");
  await page.fill("#code", "123456");
  await page.fill("#code-again", "123456");
  await page.click("form button[type=submit]");
  await page.waitForSelector("#code-fault");
  await take(page, "weak-code");
  await page.fill("#code", kCode);
  await page.fill("#code-again", kCode);
  await page.click("form button[type=submit]");
  await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().waitFor();
  await take(page, "evenings");
  await page.locator(".evenings .evening.main").first().click();
  await page.waitForSelector("main svg");
  await take(page, "tonight");
  await tap(page, words.first.show);
  for (let at = 1; at <= 5; at++) {
    await take(page, `first-evening-${at}`);
    await tap(page, at < 5 ? words.first.on : words.first.ready);
  }
  await page.getByRole("button", { name: `${words.tonight.minutes}: ${words.say.less}` }).click({ clickCount: 4 });
  await page.waitForTimeout(700);
  await take(page, "four-minutes-less");
  await page.locator("summary", { hasText: words.tonight.ground }).click();
  await tap(page, words.tonight.wet);
  await page.waitForTimeout(700);
  await take(page, "wet");
  await page.locator("summary", { hasText: words.tonight.sore }).click();
  await page.getByRole("group", { name: words.sore.who }).getByRole("button").nth(3).click();
  await tap(page, words.place.knee);
  await take(page, "sore");
  await tap(page, words.sore.note);
  await page.waitForTimeout(500);
  await take(page, "sore-noted");
  await page.locator("summary", { hasText: words.tonight.drills }).click();
  await take(page, "the-drills");
  await tap(page, words.tonight.slip);
  await page.waitForSelector("h3");
  await take(page, "partners-and-swaps");
  await tap(page, words.say.close);
  await tap(page, words.tonight.lay_out);
  await take(page, "lay-out");
  await tap(page, words.lay_out.start);
  await page.waitForSelector(".figure svg");
  await take(page, "run");
  for (let drills = 0; drills < 6; drills++) {
    await page.waitForTimeout(1000);
    await tap(page, words.run.done);
  }
  await page.waitForTimeout(1500);
  await take(page, "run-later");
  await tap(page, words.run.easier);
  await take(page, "easier");
  await tap(page, words.run.hurt);
  await take(page, "somebody-hurt");
  await tap(page, words.hurt.to_note);
  await page.getByRole("group", { name: words.hurt.who }).getByRole("button").nth(2).click();
  await take(page, "hurt-who");
  await tap(page, words.hurt.write);
  await take(page, "hurt-noted");
  await tap(page, words.hurt.return);
  await take(page, "back-from-hurt");
  await tap(page, words.run.go_on);
  await page.waitForTimeout(1000);
  await tap(page, words.run.finish_early);
  await take(page, "wrap-up");
  await tap(page, words.wrap_up.most);
  await page.getByRole("group", { name: words.wrap_up.needs_help }).getByRole("button").first().click();
  await take(page, "wrap-up-ready");
  await tap(page, words.wrap_up.finish);
  await page.waitForTimeout(1500);
  await take(page, "finished");
  await tap(page, words.keeping.evenings.back);
  await take(page, "evenings-after");
  await page.evaluate(() => document.querySelectorAll("details").forEach((one) => (one.open = true)));
  await take(page, "all-evenings");
  await tap(page, words.keeping.lock.now);
  await take(page, "locked");
}

const demo = await Demo.make(program());
try {
  const app = await PairedApp.open({ demo, contract: new Contract(), wasm: wasmModule() }, (server) => Way.open(server));
  try {
    await walk(app);
    console.log(`${pictures} steps, in ${values.pictures}`);
  } finally {
    await app.end();
  }
} finally {
  demo.remove();
}
