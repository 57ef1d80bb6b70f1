// The drills in Spanish: complete for the shipped catalogue, and with nothing that it does not have.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, root, wasmModule } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";
import { loadTypescript } from "./typescript.mjs";

const pack = samplePackage(program());
const { drills } = pack.catalogue;
const spanish = JSON.parse(readFileSync(join(root, "web/shared/words/catalogue_es.json"), "utf8"));
const copy = () => structuredClone(spanish);

const kFields = ["name", "how", "rungs", "cues", "watch", "stop_if"];

// Every key that one side has and the other has not, and every text that is empty.
function faultsOf(rendering) {
  const faults = [];
  const differ = (where, has, wants) => {
    for (const key of has) if (!wants.includes(key)) faults.push(`${where}: the catalogue has no ${key}`);
    for (const key of wants) if (!has.includes(key)) faults.push(`${where}: ${key} is missing`);
  };
  const text = (where, said) => {
    if (typeof said !== "string" || said.trim() === "" || said !== said.trim()) faults.push(`${where}: no text`);
  };
  differ("drills", Object.keys(rendering), drills.map(({ id }) => id));
  for (const drill of drills) {
    const words = rendering[drill.id];
    if (!words) continue;
    differ(drill.id, Object.keys(words), kFields);
    differ(`${drill.id}: rungs`, Object.keys(words.rungs ?? {}), drill.rung.map(({ key }) => key));
    for (const field of ["cues", "watch", "stop_if"]) {
      differ(`${drill.id}: ${field}`, Object.keys(words[field] ?? []), Object.keys(drill[field]));
    }
    for (const said of [words.name, words.how, ...Object.values(words.rungs ?? {}), ...(words.cues ?? []), ...(words.stop_if ?? [])]) {
      text(drill.id, said);
    }
    for (const watch of words.watch ?? []) {
      differ(`${drill.id}: watch`, Object.keys(watch), ["fault", "cue"]);
      text(drill.id, watch.fault);
      text(drill.id, watch.cue);
    }
  }
  return faults;
}

test("every drill of the shipped catalogue has all its words in Spanish, and no other has", () => {
  assert.equal(drills.length, readdirSync(join(root, "catalogue/drills")).filter((name) => name.endsWith(".toml")).length);
  assert.deepEqual(faultsOf(spanish), []);
});

test("what the catalogue does not have, and what is missing, is refused", () => {
  for (const [spoil, told] of [
    [(words) => (words["moon-walk"] = words.squat), /no moon-walk/],
    [(words) => delete words.squat, /squat is missing/],
    [(words) => (words.squat.rungs["one-legged"] = "a una pierna"), /no one-legged/],
    [(words) => delete words.squat.rungs["half-way"], /half-way is missing/],
    [(words) => words.squat.cues.push("una más"), /cues: the catalogue has no 3/],
    [(words) => words.squat.stop_if.pop(), /stop_if: 1 is missing/],
    [(words) => (words.squat.watch[0].reason = "porque"), /no reason/],
    [(words) => (words.squat.name = " "), /squat: no text/],
    [(words) => (words.squat.purpose = "fuerza"), /no purpose/],
  ]) {
    const words = copy();
    spoil(words);
    assert.ok(faultsOf(words).some((fault) => told.test(fault)), `${told}: ${faultsOf(words)}`);
  }
});

test("nothing was left in English", () => {
  const same = drills.filter((drill) => spanish[drill.id].how === drill.how || drill.cues.some((cue) => spanish[drill.id].cues.includes(cue)));
  assert.deepEqual(same.map(({ id }) => id), []);
});

test("doses in the phone's words are, in English, the door's own", async () => {
  const { openEvening } = await loadTypescript("evening/open_evening.ts");
  const { requestFor } = await loadTypescript("evening/request.ts");
  const { doseWords } = await loadTypescript("screens/drill_words.ts");
  const run = await loadDoor(readFileSync(wasmModule()));
  const fresh = openEvening(pack, pack.evenings[0]);
  const seen = new Set();
  const doses = new Set();
  const take = (facts) => {
    const { items = [] } = JSON.parse(run(JSON.stringify(requestFor("plan", pack, { ...fresh, facts: { ...fresh.facts, ...facts } }))));
    for (const item of items) {
      assert.equal(doseWords(pack, item), item.dose);
      seen.add(item.drill);
      doses.add(item.dose);
    }
  };
  for (const minutes of [8, 20, 40]) take({ minutes });
  for (const pin of ["follow-the-break", "one-leg-partner-nudge", "leg-swings-partner", "front-plank", "calf-raise"]) take({ minutes: 30, pins: [pin] });
  assert.ok(seen.size > 15, `${seen.size} drills`);
  for (const form of [/ a side$/, / pass(es)?$/, / s$/, /^\d × /, / reps/]) assert.ok([...doses].some((dose) => form.test(dose)), `${form}`);
});
