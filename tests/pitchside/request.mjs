// Every change that the phone lets a coach make gets a plan from the real door.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, wasmModule } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";
import { loadTypescript } from "./typescript.mjs";

const { openEvening } = await loadTypescript("evening/open_evening.ts");
const { requestFor } = await loadTypescript("evening/request.ts");
const { timeAfter } = await loadTypescript("../shared/evening/time_after.ts");
const { planRest, requestForRest } = await loadTypescript("evening/rest.ts");
const { changesBetween } = await loadTypescript("../shared/evening/change_words.ts");
const { step } = await loadTypescript("evening/step.ts");
const { alternativeOf, candidatesFor, nearest, swapped, unswapped } = await loadTypescript("evening/nearest.ts");
const { cutTo, fitInto, weightsOf } = await loadTypescript("evening/last_minutes.ts");
const { nameOfDrill } = await loadTypescript("evening/drill.ts");
const { barredFor } = await loadTypescript("evening/barred.ts");
const { kPlaces } = await loadTypescript("evening/sore.ts");

const pack = samplePackage(program());
const run = await loadDoor(readFileSync(wasmModule()));
const ask = (request) => JSON.parse(run(JSON.stringify(request)));
const fresh = openEvening(pack, pack.evenings[0]);
const withFacts = (facts) => ({ ...fresh, facts: { ...fresh.facts, ...facts } });
const planWith = (facts) => ask(requestFor("plan", pack, withFacts(facts)));
const usual = planWith({});
const nameOf = (id) => nameOfDrill(pack, id);

const kSurfaces = ["wet", "hard", "uneven", "dark"];
const kChanges = {
  "nothing known": {},
  "fewest": { turnout: 2, late: 2 },
  "most": { turnout: 40, late: 12 },
  "below the fewest": { turnout: 0 },
  "three away": { away: ["Q01", "Q02", "Q04"] },
  "one lane": { lanes: 1 },
  "most lanes": { lanes: 12 },
  "a short lane": { length_metres: 5 },
  "a lane shorter than its cones stand apart": { length_metres: 3 },
  "a long lane": { length_metres: 60 },
  "no kit": { missing: ["cones", "balls", "mats"] },
  "five minutes": { minutes: 5 },
  "less than five minutes": { minutes: 1 },
  "an hour": { minutes: 60 },
  "every surface": { surface: kSurfaces },
  "no side plank": { bans: ["side-plank"] },
  "squats for sure": { pins: ["squat"] },
};
kChanges["sore in two places"] = { sore: [{ player: "Q04", points: 3, place: "knee" }, { player: "Q04", points: 3, place: "shoulder" }] };
kChanges["sore again, and less"] = { sore: [{ player: "Q04", points: 7 }, { player: "Q04", points: 1 }] };
for (const surface of kSurfaces) kChanges[surface] = { surface: [surface] };
for (const points of [0, 2, 3, 4, 10]) kChanges[`sore ${points}`] = { sore: [{ player: "Q04", points }] };
for (const place of kPlaces) kChanges[`sore ${place}`] = { sore: [{ player: "Q04", points: 3, place }] };

for (const [name, facts] of Object.entries(kChanges)) {
  test(`tonight: ${name}`, () => {
    const plan = planWith(facts);
    assert.equal(plan.answer, "plan", JSON.stringify(plan.faults));
    assert.ok(plan.outcome === "optimal" || plan.infeasible.way_out.length > 0);
  });
}

test("fewer minutes are the end of the slot", () => {
  const request = requestFor("plan", pack, withFacts({ minutes: 12 }));
  assert.equal(request.squad.slot.start, "18:08:00");
  assert.equal(request.squad.slot.minutes, 12);
  assert.equal(timeAfter("23:55", 10), "00:05");
});

test("facts reach the plan", () => {
  assert.equal(planWith({ turnout: 9 }).turnout, 9);
  assert.equal(planWith({ away: [...fresh.facts.away, "Q01"] }).turnout, usual.turnout - 1);
  assert.equal(planWith({ sore: [{ player: "Q04", points: 7 }] }).turnout, usual.turnout - 1);
  assert.ok(!planWith({ bans: ["side-plank"] }).items.some((item) => item.drill === "side-plank"));
});

test("what changed is told with its reason, and told as back when it is undone", () => {
  const wet = planWith({ surface: ["wet"] });
  const there = changesBetween(usual, wet, nameOf);
  const out = there.find((change) => change.drill === "plant-and-cut");
  assert.equal(out.difference, "out");
  assert.match(out.why, /wet/);
  const again = changesBetween(wet, usual, nameOf);
  assert.equal(again.find((change) => change.drill === "plant-and-cut").difference, "back");
  assert.deepEqual(changesBetween(usual, usual, nameOf), []);
});

