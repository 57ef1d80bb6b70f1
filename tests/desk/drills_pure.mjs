// The drills' screens without a screen: what is found, which ceilings are touched, and what a form makes of a drill, held
// against the door's own reader.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, root, wasmModule } from "../pitchside/places.mjs";
import { samplePackage } from "../pitchside/sample_package.mjs";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { isWanted, sorted } = await loadTypescript("../desk/drills/find_drills.ts");
const { loadOf, touchedBy } = await loadTypescript("../desk/drills/drill_limits.ts");
const begin = await loadTypescript("../desk/drills/edit/begin.ts");
const { checkRequest, faultsOfDrill, readCatalogue } = await loadTypescript("../desk/drills/edit/check.ts");
const own = await loadTypescript("../desk/drills/own_drills.ts");
const paths = await loadTypescript("../desk/drills/edit/paths.ts");
const faultPlace = await loadTypescript("../desk/drills/edit/fault_place.ts");
const things = await loadTypescript("../shared/figure/props.tsx");
const moments = await loadTypescript("../shared/figure/moment.ts");
const run = await loadDoor(readFileSync(wasmModule()));
const { catalogue } = samplePackage(program());
const { drills, limits } = catalogue;
const drill = (id) => drills.find((one) => one.id === id);
// As the engine does it: the catalogue is held first.
const { catalogue: read } = checkRequest({}, undefined, readCatalogue(catalogue));
assert.equal(JSON.parse(run(JSON.stringify({ request: "hold", name: "catalogue", catalogue: read }))).answer, "held");
function faults(one, instead_of) {
  const { catalogue: _, ...question } = checkRequest(one, instead_of, read);
  return faultsOfDrill(JSON.parse(run(JSON.stringify({ ...question, held: "catalogue" }))));
}

test("each filter keeps what fits and nothing else", () => {
  const kept = (wanted) => drills.filter((one) => isWanted(one, wanted));
  assert.equal(kept({}).length, drills.length);
  for (const family of new Set(drills.map((one) => one.family))) assert.deepEqual(kept({ family }), drills.filter((one) => one.family === family));
  for (const age of [8, 11, 19]) assert.deepEqual(kept({ age }), drills.filter(({ ages }) => ages.from <= age && age <= ages.to));
  assert.ok(kept({ without: "all" }).every(({ needs }) => needs.length === 0));
  assert.ok(kept({ without: "wall" }).length < drills.length && kept({ without: "wall" }).every(({ needs }) => !needs.includes("wall")));
  assert.ok(kept({ ground: "wet" }).every(({ not_on }) => !not_on.includes("wet")) && kept({ ground: "wet" }).length < drills.length);
  assert.ok(kept({ said: "knee" }).every(({ cues, watch }) => /knee/i.test([...cues, ...watch.map(({ cue }) => cue)].join())));
  const accented = { ...drill("squat"), name: "Zancada rápida según pared" };
  assert.ok(isWanted(accented, { text: "RAPIDA segun" }) && !isWanted(accented, { text: "lenta" }));
  for (const order of ["session", "name", "age", "telling"]) assert.equal(new Set(sorted(drills, order)).size, drills.length);
  assert.deepEqual(sorted(drills, "age").map(({ ages }) => ages.from), drills.map(({ ages }) => ages.from).sort((a, b) => a - b));
});

test("loads are counted as the core counts them", () => {
  const cut = drill("plant-and-cut"); // 0.2 landings a metre, medium; 15 m of lane; every metre is hard running
  assert.deepEqual(loadOf(cut, cut.rung[0], { sets: 1, amount: 2 }, limits), { contacts: 6, eccentric: 0, hard_running: 30 });
  const lower = drill("kneeling-hamstring-lower");
  assert.deepEqual(loadOf(lower, lower.rung[1], { sets: 2, amount: 5 }, limits), { contacts: 0, eccentric: 10, hard_running: 0 });
  assert.equal(loadOf(lower, lower.rung[0], { sets: 1, amount: 3 }, limits).eccentric, 3 * lower.rung[0].load);
  assert.deepEqual(touchedBy(drill("side-plank"), limits), []);
  const youngest = touchedBy(cut, limits).find(({ load }) => load === "contacts");
  assert.deepEqual([youngest.ages, youngest.ceiling], [{ from: 9, to: 9 }, 20]); // 40 % of 50, from the drill's own floor
  for (const one of drills) {
    for (const { most, ceiling, over } of touchedBy(one, limits)) assert.equal(over.length > 0, most > ceiling, one.id);
  }
});

test("whatever formation a drill is given, the checker takes it", () => {
  for (const one of drills.filter((_, at) => at % 6 === 0)) {
    for (const formation of ["lane", "spread", "pairs"]) {
      const changed = begin.withFormation(one, formation);
      const found = faults(changed, one.id).filter(({ field }) => !/^loads\.|^stress|figure/.test(field));
      assert.deepEqual(found, [], `${one.id} as ${formation}`);
    }
    assert.deepEqual(faults(one, one.id), []);
    assert.deepEqual(faults(begin.drillLike(one, catalogue), undefined), [], `like ${one.id}`);
  }
});

