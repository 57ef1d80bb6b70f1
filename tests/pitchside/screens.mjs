// The screens in a browser over a sample package, with the real worker and the real door: what a thumb, an eye and a
// screen reader need of each of them. --pictures FOLDER keeps a picture of each.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { after, test } from "node:test";
import { chromium } from "playwright-core";
import { serveDevPage } from "./dev_server.mjs";
import { program, wasmModule } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";

const at = process.argv.indexOf("--pictures");
const pictures = at >= 0 ? process.argv[at + 1] : undefined;
const long = process.argv.includes("--long");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const kTags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

const server = await serveDevPage(samplePackage(program()), wasmModule());
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium" });
after(async () => {
  await browser.close();
  server.close();
});

const overlay = (name) => (page) => page.evaluate((shown) => (window.pitch.overlay.value = shown), name);
const happen = (page, event) => page.evaluate((what) => window.pitch.happen(what), event);
const openAll = (page) => page.evaluate(() => document.querySelectorAll("details").forEach((each) => (each.open = true)));

// In the order of an evening; each starts from where the one before it left off.
const kScreens = {
  tonight: async () => {},
  ...Object.fromEntries(
    ["way", "before", "tell", "good", "stop"].map((name, at) => [
      `first-${name}`,
      (page) => page.getByRole("button", { name: at === 0 ? "Show me" : "Go on" }).click(),
    ]),
  ),
  "tonight-open": async (page) => {
    await page.getByRole("button", { name: "To tonight" }).or(page.getByRole("button", { name: "Not now" })).click();
    await happen(page, { event: "facts", facts: { surface: ["wet"], minutes: 15 } });
    await page.waitForFunction(() => window.pitch.evening.value.before && !window.pitch.planning.value);
    await openAll(page);
    await page.getByRole("button", { name: "Swap" }).nth(6).click();
    await page.waitForSelector(".choices");
    await page.getByRole("group", { name: "Who?" }).getByRole("button").first().click();
  },
  slip: async (page) => {
    await overlay("slip")(page);
    await page.waitForSelector("h3");
  },
  settings: overlay("settings"),
  "change-code": async (page) => {
    await page.getByRole("button", { name: "Change the code" }).click();
    for (const [id, code] of [["old", "111112"], ["new", "730164"], ["again", "730164"]]) await page.fill(`#code-${id}`, code);
    await page.locator(".bar .main").click();
    await page.waitForSelector("text=Tries left: 14. The next try in 30 seconds.");
  },
  hurt: async (page) => {
    await overlay("hurt")(page);
    await page.getByRole("group", { name: "Who?" }).getByRole("button").nth(2).click();
  },
  "lay-out": async (page) => {
    await overlay("none")(page);
    await happen(page, { event: "go", screen: "lay-out" });
  },
  "run-lane": (page) => happen(page, { event: "start", at: Date.now() - 60000 }),
  "run-hold": async (page) => {
    await page.evaluate(() => {
      const { pitch } = window;
      const to = pitch.evening.value.plan.items.findIndex((item) => item.drill === "side-plank");
      for (let item = 0; item < to; item++) pitch.happen({ event: "skip", item, at: Date.now() - 55000 + 2000 * item });
    });
    await page.waitForSelector("text=Side plank");
  },
  "run-paused": (page) => page.getByRole("button", { name: "Pause" }).click(),
  "wrap-up": (page) => page.getByRole("button", { name: "End here" }).click(),
  finished: async (page) => {
    await page.getByRole("button", { name: "Most" }).click();
    await page.getByRole("button", { name: "Finish" }).click();
    await page.waitForSelector("text=Written down");
  },
};

async function opened(query, size = [360, 740]) {
  const context = await browser.newContext({ viewport: { width: size[0], height: size[1] } });
  const page = await context.newPage();
  const errors = [];
  page.on("pageerror", (error) => errors.push(error.message));
  await page.goto(server.url + query);
  await page.waitForSelector("svg");
  return { context, page, errors };
}

