// The week's table, who joins in and the drills that help was asked with, from what the server tells.
import assert from "node:assert/strict";
import { test } from "node:test";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { dayAfter, isDay, mondayOf, momentOf, weekdayOf, weekFrom } = await loadTypescript("../desk/week/days.ts");
const { eveningsOf, plannedIn, sumsOf, weekTable } = await loadTypescript("../desk/week/week_table.ts");
const { helpAsked } = await loadTypescript("../desk/week/help_asked.ts");
const { answersOf, drillsOf, seenEvenings } = await loadTypescript("../desk/week/visit.ts");
const { stopBy } = await loadTypescript("../desk/week/week_keys.ts");
const { joiningOf } = await loadTypescript("../desk/week/joining.ts");

const kMonday = "2026-11-23";
const kNow = "2026-11-27 18:30";
const kSquads = ["wrens", "kestrels", "merlins", "plovers"].map((id) => ({ id, name: id, relation: "own" }));
const entered = (squad, day, more = {}) => ({ squad, day, start: "18:00", started: true, drills_that_need_help: [], visits: 0, ...more });
const held = (squad, day, more = {}) => entered(squad, day, { happened: "held", did_it: "most", minutes: 19, there: 12, ...more });
const planned = (squad, day, more = {}) => ({ squad, day, start: "18:00", minutes: 20, match_day: false, ...more });

test("keys move through a squad's row and through a day's evenings, of which there may be two", () => {
  const stops = [];
  for (let row = 0; row < 3; row++) for (let column = 0; column < 9; column++) stops.push({ row, column, nth: 0 });
  stops.splice(stops.findIndex(({ row, column }) => row === 1 && column === 5), 0, { row: 1, column: 4, nth: 1 });
  const to = (key, from, control = false) => {
    const stop = stopBy(key, control, { nth: 0, ...from }, stops);
    return stop && [stop.row, stop.column, stop.nth];
  };
  assert.deepEqual(to("ArrowRight", { row: 0, column: 0 }), [0, 1, 0]);
  assert.deepEqual(to("ArrowLeft", { row: 0, column: 0 }), [0, 0, 0]);
  assert.deepEqual(to("ArrowDown", { row: 0, column: 4 }), [1, 4, 0]);
  assert.deepEqual(to("ArrowDown", { row: 1, column: 4 }), [1, 4, 1]);
  assert.deepEqual(to("ArrowDown", { row: 1, column: 4, nth: 1 }), [2, 4, 0]);
  assert.deepEqual(to("ArrowUp", { row: 2, column: 4 }), [1, 4, 1]);
  assert.deepEqual(to("ArrowRight", { row: 1, column: 4, nth: 1 }), [1, 5, 0]);
  assert.deepEqual(to("ArrowDown", { row: 2, column: 8 }), [2, 8, 0]);
  assert.deepEqual([to("Home", { row: 1, column: 6 }), to("End", { row: 1, column: 6 })], [[1, 0, 0], [1, 8, 0]]);
  assert.deepEqual([to("Home", { row: 1, column: 6 }, true), to("End", { row: 1, column: 6 }, true)], [[0, 0, 0], [2, 8, 0]]);
  assert.equal(to("a", { row: 0, column: 0 }), undefined);
});

test("days are counted over the year's end and in summer time", () => {
  assert.equal(dayAfter("2026-12-31", 1), "2027-01-01");
  assert.equal(dayAfter("2026-03-28", 2), "2026-03-30");
  assert.equal(mondayOf("2026-11-29"), kMonday);
  assert.equal(mondayOf(kMonday), kMonday);
  assert.equal(weekdayOf("2026-11-29"), 7);
  assert.deepEqual(weekFrom("2026-12-28").at(-1), "2027-01-03");
  assert.equal(momentOf(new Date(2026, 0, 2, 3, 4)), "2026-01-02 03:04");
  assert.ok(isDay("2028-02-29") && !isDay("2026-02-29") && !isDay("2026-13-01") && !isDay("yesterday"));
});

test("each evening has the state that was entered, or that its time tells", () => {
  const of = (one, plan) => eveningsOf(one ? [one] : [], plan ? [plan] : [], kNow)[0].state;
  assert.equal(of(held("wrens", kMonday)), "held");
  assert.equal(of(held("wrens", kMonday, { happened: "cut-short" })), "cut-short");
  assert.equal(of(entered("wrens", kMonday, { happened: "missed", started: false })), "not-run");
  assert.equal(of(held("wrens", kMonday, { did_it: "nobody" })), "nobody");
  assert.equal(of(entered("wrens", kMonday)), "begun");
  assert.equal(of(undefined, planned("wrens", kMonday)), "unheard");
  assert.equal(of(undefined, planned("wrens", "2026-11-27")), "unheard"); // half an hour ago
  assert.equal(of(undefined, planned("wrens", "2026-11-27", { start: "19:00" })), "to-come");
  assert.equal(of(undefined, planned("wrens", "2026-11-28")), "to-come");
});

