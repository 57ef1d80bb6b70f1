// The block as a grid and against its targets, from the program's own answer; what is tried on an evening, by the real door.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, root, wasmModule } from "../pitchside/places.mjs";
import { samplePackage } from "../pitchside/sample_package.mjs";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { blockIn } = await loadTypescript("../desk/squad/block.ts");
const { gridOf } = await loadTypescript("../desk/squad/block_grid.ts");
const { familiesOf, loadsOf } = await loadTypescript("../desk/squad/week_targets.ts");
const { movedBy, movedTo, mayStandAt, orderWith } = await loadTypescript("../desk/squad/places_in_order.ts");
const { banned, kFirstTries, kNothingTried, orderOfRoutine, pinned, redo, requestOf, tryOn, undo } = await loadTypescript("../desk/squad/tried.ts");
const { contested, standingOf, withStanding } = await loadTypescript("../desk/squad/standing.ts");
const { costOf, isNothing } = await loadTypescript("../desk/squad/cost.ts");

const said = execFileSync(program(), ["block", "--club", "demo/quillmere", "--squad", "u13-kestrels", "--json"], { cwd: root, maxBuffer: 1 << 26 });
const block = blockIn({ squad: "u13-kestrels", plan: JSON.parse(said) });
const pack = samplePackage(program());
const [evening] = pack.evenings;
const drills = new Map(pack.catalogue.drills.map((drill) => [drill.id, drill]));
const familyOf = (id) => drills.get(id)?.family;
const placed = ({ drill, phase, family }) => ({ drill, phase, family });
const run = await loadDoor(readFileSync(wasmModule()));
const plan = (tried) => {
  const answer = JSON.parse(run(JSON.stringify(requestOf(evening, pack.catalogue, tried))));
  assert.equal(answer.answer, "plan", JSON.stringify(answer.faults));
  return answer;
};
const usual = plan(kNothingTried);
const names = (answer) => answer.items.map(({ drill }) => drill);
const cost = (answer) => costOf(usual, answer, (id) => id);

test("no plan yet is no block", () => {
  assert.equal(blockIn({ squad: "u13-kestrels" }), undefined);
});

test("the grid has every session and every dose, in the order in which they are done", () => {
  const { columns, rows } = gridOf(block);
  assert.equal(columns.length, block.sessions.length);
  assert.equal(rows.flatMap(({ cells }) => cells).filter(({ planned }) => planned).length, block.sessions.reduce((sum, session) => sum + session.drills.length, 0));
  const order = rows.map(({ drill }) => drill);
  for (const session of block.sessions.filter(({ match_day }) => !match_day)) {
    const places = session.drills.map(({ drill }) => order.indexOf(drill));
    assert.deepEqual(places, [...places].sort((a, b) => a - b));
  }
  const open = columns.filter(({ opens_spell }) => opens_spell).map(({ session }) => session.week);
  assert.deepEqual(open, block.spells.map(({ first_week }) => first_week));
});

test("a spell whose first week has no session is opened by the next one", () => {
  const [, second] = block.spells;
  const sessions = block.sessions.filter(({ week }) => week !== second.first_week);
  const { columns } = gridOf({ ...block, sessions });
  const first = sessions.find(({ week }) => week > second.first_week);
  assert.equal(columns.filter(({ opens_spell }) => opens_spell).at(-1).session.week, first.week);
});

test("what changed against the plan before stands in its cell", () => {
  const session = block.sessions.find(({ match_day }) => !match_day);
  const { drill } = session.drills[2];
  const rolling = { today: session.date, swapped: [], rungs: [], sentences: [], sessions: [{ date: session.date, start: session.start, of: 13, why: [], changes: [{ drill, what: "other dose" }] }] };
  const marked = gridOf({ ...block, rolling }).rows.flatMap(({ drill: row, cells }) => cells.filter(({ what }) => what).map(({ what }) => [row, what]));
  assert.deepEqual(marked, [[drill, "other dose"]]);
});

