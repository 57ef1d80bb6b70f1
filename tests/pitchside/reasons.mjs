// Every code that the door tells (docs/formats/door.md) has words in both languages, and not the door's own English.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { root } from "./places.mjs";
import { loadTypescript } from "./typescript.mjs";

const said = await loadTypescript("../shared/evening/reason_words.ts", "../shared/words/words.ts");
const names = { drill: (id) => `<${id}>`, family: (key) => `(${key})`, rung: (drill, key) => `[${key}]` };
const kEnglish = "a sentence of the door";

const kValues = {
  age: 12, metres: 15, cones: 8, need: "wall", surface: "wet", needed_seconds: 1148, slot_seconds: 840, breaks_seconds: 0, drills: ["squat", "wall-sit"],
  load: "contacts", most: 60, days_to_match: 1, time: { code: "room-for", drills: [] }, drill: "side-plank", because: { code: "needs", need: "ball-each", count: 14 },
  family: "trunk", seconds: 80, most_new: 2, match_in_sight: true, why: "thunder",
};

// The table's rows: codes, and where they are told.
function codes() {
  const page = readFileSync(join(root, "docs/formats/door.md"), "utf8");
  const rows = page.slice(page.indexOf("### Codes of reasons"), page.indexOf("## Request and answer `slip`")).split("\n").filter((line) => line.startsWith("| `"));
  let where = "";
  return rows.flatMap((row) => {
    const [, first, , third] = row.split("|");
    if (!third.includes("the same")) where = third.includes("demands") ? "demand" : third.includes("not covered") ? "cure" : "change";
    const told = where;
    return [...first.matchAll(/`([a-z-]+)`/g)].map(([, code]) => ({ code, where: told }));
  });
}

const kTold = { change: "reasonTold", cure: "cureTold", demand: "demandTold" };

function inBoth(work) {
  const out = ["en", "es"].map((language) => {
    said.language.value = language;
    return work();
  });
  said.language.value = "en";
  return out;
}

test("every code of the page is said in both languages", () => {
  const all = codes();
  assert.ok(all.length >= 26, `${all.length} codes`);
  for (const { code, where } of all) {
    const [english, spanish] = inBoth(() => said[kTold[where]]({ code, ...kValues }, kEnglish, names));
    assert.ok(!english.english && !spanish.english, `${code}: no words`);
    if (code !== "no-session") assert.notEqual(english.words, spanish.words, code);
    for (const { words } of [english, spanish]) assert.ok(!/[{}]|undefined/.test(words), `${code}: ${words}`);
  }
});

test("needs, surfaces and loads of the catalogue all have words", () => {
  for (const need of ["partner", "wall", "ball-each", "ball-a-pair", "mat", "soft-ground", "line"]) {
    for (const told of inBoth(() => said.reasonTold({ code: "needs", need, count: 7 }, kEnglish, names))) assert.ok(!told.english, need);
  }
  for (const surface of ["wet", "hard", "uneven", "dark"]) {
    for (const told of inBoth(() => said.reasonTold({ code: "not-on", surface }, kEnglish, names))) assert.ok(!told.english, surface);
  }
});

test("in sentences", () => {
  const reason = (fields) => inBoth(() => said.reasonTold(fields, kEnglish, names).words);
  assert.deepEqual(reason({ code: "slot-too-short", needed_seconds: 1148, slot_seconds: 840, breaks_seconds: 0 }), ["the routine needs 19 min 8 s, there are 14 min", "la rutina necesita 19 min 8 s y hay 14 min"]);
  assert.deepEqual(reason({ code: "stands-in", drill: "squat", because: { code: "needs", need: "wall" } }), ["<squat> cannot be done: it needs a wall", "<squat> no se puede hacer: necesita una pared"]);
  const ways = [{ slot_seconds: 720, lift: ["squat", "wall-sit"], any_one: true }, { lift: ["strides"], any_one: false }];
  assert.deepEqual(inBoth(() => said.wayOutTold(ways, kEnglish, names).words), [
    "12 min would do; one second less would not; or let go of <squat> or <wall-sit>; the rest is too much as well: let go of <strides>",
    "bastarían 12 min; con un segundo menos, no; o renunciar a <squat> o <wall-sit>; el resto también es demasiado: renunciar a <strides>",
  ]);
  assert.deepEqual(inBoth(() => said.swapTold("other-drill", { drill: "side-plank", rung: "knees-down" }, "20 s", kEnglish, names).words), ["does <side-plank>, [knees-down], 20 s", "hace <side-plank>, [knees-down], 20 s"]);
});

test("what a newer engine tells is shown as it says it", () => {
  for (const told of [said.reasonTold({ code: "of-tomorrow" }, kEnglish, names), said.reasonTold(undefined, kEnglish, names), said.cureTold({ code: "of-tomorrow" }, kEnglish, names), said.demandTold({ code: "of-tomorrow" }, kEnglish, names), said.wayOutTold(undefined, kEnglish, names)]) {
    assert.deepEqual(told, { words: kEnglish, english: true });
  }
});