test("what was entered and what was planned of one evening are one", () => {
  const evenings = eveningsOf([held("wrens", kMonday)], [planned("wrens", kMonday), planned("wrens", "2026-11-25")], kNow);
  assert.deepEqual(evenings.map(({ day, state, planned_minutes, minutes }) => [day, state, planned_minutes, minutes]), [
    [kMonday, "held", 20, 19],
    ["2026-11-25", "unheard", 20, undefined],
  ]);
  assert.equal(eveningsOf([held("wrens", kMonday, { start: "17:00" })], [planned("wrens", kMonday)], kNow).length, 2);
});

test("a row has its squad's seven days and sums, and a squad without evenings has a row too", () => {
  const evenings = eveningsOf(
    [held("wrens", kMonday), held("wrens", "2026-11-25", { happened: "cut-short", minutes: 12 }), entered("kestrels", kMonday, { happened: "missed" }), held("wrens", "2026-11-16")],
    [planned("wrens", "2026-11-29")],
    kNow,
  );
  const rows = weekTable(kSquads, evenings, kMonday);
  assert.deepEqual(rows.map(({ squad, run, over, minutes }) => [squad, run, over, minutes]), [["wrens", 2, 2, 31], ["kestrels", 0, 1, 0], ["merlins", 0, 0, 0], ["plovers", 0, 0, 0]]);
  assert.deepEqual(rows[0].days.map((day) => day.length), [1, 0, 1, 0, 0, 0, 1]);
  assert.deepEqual(sumsOf(rows), { over: 3, run: 2, cut_short: 1, not_run: 1, unheard: 0, minutes: 31 });
});

test("what falls out says why, and is neither over nor to come", () => {
  const squads = [{ squad: "wrens", planned: [{ day: kMonday, start: "18:00" }], fell_out: [{ day: "2026-11-25", start: "18:00", why: "Winter break", because: { code: "holiday", name: "Winter break" } }] }];
  const rows = weekTable(kSquads, eveningsOf([], plannedIn({ squads }), kNow), kMonday);
  assert.deepEqual(rows[0].days.flat().map(({ state, falls_out, match_day }) => [state, falls_out, match_day]), [["unheard", undefined, false], ["falls-out", { why: "Winter break", because: { code: "holiday", name: "Winter break" } }, false]]);
  assert.deepEqual([rows[0].over, sumsOf(rows).over, sumsOf(rows).unheard], [1, 1, 1]);
  // It took place all the same: what was entered stands.
  const held_on = eveningsOf([held("wrens", "2026-11-25", { note: "in the hall", visits: 1 })], plannedIn({ squads }), kNow);
  assert.deepEqual(held_on.map(({ state, note, visited }) => [state, note, visited]).at(-1), ["held", "in the hall", true]);
});

test("who joins in: by the three words; of whom nothing is said joins in", () => {
  const roster = ["Q1", "Q2", "Q3"].map((player) => ({ player, name: player, age_group: "under 13" }));
  const standing = [
    { player: "Q2", word: "joins in with swaps", instructions: ["no jumping"], until: "2026-12-03" },
    { player: "Q3", word: "sits out, see a clinician", instructions: [] },
  ];
  const groups = joiningOf({ roster, standing });
  assert.deepEqual(groups.map(({ word, players }) => [word, players.map(({ name, until }) => [name, until])]), [
    ["joins in", [["Q1", undefined]]],
    ["joins in with swaps", [["Q2", "2026-12-03"]]],
    ["sits out, see a clinician", [["Q3", undefined]]],
  ]);
});

test("help asked: by how many squads, the latest evening first", () => {
  const ask = (squad, day, ...drills) => held(squad, day, { drills_that_need_help: drills });
  const evenings = eveningsOf([ask("wrens", kMonday, "squat"), ask("wrens", "2026-11-25", "squat"), ask("kestrels", kMonday, "side-plank"), ask("merlins", kMonday, "side-plank")], [], kNow);
  assert.deepEqual(helpAsked(evenings).map(({ drill, asked }) => [drill, asked.map(({ day }) => day)]), [["side-plank", [kMonday, kMonday]], ["squat", ["2026-11-25", kMonday]]]);
});

test("a visit's answers say what was filled in, and nothing else", () => {
  const drills = { "side-plank": { did_it: "most", help: " the count " }, bridge: { help: "  " } };
  assert.deepEqual(answersOf({ drills, taught: "landing, to Maren", next: " " }), ["did-it side-plank most", "help side-plank the count", "taught landing, to Maren"]);
  assert.deepEqual(answersOf({ drills: {}, taught: "", next: "" }), []);
});

test("a visit is about a planned evening's drills, and about an evening that was run", () => {
  const block = { sessions: [{ date: "2026-11-24", start: "18:00:00", drills: [{ drill: "bridge" }, { drill: "side-plank" }, { drill: "bridge" }] }] };
  assert.deepEqual(drillsOf(block, "2026-11-24", "18:00"), ["bridge", "side-plank"]);
  assert.deepEqual(drillsOf(block, "2026-11-25", "18:00"), []);
  assert.deepEqual(drillsOf(undefined, "2026-11-24", "18:00"), []);
  const evenings = eveningsOf([held("kestrels", "2026-11-24"), entered("kestrels", "2026-11-25", { happened: "missed" }), held("wrens", "2026-11-26")], [planned("kestrels", "2026-11-26"), planned("kestrels", "2026-11-28")], kNow);
  assert.deepEqual(seenEvenings(evenings, "kestrels").map(({ day }) => day), ["2026-11-26", "2026-11-24"]);
});