test("what the checker finds is told of the drill alone, by field", () => {
  const spoilt = { ...drill("squat"), name: "", telling_seconds: 900 };
  assert.deepEqual(faults(spoilt, "squat").map(({ field }) => field), ["name", "telling_seconds"]);
  const phase = { ...drill("squat"), phase: "run" };
  assert.deepEqual(faults(phase, "squat").map(({ field }) => field), ["phase"]);
  assert.ok(faults({ ...drill("squat") }, undefined).length > 0, "two drills of one id");
  assert.ok(faults(begin.blankDrill(), undefined).length > 3);
});

test("a rung's figure goes with its key", () => {
  const plank = drill("side-plank");
  const renamed = begin.withRungChange(plank, 0, "one knee down");
  assert.equal(renamed.rung[0].key, "one-knee-down");
  assert.deepEqual(renamed.rung_figure["one-knee-down"], plank.rung_figure["knees-down"]);
  assert.deepEqual(faults(renamed, "side-plank"), []);
  const own = { ...plank, rung: plank.rung.map((rung, at) => (at === 0 ? { ...rung, key: "easy" } : rung)), rung_figure: { easy: plank.rung_figure["knees-down"] } };
  assert.equal(begin.withRungChange(own, 0, "something else").rung[0].key, "easy", "a key of one's own stays");
  const less = begin.withoutRung(plank, 0);
  assert.deepEqual(Object.keys(less.rung_figure), ["top-leg-up"]);
  assert.deepEqual(faults(less, "side-plank"), []);
  assert.deepEqual([begin.idFor("¡Ñandú — Rápido 2!"), begin.freshKey("Squat", ["squat", "squat-2"])], ["nandu-rapido-2", "squat-3"]);
});

test("what two leads changed is put together, and what both did is told", () => {
  const base = drill("squat");
  const mine = { ...base, how: "mine", cues: ["Mine"], ages: { to: base.ages.to, from: base.ages.from } };
  const theirs = { ...base, how: "theirs", purpose: "theirs", loads: { contacts: 1 } };
  const { drill: together, both } = own.merged(base, mine, theirs);
  assert.deepEqual(both, ["how"]);
  assert.deepEqual([together.how, together.cues, together.purpose, together.loads, together.ages], ["mine", ["Mine"], "theirs", { contacts: 1 }, base.ages]);
  const { pair: _, ...without } = theirs;
  assert.ok(!("loads" in own.merged(theirs, mine, theirs).drill) || own.merged(theirs, theirs, without).both.length === 0);
  for (const one of drills) assert.deepEqual(own.merged(one, one, structuredClone(one)), { drill: one, both: [] });
});

test("saving tells the squads once, and undoing takes back what was done and no more", () => {
  const documents = [
    { path: "club.toml", digest: "a", content: {} }, { path: "roster.csv", digest: "b" },
    { path: "squads/u13.toml", digest: "c", content: { name: "U13" } }, { path: "squads/u15.toml", digest: "d", content: { name: "U15", catalogue: "ours" } },
  ];
  const before = own.folderOf(documents);
  const plank = { ...drill("side-plank"), id: "plank-own" };
  const changes = own.savingChanges(before, plank, undefined);
  assert.deepEqual(changes.map(({ path, instead_of }) => [path, instead_of]), [["drills/plank-own.toml", undefined], ["squads/u13.toml", "c"]]);
  assert.equal(changes[1].content.catalogue, "..");
  const after = [{ path: "drills/plank-own.toml", digest: "e", content: plank }, { path: "squads/u13.toml", digest: "f", content: changes[1].content }];
  assert.deepEqual(own.undoingChanges(before, "plank-own", after), [{ path: "drills/plank-own.toml", instead_of: "e" }, { path: "squads/u13.toml", instead_of: "f", content: { name: "U13" } }]);
  const there = own.folderOf([...documents.slice(0, 2), ...after]);
  assert.deepEqual(own.savingChanges(there, plank, "e").map(({ path }) => path), ["drills/plank-own.toml"]);
  assert.equal(own.undoingChanges(there, "plank-own", [{ path: "drills/plank-own.toml", digest: "g" }])[0].text, changes[0].text);
});

test("a field is read and written by the path that faults use", () => {
  const plank = drill("side-plank");
  assert.equal(paths.valueAt(plank, "rung.1.key"), "knees-down");
  assert.equal(paths.valueAt(plank, "lane.stop.seconds"), undefined);
  const changed = paths.withValue(plank, "dose.steps.2.amount", 16);
  assert.equal(changed.dose.steps[1].amount, 16);
  assert.equal(plank.dose.steps[1].amount, 15, "the document before is as it was");
  assert.deepEqual(Object.keys(paths.withValue(plank, "name", "x")), Object.keys(plank));
  assert.ok(!("ages_from" in paths.withValue(plank, "rung.3.ages_from", undefined).rung[2]));
  assert.deepEqual(paths.withValue(plank, "pair.swap_seconds", 4).pair, { swap_seconds: 4 });
});