// All that is measured of a screen, in one question to the page: everything that can be tapped is at least 48 px both
// ways, and no two closer than 8 px; no text is below 18 px; nothing is wider than the screen; and where the main
// button is.
const measured = (page) =>
  page.evaluate(() => {
    const targets = [];
    const boxes = [];
    for (const each of document.querySelectorAll("button, a, summary, label.tick")) {
      if (!each.checkVisibility()) continue; // inside a details that is shut
      const box = each.getBoundingClientRect();
      if (box.width < 48 || box.height < 48) targets.push(`${each.textContent}: ${box.width} × ${box.height}`);
      if (each.matches("button, a")) boxes.push({ name: each.textContent, bar: each.closest(".bar, .head"), box });
    }
    boxes.forEach((one, at) => {
      for (const other of boxes.slice(at + 1)) {
        if (one.bar !== other.bar) continue;
        const across = Math.max(one.box.left, other.box.left) - Math.min(one.box.right, other.box.right);
        const down = Math.max(one.box.top, other.box.top) - Math.min(one.box.bottom, other.box.bottom);
        if (Math.max(across, down) < 7.9) targets.push(`${one.name} and ${other.name}: ${Math.max(across, down)} apart`);
      }
    });
    const texts = [...document.querySelectorAll(".pitchside *")]
      .filter((each) => [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim()))
      .filter((each) => parseFloat(getComputedStyle(each).fontSize) < 18)
      .map((each) => `${each.textContent}: ${getComputedStyle(each).fontSize}`);
    const { scrollWidth, clientWidth } = document.documentElement;
    const main = [...document.querySelectorAll("button.main")].pop()?.getBoundingClientRect();
    return { targets, texts, wider: scrollWidth - clientWidth, main: main && { top: main.top, bottom: main.bottom } };
  });