const kBegan = Date.parse("2026-11-26T18:00:00+01:00");
const evening = { ...step(step(fresh, { event: "planned", plan: usual }).state, { event: "start", at: kBegan }).state };
const through = (state, name, ...items) => items.reduce((so_far, item) => step(so_far, { event: name, item, at: kBegan + (item + 1) * 100000 }).state, state);
const drillsOf = ({ items }) => items.map((item) => item.drill);
const restOf = (state, seconds, of = pack) => planRest(of, state, seconds, async (request) => ask({ ...request, spread: "formula" }));

test("the rest in fewer minutes has only drills that were still to come, in the time that is left", async () => {
  const state = through(evening, "done", 0, 1, 2, 3, 4, 5, 6, 7);
  const to_come = usual.items.slice(9).map((item) => item.drill);
  for (const seconds of [400, 240, 150]) {
    const rest = await restOf(state, seconds);
    assert.ok(rest.items.length > 0 && rest.seconds <= seconds && rest.seconds === lasting(rest.items), `${seconds}: ${rest.seconds}`);
    assert.ok(drillsOf(rest).every((drill) => to_come.includes(drill)), `${seconds}: ${drillsOf(rest)}`);
  }
  const rest = await restOf(state, 400);
  const after = step(state, { event: "rest-planned", items: rest.items }).state;
  assert.equal(after.plan.items[8].drill, usual.items[8].drill);
  assert.equal(after.plan.items.length, 9 + rest.items.length);
  assert.deepEqual((await restOf(state, 20)).items, []);
});

test("what was done counts against tonight's ceilings when the rest is planned; what was skipped does not", async () => {
  const catalogue = structuredClone(pack.catalogue);
  for (const band of catalogue.limits.ceilings) band.jump_cap_session = 60; // 18 of the 23 contacts that the session has
  const lower = { ...pack, catalogue };
  const done = through(evening, "done", 0, 1, 2, 3, 4, 5, 6, 7);
  assert.ok(drillsOf(await restOf(done, 400)).includes("plant-and-cut"));
  assert.deepEqual(drillsOf(await restOf(done, 400, lower)), ["squat", "jump-and-stick", "strides"]);
  const skipped = through(evening, "skip", 0, 1, 2, 3, 4, 5, 6, 7);
  assert.ok(drillsOf(await restOf(skipped, 400, lower)).includes("plant-and-cut"));
  const { squad } = requestForRest(lower, skipped, 8);
  assert.deepEqual(squad.tonight.pins, [{ drill: "side-plank", rung: "knees-down", sets: 2, amount: 20 }]); // it is under way
});

test("a rung that was made harder than tonight's does not keep the rest from being planned", async () => {
  const state = through(evening, "done", 0, 1, 2, 3, 4, 5, 6, 7);
  const harder = step(state, { event: "harder", item: 8, rung: { key: "legs-straight", words: "legs straight" } }).state;
  assert.ok((await restOf(harder, 400)).items.length > 0);
});

const weights = weightsOf(pack);
const lasting = (items) => items.reduce((sum, item) => sum + (item.rest_seconds ?? 0) + item.change_seconds + item.takes_seconds, 0);

test("under five minutes the drills that matter most are kept, in their order and in the time", () => {
  const five = planWith({ minutes: 5 });
  for (const minutes of [4, 3, 2]) {
    const cut = cutTo(five, minutes, weights, (after) => timeAfter("18:00", after));
    const order = cut.items.map((item) => five.items.findIndex((each) => each.drill === item.drill));
    assert.ok(cut.items.length > 0 && lasting(cut.items) <= 60 * minutes, `${minutes}: ${lasting(cut.items)}`);
    assert.deepEqual(order, [...order].sort((a, b) => a - b));
    assert.equal(cut.slot_seconds, 60 * minutes);
    assert.equal(cut.changes.filter((change) => change.why === "").length, five.items.length - cut.items.length);
    assert.ok(cut.time.finish <= timeAfter("18:00", minutes));
  }
  // In four minutes hamstrings, which weigh most, are among them.
  assert.ok(cutTo(five, 4, weights, String).items.some((item) => item.family === "hamstring"));
  assert.equal(cutTo(five, 1, weights, String).items.length, 1);
  assert.deepEqual(cutTo(usual, 20, weights, String), usual);
});

test("of a rest nothing fits into no time, and all into enough", () => {
  const rest = usual.items.slice(9);
  assert.deepEqual(fitInto(rest, 20, weights).items, []);
  assert.equal(fitInto(rest, 2000, weights).items.length, rest.length);
  const two = fitInto(rest, 150, weights);
  assert.ok(two.items.length > 0 && two.seconds <= 150 && two.seconds === lasting(two.items));
});