test("between two frames every point goes straight, and a cycle ends as it says", () => {
  const at = (x) => ({ strokes: [{ part: "thigh", x1: x, y1: 0, x2: 2 * x, y2: 5, width: 9 }], head: { x, y: 1, r: 3 } });
  const figure = (cycle) => ({ cycle, frames: [at(0), at(10), at(40)] });
  const seen = (cycle, milliseconds) => moments.frameAt(figure(cycle), moments.momentOf(figure(cycle), milliseconds, 3)).strokes[0].x1;
  assert.deepEqual([0, 500, 1000, 2000, 2500, 2999.99, 3000].map((now) => Math.round(seen("loop", now))), [0, 5, 10, 40, 20, 0, 0]);
  assert.deepEqual([0, 750, 1500, 3000, 4100, 4200].map((now) => Math.round(seen("once", now))), [0, 5, 10, 40, 40, 0]);
  assert.equal(seen("hold", 1234), 0);
});

test("a partner and things go along, and what leaves the picture leaves with the frame", () => {
  const body = (x) => ({ strokes: [{ part: "thigh", x1: x, y1: 0, x2: x, y2: 5, width: 9 }], head: { x, y: 1, r: 3 } });
  const frame = (x, props) => ({ ...body(x), partner: body(100 + x), props });
  const figure = { cycle: "once", frames: [frame(0, [{ x: 0, y: 10 }, { x: 5, y: 0, x2: 9, y2: 0 }, {}]), frame(10, [{ x: 20, y: 30 }, { x: 7, y: 0, x2: 11, y2: 4 }, { x: 1, y: 1 }]), frame(20, [{}, {}, {}])] };
  const half = moments.frameAt(figure, 0.5);
  assert.deepEqual([half.partner.strokes[0].x1, half.partner.head.x], [105, 105]);
  assert.deepEqual(half.props, [{ x: 10, y: 20 }, { x: 6, y: 0, x2: 10, y2: 2 }, {}]);
  assert.deepEqual(moments.frameAt(figure, 1.5).props[0], { x: 20, y: 30 });
  assert.deepEqual(things.placeWritten({}), { visibility: "hidden" });
  assert.deepEqual(things.placeWritten({ x: 1.4, y: 2.6 }), { visibility: "visible", transform: "translate(1 3)" });
});

test("shapes of one ink that follow each other are one path", () => {
  const shapes = [{ ink: "thin", points: [0, 0, 1, 1] }, { ink: "thin", points: [2, 2, 3, 3] }, { ink: "solid", points: [0, 0, 1, 0, 1, 1] }, { ink: "outline", r: 5 }];
  assert.deepEqual(things.pathsOf(shapes), [
    { ink: "thin", d: "M0 0L1 1M2 2L3 3" }, { ink: "solid", d: "M0 0L1 0L1 1Z" }, { ink: "outline", d: "M-5 0A5 5 0 1 1 5 0A5 5 0 1 1 -5 0Z" },
  ]);
});

test("a fault in a figure says which figure, pose and person it is of", () => {
  const target = (field) => faultPlace.targetOfFault(field);
  assert.deepEqual(target("figure.pose.2.angles.knee"), { rung: undefined, pose: 1, partner: false });
  assert.deepEqual(target("rung_figure.knees-down.pose.1.partner.angles.hip_near"), { rung: "knees-down", pose: 0, partner: true });
  assert.deepEqual(target("figure"), { rung: undefined, pose: 0, partner: false });
  assert.deepEqual(["rung.1.key", "figures.1", "name"].map(target), [undefined, undefined, undefined]);
});

test("the words are there in both languages, and none was left in English", () => {
  const words = Object.fromEntries(["en", "es"].map((language) => [language, JSON.parse(readFileSync(join(root, `web/desk/drills/words/${language}.json`), "utf8"))]));
  const leaves = (tree, at = "") => Object.entries(tree).flatMap(([key, value]) => (typeof value === "string" ? [[`${at}${key}`, value]] : leaves(value, `${at}${key}.`)));
  const [en, es] = [new Map(leaves(words.en)), new Map(leaves(words.es))];
  assert.deepEqual([...es.keys()].filter((key) => !/^many\./.test(key)), [...en.keys()].filter((key) => !/^many\./.test(key)));
  const values = (text) => [...text.matchAll(/\{\w+\}/g)].map(String).sort();
  for (const [key, text] of en) assert.deepEqual(values(es.get(key) ?? ""), values(text), key);
  const same = [...en].filter(([key, text]) => es.get(key) === text && /[a-z]{3}/.test(text.replaceAll(/\{\w+\}/g, ""))).map(([key]) => key);
  assert.deepEqual(same, []);
});