// axe-core: WCAG 2.2 AA, and in the sun AAA of contrast.
async function audit(page, name, worn) {
  const sun = worn.sun ?? false;
  await page.evaluate((source) => window.axe ?? (0, eval)(source), axe);
  const { violations } = await page.evaluate(
    ([tags, strict, colours]) =>
      window.axe.run(document, {
        runOnly: colours ? { type: "rule", values: ["color-contrast"] } : tags,
        rules: colours ? {} : {
          "target-size": { enabled: false }, // ours is the stricter, and knows what only lies under the bar for now
          ...(strict ? { "color-contrast-enhanced": { enabled: true } } : {}),
        },
      }),
    [sun ? [...kTags, "wcag2aaa"] : kTags, sun, worn.audited === "colours" && !long],
  );
  const told = violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.html).join(" ")}`);
  assert.deepEqual(told, [], `${name}: axe`);
}

// One page takes every look in turn, each screen at a time: a browser's page costs more than what is asked of it.
// 'audited': by the rule engine too, in the short run; in the long one all are.
const kLarger = "157.5%"; // 18 px and two fifths more
const kLooks = [
  { name: "360x740", size: [360, 740], audited: "colours" }, // all else is the same as in the sun
  { name: "412x915-sun", size: [412, 915], sun: true, audited: "whole" },
  { name: "740x360", size: [740, 360], longer: true },
  { name: "740x360-sun-left", size: [740, 360], sun: true, left: true },
  { name: "360x740-sun", size: [360, 740], sun: true, longer: true },
  { name: "412x915", size: [412, 915], longer: true },
  { name: "320-px-wide", size: [320, 640], stretched: true },
  { name: "larger-text", size: [360, 740], letters: kLarger, stretched: true },
  { name: "larger-text-on-its-side", size: [740, 360], letters: kLarger, stretched: true },
  { name: "right-to-left", size: [360, 740], rtl: true, stretched: true },
];

async function wear(page, { size, sun = false, left = false, letters = "", rtl = false }) {
  await page.setViewportSize({ width: size[0], height: size[1] });
  await page.evaluate(
    ([sun, left_handed, letters, dir]) => {
      const { preferences } = window.pitch;
      preferences.value = { ...preferences.value, sun, left_handed };
      document.documentElement.style.setProperty("font-size", letters, "important");
      document.documentElement.dir = dir;
      window.scrollTo(0, 0);
      return new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
    },
    [sun, left, letters, rtl ? "rtl" : ""],
  );
}

async function look(page, screen, worn) {
  await wear(page, worn);
  const name = `${screen} at ${worn.name}`;
  if (pictures) await page.screenshot({ path: join(pictures, `${worn.name}-${screen}.png`), fullPage: worn.size[0] < worn.size[1] });
  const { targets, texts, wider, main } = await measured(page);
  assert.deepEqual(targets, [], `${name}: targets`);
  assert.deepEqual(texts, [], `${name}: text`);
  assert.ok(wider <= 0, `${name} scrolls sideways`);
  if (worn.stretched) {
    assert.ok(!main || (main.top >= 0 && main.bottom <= worn.size[1] + 1), `${name}: the main button is out of sight`);
  } else if (long || worn.audited === "whole" || (worn.audited === "colours" && kColoured.includes(screen))) {
    await audit(page, name, worn);
  }
}

// Between them they have every part in every colour.
const kColoured = ["tonight-open", "hurt", "lay-out", "run-hold", "wrap-up", "finished"];
const kTextAlone = ["first-before", "first-tell", "first-stop", "settings"]; // two looks are enough in the short run

test("every screen in every look: targets, text, nothing sideways, axe clean", async () => {
  const { context, page, errors } = await opened("");
  for (const [name, go] of Object.entries(kScreens)) {
    await go(page);
    const looks = kLooks.filter((worn) => long || pictures || !(worn.longer || (kTextAlone.includes(name) && !worn.audited)));
    for (const worn of looks) await look(page, name, worn);
    await wear(page, kLooks[0]);
  }
  assert.deepEqual(errors, []);
  await context.close();
});

test("Spanish has every word, the drills' too, which are fetched when it is set and not before", async () => {
  const { context, page } = await opened("");
  const asked = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.reload();
  await page.getByRole("button", { name: "Settings" }).click();
  assert.ok(!asked.includes("/drills-es.json"), `${asked}`);
  await page.getByRole("button", { name: "Español" }).click();
  await page.getByRole("button", { name: "Cerrar" }).click();
  await page.getByText("Los ejercicios", { exact: true }).click();
  await page.waitForSelector("text=Vueltas suaves a la calle");
  assert.equal(asked.filter((path) => path === "/drills-es.json").length, 1);
  assert.equal(await page.locator("html").getAttribute("lang"), "es");
  await page.getByRole("button", { name: "Montar" }).click();
  await page.getByRole("button", { name: "Empezar" }).click();
  assert.equal(await page.getByRole("button", { name: "Hecho", exact: true }).count(), 1);
  assert.equal(await page.locator("h1").textContent(), "Vueltas suaves a la calle");
  assert.match(await page.locator(".where").textContent(), /3 pasadas.*un ritmo constante/);
  const said = await page.locator("main").textContent();
  for (const words of ["Trota por la calle", "Cae sin ruido", "hacen carreras entre ellos", "Sin aliento a ritmo suave"]) assert.ok(said.includes(words), words);
  assert.match(await page.locator(".next").textContent(), /Pasos laterales, 2 pasadas/);
  if (pictures) await page.screenshot({ path: join(pictures, "spanish-run.png") });
  await context.close();
});

test("a reload in the middle of a hold goes on at the drill and the second, and enters nothing again", async () => {
  const { context, page } = await opened("");
  for (const name of ["tonight", "lay-out", "run-lane", "run-hold"]) await kScreens[name](page);
  await page.evaluate(() => {
    const kept = JSON.parse(sessionStorage.getItem("evening"));
    kept.run.item_since = Date.now() - 31000;
    sessionStorage.setItem("evening", JSON.stringify(kept));
  });
  const before = await page.evaluate(() => window.entered.length);
  await page.reload();
  await page.waitForSelector(".clock");
  assert.equal(await page.locator("h1").textContent(), "Side plank");
  const seconds = await page.evaluate(() => (Date.now() - window.pitch.evening.value.run.item_since) / 1000);
  assert.ok(seconds >= 31 && seconds < 40);
  assert.equal(await page.evaluate(() => window.entered.length), before);
  await context.close();
});

test("a late run is offered a shorter rest, which the door plans", async () => {
  const { context, page } = await opened("");
  for (const name of ["tonight", "lay-out", "run-lane", "run-hold"]) await kScreens[name](page);
  const before = await page.evaluate(() => {
    const kept = JSON.parse(sessionStorage.getItem("evening"));
    kept.run.ends = Date.now() + 5 * 60000;
    sessionStorage.setItem("evening", JSON.stringify(kept));
    return kept.plan.items.slice(kept.run.item + 1).reduce((sum, item) => sum + item.takes_seconds, 0);
  });
  await page.reload();
  await page.getByRole("button", { name: "Shorten the rest" }).click();
  await page.waitForSelector("text=Shortened");
  const left = await page.evaluate(() => {
    const { plan, run } = window.pitch.evening.value;
    return plan.items.slice(run.item + 1).reduce((sum, item) => sum + item.takes_seconds, 0);
  });
  assert.ok(left > 0 && left < before, `${left} of ${before}`);
  await context.close();
});

test("with two minutes left something is kept, with none it is said and the end offered", async () => {
  const { context, page } = await opened("");
  for (const name of ["tonight", "lay-out", "run-lane", "run-hold"]) await kScreens[name](page);
  const endsIn = async (seconds) => {
    await page.evaluate((left) => {
      const kept = JSON.parse(sessionStorage.getItem("evening"));
      kept.run.item_since = Date.now() - 100000;
      kept.run.ends = Date.now() + left * 1000;
      sessionStorage.setItem("evening", JSON.stringify(kept));
    }, seconds);
    await page.reload();
    await page.getByRole("button", { name: "Shorten the rest" }).click();
  };
  const left = () => page.evaluate(() => window.pitch.evening.value.plan.items.length - window.pitch.evening.value.run.item - 1);
  const before = await left();
  await endsIn(120);
  await page.waitForSelector("text=Shortened");
  assert.ok((await left()) > 0 && (await left()) < before, `${await left()} of ${before}`);
  await endsIn(5);
  await page.waitForSelector("text=No drill fits");
  await page.getByRole("status").getByRole("button", { name: "End here" }).click();
  await page.waitForSelector("text=How many did it as shown?");
  await context.close();
});

test("a drill is swapped for one of the two nearest, whose cost is told, and back", async () => {
  const { context, page } = await opened("");
  await page.getByText("The drills", { exact: true }).click();
  const plank = page.getByRole("group", { name: "Side plank", exact: true });
  await plank.getByRole("button", { name: "Swap" }).click();
  const choices = page.getByRole("group", { name: "Instead of Side plank" }).getByRole("button");
  await choices.first().waitFor();
  assert.equal(await choices.count(), 2);
  if (pictures) await page.screenshot({ path: join(pictures, "swap.png"), fullPage: true });
  assert.match(await choices.first().textContent(), /(longer|shorter|As long).*Done by 18:/);
  const name = await choices.first().locator("strong").textContent();
  await choices.first().click();
  const planned = (drill) => page.waitForFunction((id) => window.pitch.evening.value.plan.items.some((item) => item.name === id), drill);
  await planned(name);
  assert.equal(await plank.count(), 0);
  await page.getByRole("button", { name: "Side plank: Do it after all" }).click();
  await planned("Side plank");
  await page.waitForFunction(() => window.pitch.evening.value.facts.pins.length === 0);
  await context.close();
});

test("a first evening is offered until it is put away or read, and found again in the settings", async () => {
  const { context, page } = await opened("");
  await page.getByRole("button", { name: "Not now" }).click();
  assert.equal(await page.getByRole("button", { name: "Show me" }).count(), 0);
  await page.getByRole("button", { name: "Settings" }).click();
  await page.getByRole("button", { name: "First evening, to read again" }).click();
  for (let at = 0; at < 3; at++) await page.getByRole("button", { name: "Go on" }).click();
  const good = await page.locator("main").textContent();
  const { how, cues } = await page.evaluate(() => window.pitch.pack.catalogue.drills.find((drill) => drill.id === "jump-and-stick"));
  for (const words of ["Quality before speed", how, cues[0]]) assert.ok(good.includes(words), words);
  assert.equal(await page.locator("main section").count(), 8);
  await page.getByRole("button", { name: "Go on" }).click();
  assert.ok((await page.locator("main").textContent()).includes("Millrace Lane 9"));
  await page.getByRole("button", { name: "To tonight" }).click();
  assert.equal(await page.evaluate(() => window.pitch.preferences.value.first_evening), "read");
  await context.close();
});

test("the phone's way back closes what lies over the evening, and its button leaves no trace", async () => {
  const { context, page } = await opened("");
  const hurt = page.getByRole("heading", { name: "Someone is hurt" });
  const length = await page.evaluate(() => history.length);
  await page.getByRole("button", { name: "Someone is hurt" }).click();
  await hurt.waitFor();
  await page.evaluate(() => history.back());
  await hurt.waitFor({ state: "detached" });
  assert.equal(await page.getByRole("heading", { name: "26 November" }).count(), 1);
  for (let times = 0; times < 2; times++) {
    await page.getByRole("button", { name: "Settings" }).click();
    await page.getByRole("button", { name: "Close" }).click();
    await page.waitForFunction(() => !history.state);
  }
  assert.equal(await page.evaluate(() => history.length), length + 1);
  assert.equal(await page.getByRole("button", { name: "Lay out" }).count(), 1);
  await context.close();
});

test("an evening is headed 'Tonight' on its own day, and by its day on any other", async () => {
  for (const [now, language, title] of [
    ["2026-11-26T18:05:00+01:00", "en", "Tonight"],
    ["2026-11-25T18:05:00+01:00", "en", "Thursday 26 November"],
    ["2026-11-25T18:05:00+01:00", "es", "jueves, 26 de noviembre"],
  ]) {
    const context = await browser.newContext({ viewport: { width: 360, height: 740 }, timezoneId: "Europe/Berlin" });
    const page = await context.newPage();
    await page.clock.setFixedTime(new Date(now));
    await page.goto(`${server.url}?language=${language}`);
    assert.equal(await page.locator("h1").textContent(), title);
    await context.close();
  }
});

test("on its side what is tapped next stands beside the head, and most of the height is left", async () => {
  const { context, page } = await opened("", [740, 360]);
  for (const name of ["tonight", "lay-out", "wrap-up"]) {
    await happen(page, { event: "go", screen: name });
    await page.evaluate(() => scrollTo(0, 500));
    const [head, bar] = await page.evaluate(() => [".head", ".bar"].map((part) => document.querySelector(part).getBoundingClientRect().toJSON()));
    assert.ok(bar.top >= 0 && bar.bottom <= 110 && head.bottom <= 110 && bar.left >= head.right - 1, `${name}: ${JSON.stringify([head, bar])}`);
  }
  await context.close();
});

test("four minutes on Tonight can be planned and laid out", async () => {
  const { context, page } = await opened("");
  await happen(page, { event: "facts", facts: { minutes: 4 } });
  await page.waitForSelector("text=Under five minutes");
  await page.waitForFunction(() => window.pitch.evening.value.plan.slot_seconds === 240);
  await page.getByRole("button", { name: "Lay out" }).click();
  await page.waitForSelector("text=Lane");
  await context.close();
});

test("a note of somebody hurt takes two taps and is entered once", async () => {
  const { context, page } = await opened("");
  for (const name of ["tonight", "lay-out", "run-lane"]) await kScreens[name](page);
  await page.getByRole("button", { name: "Someone is hurt" }).click();
  assert.match(await page.locator("main").textContent(), /If in doubt, sit them out and get help/);
  assert.match(await page.locator("dl").textContent(), /Way ingate B.*Defibrillatorclub house/);
  await page.getByRole("button", { name: "To the note" }).click();
  assert.ok((await page.getByRole("heading", { name: "Ten-second note" }).boundingBox()).y < 200);
  assert.equal(await page.getByRole("link", { name: "Call 112" }).getAttribute("href"), "tel:112");
  await page.getByRole("button", { name: "4 Dáithí" }).click();
  await page.getByRole("button", { name: "Knee" }).click();
  await page.getByRole("button", { name: "Note it" }).click();
  const hurt = await page.evaluate(() => window.entered.filter((entry) => entry.kind === "hurt"));
  assert.deepEqual(hurt, [{ kind: "hurt", player: "Q04", place: "knee" }]);
  await page.getByRole("button", { name: /Dáithí.*wrong tap/ }).click();
  await page.waitForSelector("text=Only the lead lifts it");
  assert.equal(await page.getByRole("button", { name: /wrong tap/ }).count(), 0);
  const back = await page.evaluate(() => window.entered.at(-1));
  assert.deepEqual([back.kind, back.player, typeof back.corrects], ["withdrawn", "Q04", "string"]);
  await page.getByRole("button", { name: "Back to the session" }).click();
  assert.equal(await page.getByRole("button", { name: "Done" }).count(), 1);
  await context.close();
});

test("whom to call at home is opened one player at a time, each opening is entered, and it goes with the lease", async () => {
  const { context, page } = await opened("");
  const opened_of = () => page.evaluate(() => window.entered.filter(({ kind }) => kind === "emergency-sheet-opened").map(({ player }) => player));
  await page.getByRole("button", { name: "Someone is hurt" }).click();
  const said = () => page.locator("main").textContent();
  assert.ok(!(await said()).includes("Folake") && !(await said()).includes("7946"));
  await page.getByText("Whom to call at home", { exact: true }).click();
  assert.deepEqual(await opened_of(), []);
  const sheets = page.getByRole("group", { name: "Whom to call at home" });
  assert.equal(await sheets.getByRole("button").count(), 2);
  await sheets.getByRole("button", { name: "1 Amara" }).click();
  assert.equal(await page.getByRole("link", { name: "Call Folake Okonjo-Bellweather, +44 20 7946 0101" }).getAttribute("href"), "tel:+442079460101");
  assert.match(await said(), /Allergybee stings, has a pen.*InhalerNot stated\. That is not “none”/);
  assert.ok(!(await said()).includes("Síle"));
  assert.deepEqual(await opened_of(), ["Q01"]);
  if (pictures) await page.screenshot({ path: join(pictures, "emergency-sheet.png"), fullPage: true });
  await audit(page, "emergency-sheet", {});
  await sheets.getByRole("button").click();
  await sheets.getByRole("button", { name: "4 Dáithí" }).click();
  assert.deepEqual(await opened_of(), ["Q01", "Q04"]);
  await context.close();

  const over = await browser.newContext({ viewport: { width: 360, height: 740 } });
  const late = await over.newPage();
  await late.clock.setFixedTime(new Date("2099-01-02T00:00:00Z"));
  await late.goto(server.url);
  await late.getByRole("button", { name: "Someone is hurt" }).click();
  assert.match(await late.locator("main").textContent(), /emergency sheet .* is with the lead/);
  assert.equal(await late.getByText("Whom to call at home").count(), 0);
  await over.close();
});

test("ten minutes of repetitions sound within 50 ms of their time", async () => {
  const { context, page } = await opened("");
  const worst = await page.evaluate(async () => {
    const { setSound } = await import("/sound.js");
    const rate = 8000;
    const clock = new OfflineAudioContext(1, 600 * rate, rate);
    const times = Array.from({ length: 239 }, (_, index) => 1 + index * 2.5);
    for (const time of times) setSound(clock, "beat", time);
    const heard = (await clock.startRendering()).getChannelData(0);
    const starts = [];
    let quiet = rate;
    heard.forEach((loud, sample) => {
      if (Math.abs(loud) < 0.02) quiet += 1;
      else {
        if (quiet > rate / 4) starts.push(sample / rate);
        quiet = 0;
      }
    });
    if (starts.length !== times.length) return Infinity;
    return Math.max(...starts.map((start, index) => Math.abs(start - times[index])));
  });
  assert.ok(worst <= 0.05, `${worst} s off`);
  await context.close();
});

test("the live metronome keeps to the wall clock", async () => {
  const { context, page } = await opened("");
  await page.getByRole("button", { name: "Lay out" }).click(); // a tap lets the page sound
  const off = await page.evaluate(async () => {
    const { openMetronome } = await import("/sound.js");
    const set = [];
    const start = OscillatorNode.prototype.start;
    let clock;
    OscillatorNode.prototype.start = function (when) {
      clock = this.context;
      set.push(when);
      return start.call(this, when);
    };
    const began = performance.now();
    const beats = [...Array(12).keys()].map((beat) => ({ at: 0.5 + beat * 0.25, sound: "beat" }));
    openMetronome().play(beats, () => (performance.now() - began) / 1000);
    await new Promise((over) => setTimeout(over, 2500));
    const drill = (performance.now() - began) / 1000;
    const zero = set.at(-1) - beats.at(-1).at; // where the last beat that was set puts the drill's zero
    return { count: set.length, seconds: Math.abs(clock.currentTime - zero - drill) };
  });
  assert.ok(off.count >= 11, `${off.count} beats were set`);
  assert.ok(off.seconds <= 0.05, `${off.seconds} s off`);
  await context.close();
});

test("no number's button moves under the thumb that taps it, whatever the plan becomes", async () => {
  const { context, page } = await opened("");
  const less = page.getByRole("button", { name: "Minutes left: Less" });
  const before = await less.boundingBox();
  const tops = [];
  for (let tap = 0; tap < 8; tap++) {
    await page.mouse.click(before.x + 20, before.y + 20);
    tops.push((await less.boundingBox()).y);
  }
  await page.waitForFunction(() => !window.pitch.planning.value && window.pitch.evening.value.plan.slot_seconds === 12 * 60);
  tops.push((await less.boundingBox()).y);
  assert.deepEqual(tops, tops.map(() => before.y));
  assert.equal(await page.evaluate(() => window.pitch.evening.value.facts.minutes), 12);
  await context.close();
});

test("taps on a stepper ask only for the newest plan", async () => {
  const { context, page } = await opened("");
  const more = page.getByRole("button", { name: "Players: More" });
  for (let tap = 0; tap < 5; tap++) await more.click();
  await page.waitForFunction(() => !window.pitch.planning.value);
  assert.equal(await page.evaluate(() => window.pitch.evening.value.plan.turnout), 20);
  await context.close();
});

test("after the wrap-up it says what was written down, who reads it, whether it is sent, and what is next", async () => {
  const { context, page } = await opened("");
  for (const name of ["lay-out", "run-lane"]) await kScreens[name](page);
  await page.getByRole("button", { name: "Done" }).click();
  await page.getByRole("button", { name: "Skip" }).click({ delay: 1000 });
  for (const name of ["End here", "Easy laps", "Most", "Finish"]) await page.getByRole("button", { name }).click();
  const said = () => page.locator("main").textContent();
  for (const words of ["There: 15. Most did it as shown. It took 1 minute", "Done: Easy laps of the lane.", "Skipped: Side shuffle.", "Not come to: Lunge"]) {
    assert.ok((await said()).includes(words), `${words}: ${await said()}`);
  }
  assert.match(await said(), /The lead sees that these need help: Easy laps/);
  assert.match(await said(), /Not yet\. It waits on this phone/);
  assert.match(await said(), /Tuesday,? 1 December/);
  await page.evaluate(() => window.sent());
  await page.waitForSelector("text=Yes. The club has it.");
  await page.getByRole("button", { name: "Correct this" }).click();
  await page.getByRole("button", { name: "How many were there?: Less" }).click();
  await page.getByRole("button", { name: "Finish" }).click();
  await page.waitForSelector("text=There: 14.");
  const last = await page.evaluate(() => window.entered.at(-1));
  assert.deepEqual([last.kind, last.there, typeof last.corrects], ["attendance", 14, "string"]);
  await context.close();
});
