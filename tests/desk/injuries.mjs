// The terms, the body map and what holds back, from what the server tells; the tables are the catalogue's.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { injuryWords, kTermFields, keysOf, termTyped, termsOf, whatOf } = await loadTypescript("../desk/injuries/terms.ts");
const { kFaces, placeOf, spotBeside, spotsOf } = await loadTypescript("../desk/injuries/body_regions.ts");
const { heldOf, isOfAnEntry, waysOf } = await loadTypescript("../desk/injuries/holding.ts");

const read = (name) => JSON.parse(readFileSync(new URL(`../../web/desk/injuries/${name}`, import.meta.url), "utf8"));
const kWords = { en: read("words/en.json"), es: read("words/es.json") };

let receipts = 0;
const entry = (kind, fields = {}) => ({ id: `e-${++receipts}`, receipt: receipts, received: "2026-11-27T18:00:00+01:00", kind, ...fields });

test("every term, step and gate has its words in both languages, and no other has", () => {
  const steps = Object.values(read("return_steps.json")).flat();
  const of = (list) => [...new Set(list)].filter((one) => one !== "").sort();
  for (const words of Object.values(kWords)) {
    for (const field of kTermFields) assert.deepEqual(Object.keys(words.term[field]).sort(), keysOf(field).sort(), field);
    assert.deepEqual(Object.keys(words.step).sort(), of(steps.map(({ step }) => step)));
    assert.deepEqual(Object.keys(words.gate).sort(), of(steps.map(({ gate }) => gate)));
  }
});

test("every region but 'several' is on the map, and every one can be reached by arrows", () => {
  const shown = new Set(kFaces.flatMap((face) => spotsOf(face).map(({ region }) => region)));
  assert.deepEqual([...shown, "several-regions"].sort(), keysOf("region").sort());
  for (const face of kFaces) {
    const spots = spotsOf(face);
    const reached = new Set([spots[0]]);
    for (const spot of reached) for (const key of ["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight"]) reached.add(spotBeside(spots, spot, key) ?? spot);
    assert.equal(reached.size, spots.length, face);
  }
});

test("the front shows the player's left on the right of the picture, the back on the left", () => {
  const leftKnee = (face) => spotsOf(face).find(({ region, side }) => region === "knee" && side === "left").at.x;
  assert.ok(leftKnee("front") > 100 && leftKnee("back") < 100);
});

test("what is typed is taken where it can mean one region only", () => {
  assert.equal(termTyped("region", "Shin"), "lower-leg");
  assert.equal(termTyped("region", "lower-leg"), "lower-leg");
  assert.equal(termTyped("region", "grói"), "hip-and-groin");
  assert.equal(termTyped("region", "s"), undefined);
  assert.equal(termTyped("region", "  "), undefined);
  assert.equal(termTyped("region", "<img src=x>"), undefined);
});

test("terms go into an entry and come back; what nobody knows is not there", () => {
  const what = ["region knee", "side left", "tissue joint-sprain", "contact none"];
  assert.deepEqual(whatOf(termsOf([...what].reverse())).sort(), [...what].sort());
  assert.deepEqual(termsOf(["region", "hat red", ""]), {});
  assert.equal(injuryWords(what), "knee, left: sprained joint");
  assert.equal(injuryWords([]), "where is not known");
});

test("a place that no area is stays unknown, so that the rules take the careful side", () => {
  assert.equal(placeOf("thigh", "back"), "back-thigh");
  assert.equal(placeOf("thigh", undefined), undefined);
  assert.equal(placeOf("abdomen", "front"), undefined);
  assert.equal(placeOf("wrist", "front"), "wrist-and-hand");
});

test("what was lifted holds no more, and again where the lifting was withdrawn", () => {
  const hurt = entry("hurt", { place: "knee" });
  const restriction = entry("restriction", { areas: ["ankle"], review: "2026-12-04" });
  const cleared = entry("clearance", { names: [hurt.id], clinician: "Dr A", profession: "physician" });
  const lifted = entry("lifted", { names: [hurt.id] });
  const entries = [lifted, cleared, restriction, hurt];
  assert.deepEqual(heldOf(entries).map(({ id }) => id), [restriction.id]);
  const again = heldOf([...entries, entry("withdrawn", { corrects: lifted.id })]);
  assert.deepEqual(again.map(({ id, cleared_by }) => [id, cleared_by]), [[hurt.id, "Dr A"], [restriction.id, ""]]);
  // A hurt that somebody withdrew stands: caution is not taken away.
  assert.equal(heldOf([hurt, entry("withdrawn", { corrects: hurt.id })]).length, 1);
  assert.deepEqual(heldOf([...entries, entry("reviewed", { names: [restriction.id], review: "2026-12-11" })]).map(({ review }) => review), ["2026-12-11"]);
});

test("a way back waits at its gate until a named clinician answered", () => {
  const opened = entry("course-opened", { course: "general" });
  const first = entry("step-begun", { course: opened.id, step: "daily-life" });
  const [way] = waysOf([opened, first]);
  assert.deepEqual([way.next.step, way.next.gate, way.next.gate_by], ["own-pace", "seen", ""]);
  const [answered] = waysOf([opened, first, entry("clearance", { course: opened.id, gate: "seen", names: [opened.id], clinician: "Dr B" })]);
  assert.equal(answered.next.gate_by, "Dr B");
  assert.deepEqual(waysOf([opened, entry("lifted", { names: [opened.id] })]), []);
  assert.deepEqual(waysOf([entry("course-opened", { course: "toString" })]), []);
});

test("a reason of an entry is told from the others", () => {
  const id = "01a21d35-c07f-76a9-905f-1ffc888fe555";
  assert.deepEqual([`hurt, knee (${id}); a clearance that names ${id}, then`, "in a growth spurt"].map(isOfAnEntry), [true, false]);
});