test("a swap offers the two nearest that can be done, and what they cost", () => {
  const state = { ...fresh, plan: usual };
  const candidates = candidatesFor(pack, state, "side-plank");
  const of = (id) => pack.catalogue.drills.find((drill) => drill.id === id);
  assert.ok(candidates.length > 4 && candidates.slice(0, 4).every(({ drill }) => of(drill).family === "trunk"));
  assert.ok(!candidates.some(({ drill }) => usual.items.some((item) => item.drill === drill)));
  const found = candidates.slice(0, 6).map((candidate) => {
    const plan = planWith(swapped(fresh.facts, "side-plank", candidate.drill));
    return [plan, alternativeOf(usual, plan, "side-plank", candidate)];
  });
  for (const [plan, alternative] of found) {
    assert.equal(alternative !== undefined, plan.outcome === "optimal");
    if (alternative) assert.equal(alternative.seconds, plan.planned_seconds - usual.planned_seconds);
  }
  const shown = nearest(found.map(([, alternative]) => alternative).filter(Boolean));
  assert.equal(shown.length, 2);
  assert.ok(shown[0].far <= shown[1].far);
  const [front] = found.filter(([, each]) => each?.drill === "front-plank").map(([, each]) => each);
  assert.deepEqual(front.come, ["slow-limb-lower"]);
});

test("a swap is undone as a whole, and the lead's pins stay but for what is left out", () => {
  const facts = { ...fresh.facts, ...swapped(fresh.facts, "side-plank", "front-plank") };
  assert.deepEqual([facts.bans, facts.pins], [["side-plank"], ["front-plank"]]);
  const back = unswapped(facts, "side-plank");
  assert.deepEqual([back.bans, back.pins, back.swaps], [[], [], {}]);
  const [evening] = pack.evenings;
  const tonight = { ...evening.documents.squad.tonight, pins: [{ drill: "squat", sets: 1, amount: 10 }, { drill: "side-plank" }] };
  const pinned = { ...pack, evenings: [{ ...evening, documents: { ...evening.documents, squad: { ...evening.documents.squad, tonight } } }] };
  const request = requestFor("plan", pinned, { ...fresh, facts });
  assert.deepEqual(request.squad.tonight.pins, [{ drill: "squat", sets: 1, amount: 10 }, { drill: "front-plank" }]);
  assert.equal(ask(request).answer, "plan");
});

test("the slip names by id and says what to do", () => {
  const slip = ask(requestFor("slip", pack, withFacts({ away: ["Q01"] })));
  assert.equal(slip.answer, "slip", JSON.stringify(slip.faults));
  assert.ok(!slip.groups.some((group) => group.players.includes("Q01")));
  assert.ok(slip.swaps.some((swap) => swap.player === "Q14"));
});

test("what a sore place bars by name is what the door swaps out", () => {
  for (const place of [...kPlaces.filter((each) => !["head", "neck", "chest"].includes(each)), undefined]) {
    const sore = place ? { player: "Q04", points: 3, place } : { player: "Q04", points: 3 };
    const state = withFacts({ sore: [sore] });
    const plan = ask(requestFor("plan", pack, state));
    const slip = ask(requestFor("slip", pack, state));
    const swapped = slip.swaps.find((swap) => swap.player === "Q04").swaps.map((swap) => swap.instead_of);
    const rows = new Map(barredFor(pack.catalogue, place).map(([drill, ...rungs]) => [drill, rungs]));
    const barred = plan.items.filter((item) => rows.get(item.drill)?.length === 0 || rows.get(item.drill)?.includes(item.rung));
    assert.deepEqual(swapped.sort(), barred.map((item) => item.drill).sort(), place ?? "anywhere");
  }
});

test("permissions get a row more, and nothing else of them changes", () => {
  const { restrictions: _, ...documents } = pack.evenings[0].documents;
  const permissions = { as_known: "Sunday 20:10", permission: [{ player: "Q05", instruction: "sits out", sits_out: true }], partners: [] };
  const pocket = { ...pack, evenings: [{ ...pack.evenings[0], documents: { ...documents, permissions } }] };
  const request = requestFor("plan", pocket, withFacts({ sore: [{ player: "Q04", points: 3, place: "knee" }] }));
  assert.equal(request.restrictions, undefined);
  assert.deepEqual(request.permissions.permission[0], permissions.permission[0]);
  assert.equal(request.permissions.permission[1].player, "Q04");
  assert.ok(request.permissions.permission[1].bars.some(([drill]) => drill === "jump-and-stick"));
  assert.deepEqual(request.permissions.partners, []);
  const twice = requestFor("plan", pocket, withFacts(kChanges["sore in two places"]));
  assert.equal(ask(twice).answer, "plan");
});
