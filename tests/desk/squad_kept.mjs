// What of a try is kept for a squad: the minutes of a slot, pairs kept apart, and the order as a house routine of its own.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, wasmModule } from "../pitchside/places.mjs";
import { samplePackage } from "../pitchside/sample_package.mjs";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { contested, keyOfPair, keyOfSlot, keptApart, standingOf, weekdayOfSlot, withStanding } = await loadTypescript("../desk/squad/standing.ts");
const { changesOf, isContested, orderOf, ownRoutine } = await loadTypescript("../desk/squad/own_routine.ts");
const { kNothingTried, keptApart: apartInTry, requestOf } = await loadTypescript("../desk/squad/tried.ts");
const { toKeep } = await loadTypescript("../desk/squad/tried_to_keep.ts");
const { countsOf, pairsIn } = await loadTypescript("../desk/squad/slip_counts.ts");

const kSquad = "u13-kestrels";
const kWeek = [
  { weekday: "tuesday", start: "18:00:00", minutes: 20 },
  { weekday: "thursday", start: "18:00:00", minutes: 20, strip: "hall" },
];
const kRoutine = { id: "early-teens", name: "Early teens", minutes: 20, drill: [{ id: "laps", rung: "a" }, { id: "plank", rung: "b" }, { id: "squat", rung: "c" }] };
const books = (squad, ...more) => [{ path: `squads/${kSquad}.toml`, digest: "d", content: { name: "K", routine: "early-teens", week: kWeek, ...squad } }, ...more];

test("the minutes of one slot of the week, and none that is not there", () => {
  const content = { name: "K", week: kWeek };
  const slot = keyOfSlot(2, "18:00");
  const after = withStanding(content, { minutes: { [slot]: 17 } });
  assert.deepEqual(after.week.map(({ minutes }) => minutes), [17, 20]);
  assert.equal(weekdayOfSlot(slot), 2);
  assert.deepEqual(withStanding(after, standingOf(content, { minutes: { [slot]: 17 } })), content);
  assert.deepEqual(withStanding(content, { minutes: { "friday 18:00": 17 } }), content);
});

test("a pair is kept apart beside the others, and let together again", () => {
  const content = { partners: { measure: "age", forbidden: [["Q10", "Q06"]] } };
  const after = withStanding(content, { apart: { "Q03 Q11": true } });
  assert.deepEqual(keptApart(after), ["Q06 Q10", "Q03 Q11"]);
  assert.equal(after.partners.measure, "age");
  assert.deepEqual(keptApart(withStanding(after, { apart: { "Q06 Q10": false } })), ["Q03 Q11"]);
  assert.deepEqual(withStanding({ name: "K" }, { apart: { "Q03 Q11": false } }), { name: "K" });
  assert.equal(keyOfPair("Q11", "Q03"), "Q03 Q11");
});

test("who was kept apart by two leads at once is no quarrel, other minutes are", () => {
  assert.deepEqual(contested({ apart: { "Q03 Q11": true } }, { apart: { "Q03 Q11": false } }, { apart: { "Q03 Q11": true } }), []);
  const slot = "tuesday 18:00";
  assert.deepEqual(contested({ minutes: { [slot]: 17 } }, { minutes: { [slot]: 20 } }, { minutes: { [slot]: 15 } }), [{ part: "minutes", key: slot }]);
});