test("targets are in full doses, with sets where the families are known", () => {
  const rows = familiesOf(block, familyOf);
  assert.ok(rows.every(({ weeks }) => weeks.every(({ target }) => target === 2.5)));
  const trunk = rows.find(({ family }) => family === "trunk").weeks[0];
  const own = block.sessions.filter(({ week }) => week === 1).flatMap((session) => session.drills).filter(({ drill }) => familyOf(drill) === "trunk");
  assert.equal(trunk.sets, own.reduce((sum, { sets }) => sum + sets, 0));
  assert.equal(familiesOf(block, () => undefined)[0].weeks[0].sets, undefined);
  assert.deepEqual(loadsOf(block).map(({ load }) => load), ["contacts", "eccentric", "hard_running_metres"]);
});

test("of a session that is over only what was done counts as sets", () => {
  const sessions = block.sessions.map((session, index) => (index === 0 ? { ...session, happened: "missed", drills: session.drills.map((each) => ({ ...each, done: false })) } : session));
  const sets = (of) => familiesOf(of, familyOf).find(({ family }) => family === "trunk").weeks[0].sets;
  assert.ok(sets({ ...block, sessions }) < sets(block));
});

test("a drill moves inside its phase, with its family, and nowhere else", () => {
  const session = usual.items.map(placed);
  for (const { drill, phase } of session) {
    for (const other of session) {
      assert.equal(mayStandAt(session, drill, other.drill), drill !== other.drill && phase === other.phase);
      const moved = movedTo(session, drill, other.drill);
      if (!moved) continue;
      assert.deepEqual(moved.map((each) => each.drill).sort(), names(usual).sort());
      const groups = moved.map(({ phase: of, family }) => `${of} ${family}`).filter((group, index, all) => group !== all[index - 1]);
      assert.equal(new Set(groups).size, groups.length, "a family stays together");
    }
  }
  assert.equal(movedBy(session, session[0].drill, -1), undefined);
});

test("the real planner puts a moved drill where it was put, for every move there is", () => {
  const session = usual.items.map(placed);
  const routine = orderOfRoutine(evening).map((drill) => placed({ drill, ...drills.get(drill) }));
  let tried = 0;
  for (const { drill } of session) {
    for (const by of [1, -1]) {
      const moved = movedBy(session, drill, by);
      if (!moved) continue;
      const after = plan({ ...kNothingTried, order: orderWith(routine, moved) });
      const kept = new Set(names(after));
      assert.deepEqual(names(after), moved.map((each) => each.drill).filter((each) => kept.has(each)), drill);
      tried += 1;
    }
  }
  assert.ok(tried > 6, `${tried}`);
});

test("a drill that is left out does not pull its family along", () => {
  const of = (drill, family) => ({ drill, phase: "build", family });
  const routine = [of("a1", "a"), of("b1", "b"), of("a2", "a"), of("c1", "c")];
  assert.deepEqual(orderWith(routine, [of("b1", "b"), of("a2", "a")]), ["b1", "a1", "a2", "c1"]);
});

test("pins, bans, minutes and turnout reach the plan, and say what they cost", () => {
  const without = plan({ ...kNothingTried, ...banned(kNothingTried, "side-plank", true) });
  assert.ok(!names(without).includes("side-plank"));
  assert.ok(cost(without).changes.some(({ drill, difference }) => drill === "side-plank" && difference === "out"));
  const short = plan({ ...kNothingTried, minutes: 12 });
  assert.equal(short.slot_seconds, 720);
  assert.ok(cost(short).seconds < 0 && cost(short).changes.length > 0);
  const few = plan({ ...kNothingTried, turnout: 2 });
  assert.equal(few.turnout, 2);
  const out = names(short).length < names(usual).length && names(usual).find((drill) => !names(short).includes(drill));
  const kept = plan({ ...kNothingTried, minutes: 12, ...pinned(kNothingTried, out, true) });
  assert.ok(kept.outcome === "infeasible" || names(kept).includes(out));
});