test("the order becomes a routine of the squad's own, and goes again when it is taken back", () => {
  const before = orderOf(kSquad, books(), [kRoutine]);
  assert.deepEqual(before, { routine: "early-teens", drills: ["laps", "plank", "squat"] });
  const wanted = { routine: ownRoutine(kSquad), drills: ["laps", "squat", "plank"] };
  const { content, more } = changesOf(kSquad, wanted, books()[0].content, books(), [kRoutine]);
  assert.equal(content.routine, `../routines/${kSquad}.toml`);
  assert.deepEqual(more.map(({ path, instead_of, content: own }) => [path, instead_of, own.id, own.name, own.drill.map(({ id }) => id)]), [[`routines/${kSquad}.toml`, undefined, kSquad, "Early teens", ["laps", "squat", "plank"]]]);
  const after = books({ routine: content.routine }, { path: `routines/${kSquad}.toml`, digest: "e", content: more[0].content });
  assert.deepEqual(orderOf(kSquad, after, []), wanted);
  const back = changesOf(kSquad, before, after[0].content, after, [kRoutine]);
  assert.equal(back.content.routine, "early-teens");
  assert.deepEqual(back.more, [{ path: `routines/${kSquad}.toml`, instead_of: "e" }]);
  assert.equal(isContested(wanted, before, before), false);
  assert.equal(isContested(wanted, before, wanted), false);
  assert.equal(isContested(wanted, before, { ...wanted, drills: ["squat", "laps", "plank"] }), true);
});

const pack = samplePackage(program());
const [{ documents, ...of_evening }] = pack.evenings;
const run = await loadDoor(readFileSync(wasmModule()));
// The phone's sample has restrictions; the server gives permissions, with everybody's order of partners.
const { restrictions: _, ...others } = documents;
const { permitted } = JSON.parse(run(JSON.stringify({ request: "slip", catalogue: pack.catalogue, ...documents })));
const partners = permitted.map(({ player, partners: own }) => ({ player, others: own }));
const evening = { ...of_evening, documents: { ...others, permissions: { as_known: "Sunday 20:10", permission: [], partners } } };
const slipOf = (tried) => JSON.parse(run(JSON.stringify(requestOf(evening, pack.catalogue, tried, "slip"))));

test("two who are kept apart in a try stand with others, and nobody stays alone for it", () => {
  const usual = slipOf(kNothingTried);
  const [one, other] = usual.groups[0].players;
  const pair = keyOfPair(one, other);
  const apart = slipOf({ ...kNothingTried, ...apartInTry(kNothingTried, pair, true) });
  assert.equal(apart.groups.some(({ players }) => players.includes(one) && players.includes(other)), false);
  assert.equal(apart.alone.length, usual.alone.length);
  const counts = countsOf(usual, evening.documents.roster.length);
  assert.equal(counts.joins_in + counts.with_swaps + counts.sits_out, evening.documents.roster.length);
  assert.equal(2 * counts.pairs + 3 * counts.trios + counts.alone, usual.groups.flatMap(({ players }) => players).length + usual.alone.length);
  assert.deepEqual(pairsIn(["a", "b", "c"]), [["a", "b"], ["a", "c"], ["b", "c"]]);
});

test("of a try what can be kept is kept: not the players of one evening, and nothing that is as it was", () => {
  const placed = (ids) => ids.map((id) => ({ drill: id, phase: "build", family: id === "laps" ? "pulse" : "trunk" }));
  const on_tuesday = { ...evening, day: "2026-12-01", start: "18:00" };
  const of = (tried) => toKeep(kSquad, on_tuesday, { ...kNothingTried, ...tried }, placed, books(), [kRoutine]);
  assert.deepEqual(of({ turnout: 9 }), {});
  assert.deepEqual(of({ minutes: 20 }), {});
  assert.deepEqual(of({ minutes: 17, apart: ["Q03 Q11"], pins: ["squat"] }), { locks: { squat: "pin" }, minutes: { "tuesday 18:00": 17 }, apart: { "Q03 Q11": true } });
  assert.deepEqual(of({ order: ["laps", "plank", "squat"] }), {});
  assert.deepEqual(of({ order: ["laps", "guest", "squat", "plank"] }), { order: { routine: ownRoutine(kSquad), drills: ["laps", "squat", "plank"] } });
  assert.deepEqual(toKeep(kSquad, { ...on_tuesday, day: "2026-12-02" }, { ...kNothingTried, minutes: 17 }, placed, books(), [kRoutine]), {});
});