test("nothing tried costs nothing; a family that nothing touches is told, and told again when it is back", () => {
  assert.ok(isNothing(cost(usual)));
  const five = plan({ ...kNothingTried, minutes: 5 });
  if (five.outcome === "optimal") {
    assert.ok(cost(five).uncovered.length > 0);
    assert.deepEqual(costOf(five, usual, String).covered.sort(), five.uncovered.map(({ family }) => family).sort());
  } else assert.ok(five.infeasible.way_out.length > 0);
});

test("what moved is the one drill, not all that slid aside", () => {
  const items = ["a", "b", "c", "d", "e"].map((drill) => ({ drill, name: drill, rung: "", sets: 1, amount: 1 }));
  const order = (...ids) => ({ items: ids.map((id) => items.find(({ drill }) => drill === id)), planned_seconds: 0 });
  assert.deepEqual(costOf(order("a", "b", "c", "d", "e"), order("b", "c", "d", "a", "e"), String).moved, ["a"]);
  assert.deepEqual(costOf(order("a", "b", "c", "d", "e"), order("a", "e", "b", "c"), String).moved, ["e"]);
});

test("every try is undone and done again, and a new one forgets what was undone", () => {
  const one = tryOn(kFirstTries, { minutes: 15 });
  const two = tryOn(one, banned(one.now, "squat", true));
  assert.deepEqual(two.now, { pins: [], bans: ["squat"], apart: [], minutes: 15 });
  assert.deepEqual(undo(two).now, one.now);
  assert.deepEqual(redo(undo(two)).now, two.now);
  assert.deepEqual(undo(undo(undo(two))).now, kNothingTried);
  assert.deepEqual(tryOn(undo(two), { turnout: 9 }).undone, []);
  assert.deepEqual({ ...two.now, ...pinned(two.now, "squat", true) }, { pins: ["squat"], bans: [], apart: [], minutes: 15 });
});

test("what stands is changed drill by drill, and the change back leaves the document as it was", () => {
  const content = { name: "K", locks: { pins: [{ drill: "squat", rung: "deep" }], bans: ["depth-jump"] }, rung: [{ drill: "squat", rung: "deep", from: "2026-12-07" }] };
  const wanted = { locks: { squat: "ban", "side-plank": "pin" }, rungs: { bridge: { rung: "leg-long", from: "2026-12-14" } } };
  const after = withStanding(content, wanted);
  assert.deepEqual(after.locks, { pins: [{ drill: "side-plank" }], bans: ["depth-jump", "squat"] });
  assert.deepEqual(after.rung.map(({ drill }) => drill), ["squat", "bridge"]);
  assert.deepEqual(standingOf(after, wanted), wanted);
  const plain = { name: "K", locks: { bans: ["depth-jump"] } };
  assert.deepEqual(withStanding(withStanding(plain, wanted), standingOf(plain, wanted)), plain);
  const nothing = { name: "K" };
  assert.deepEqual(withStanding(withStanding(nothing, wanted), standingOf(nothing, wanted)), nothing);
  // A pin that stands keeps its rung.
  assert.deepEqual(withStanding(content, { locks: { squat: "pin" }, rungs: {} }), content);
});

test("another lead's change is put together with this one, unless both are about one drill", () => {
  const wanted = { locks: { squat: "ban" }, rungs: {} };
  const before = { locks: { squat: "" }, rungs: {} };
  assert.deepEqual(contested(wanted, before, { locks: { squat: "" }, rungs: {} }), []);
  assert.deepEqual(contested(wanted, before, { locks: { squat: "ban" }, rungs: {} }), []);
  assert.deepEqual(contested(wanted, before, { locks: { squat: "pin" }, rungs: {} }), [{ part: "locks", key: "squat" }]);
});
