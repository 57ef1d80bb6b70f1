// The evening's own logic: where a run is after a reload, what each tap enters, how a drill goes by.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, wasmModule } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";
import { loadTypescript } from "./typescript.mjs";

const { step } = await loadTypescript("evening/step.ts");
const { where, secondsLate } = await loadTypescript("evening/where.ts");
const { openEvening } = await loadTypescript("evening/open_evening.ts");
const { requestFor } = await loadTypescript("evening/request.ts");
const { courseOf, momentAt, soundsOf } = await loadTypescript("evening/course.ts");
const { drillOf, rungBeside } = await loadTypescript("evening/drill.ts");

const pack = samplePackage(program());
const run = await loadDoor(readFileSync(wasmModule()));
const kBegan = Date.parse("2026-11-26T18:00:00+01:00");
const fresh = openEvening(pack, pack.evenings[0]);
const plan = JSON.parse(run(JSON.stringify(requestFor("plan", pack, fresh))));
const second = (seconds) => kBegan + seconds * 1000;

function through(state, ...events) {
  const entries = [];
  for (const event of events) {
    const after = step(state, event);
    state = after.state;
    entries.push(...after.entries);
  }
  return { state, entries };
}
const started = through(fresh, { event: "planned", plan }, { event: "start", at: kBegan });

test("starting enters the session once, however often it is tapped", () => {
  const again = through(started.state, { event: "start", at: second(2) }, { event: "start", at: second(3) });
  assert.deepEqual(started.entries, [{ kind: "session-started", squad: "u13-kestrels", day: "2026-11-26", start: "18:00" }]);
  assert.deepEqual(again.entries, []);
  assert.equal(again.state.run.began, kBegan);
});

test("after a reload the run goes on at the drill and the second", () => {
  const { state } = through(started.state, { event: "done", item: 0, at: second(70) }, { event: "done", item: 1, at: second(130) });
  const reloaded = JSON.parse(JSON.stringify(state));
  const found = where(reloaded, second(149));
  assert.equal(found.drill.drill, plan.items[2].drill);
  assert.equal(found.seconds, 19);
  assert.equal(found.next.drill, plan.items[3].drill);
});

test("a paused clock stands over a reload, and goes on where it stood", () => {
  const { state } = through(started.state, { event: "pause", at: second(20) });
  const reloaded = JSON.parse(JSON.stringify(state));
  assert.equal(where(reloaded, second(400)).seconds, 20);
  const on = through(reloaded, { event: "go-on", at: second(400) }).state;
  assert.equal(where(on, second(410)).seconds, 30);
  assert.equal(on.run.paused_total, 380000);
});

test("a call of five minutes leaves the drill as it is, five minutes further and later", () => {
  const before = secondsLate(started.state, second(10));
  assert.equal(where(started.state, second(310)).seconds, 310);
  assert.equal(where(started.state, second(310)).item, 0);
  assert.equal(secondsLate(started.state, second(310)), before + 310 - plan.items[0].takes_seconds);
  assert.ok(before < 0 && secondsLate(started.state, second(610)) > 0);
});

test("a double tap on Done passes one drill, and enters it once", () => {
  const { state, entries } = through(
    started.state,
    { event: "done", item: 0, at: second(60) },
    { event: "done", item: 0, at: second(60.1) },
    { event: "done", item: 1, at: second(60.3) },
  );
  assert.equal(state.run.item, 1);
  assert.deepEqual(entries.map((entry) => [entry.drill, entry.mark]), [[plan.items[0].drill, "done"]]);
});

test("going back and doing it again enters nothing twice", () => {
  const { state, entries } = through(
    started.state,
    { event: "done", item: 0, at: second(60) },
    { event: "back", item: 1, at: second(62) },
    { event: "done", item: 0, at: second(90) },
  );
  assert.equal(state.run.item, 1);
  assert.equal(entries.length, 1);
});

test("what the ledger keeps of a drill that was gone back to is what was tapped last", () => {
  const drill = plan.items[0].drill;
  const marksOf = (...events) => through(started.state, ...events).entries.map((entry) => entry.mark);
  const back = (at) => ({ event: "back", item: 1, at: second(at) });
  const skip = (at) => ({ event: "skip", item: 0, at: second(at) });
  const done = (at) => ({ event: "done", item: 0, at: second(at) });
  const [easier, harder] = ["easier", "harder"].map((event) => ({ event, item: 0 }));
  assert.deepEqual(marksOf(skip(60), back(62), easier, skip(90)), ["skipped", "easier", "skipped"]);
  assert.deepEqual(marksOf(easier, done(60), back(62), done(90)), ["easier", "done"]);
  assert.deepEqual(marksOf(done(60), back(62), skip(90), back(92), done(120)), ["done", "skipped", "done"]);
  assert.deepEqual(marksOf(easier, easier, harder, easier), ["easier", "harder", "easier"]);
  assert.deepEqual(through(started.state, easier, harder, done(60)).state.marks[drill], ["easier", "harder", "done"]);
});

test("skip, easier and harder are marked, and the rung changes on the screen", () => {
  const at = plan.items.findIndex((item) => item.drill === "side-plank");
  let { state } = started;
  for (let item = 0; item < at; item++) state = through(state, { event: "skip", item, at: second(60 * (item + 1)) }).state;
  const rung = rungBeside(drillOf(pack, "side-plank"), plan.items[at].rung, 1);
  const harder = through(state, { event: "harder", item: at, rung }, { event: "harder", item: at, rung });
  assert.equal(harder.state.plan.items[at].rung, "legs-straight");
  assert.deepEqual(harder.entries.map((entry) => entry.mark), ["harder"]);
  assert.equal(rungBeside(drillOf(pack, "side-plank"), "knees-down", -1), undefined);
  assert.deepEqual(state.marks[plan.items[0].drill], ["skipped"]);
});

test("wrap-up enters attendance, how it went and what needs help, once", () => {
  let { state } = started;
  plan.items.forEach((_, item) => (state = through(state, { event: "done", item, at: second(70 * (item + 1)) }).state));
  assert.equal(state.screen, "wrap-up");
  assert.equal(state.wrap_up.there, plan.turnout);
  const wrap = [
    { event: "there", count: 13 },
    { event: "did-it", did_it: "most" },
    { event: "needs-help", drill: "squat", yes: true },
    { event: "wrapped-up", at: second(1080) },
    { event: "wrapped-up", at: second(1081) },
  ];
  const { entries } = through(state, ...wrap);
  const session = { squad: "u13-kestrels", day: "2026-11-26", start: "18:00" };
  assert.deepEqual(entries, [
    { kind: "attendance", ...session, there: 13 },
    { kind: "wrap-up", ...session, happened: "held", did_it: "most", minutes: 18 },
    { kind: "drill-marked", ...session, drill: "squat", mark: "needs-help" },
  ]);
  const early = through(started.state, { event: "go", screen: "wrap-up" }, ...wrap.slice(0, 4));
  assert.equal(early.entries.find((entry) => entry.kind === "wrap-up").happened, "cut-short");
});

test("somebody hurt is entered, and is away from then on", () => {
  const { state, entries } = through(started.state, { event: "hurt", player: "Q07", place: "knee" });
  assert.deepEqual(entries, [{ kind: "hurt", player: "Q07", place: "knee" }]);
  assert.deepEqual(state.hurt, ["Q07"]);
  assert.ok(requestFor("plan", pack, state).squad.tonight.away.includes("Q07"));
});

test("a hold counts down a side at a time, with the change between", () => {
  const item = plan.items.find((each) => each.drill === "side-plank");
  const course = courseOf(item, drillOf(pack, "side-plank"));
  const work = course.stretches.filter((stretch) => stretch.part === "work");
  assert.deepEqual(work.map((stretch) => [stretch.seconds, stretch.side]), [[20, "one"], [20, "other"], [20, "one"], [20, "other"]]);
  assert.equal(momentAt(course, work[1].from + 0.5).left, 20);
  assert.equal(momentAt(course, course.seconds + 1).stretch, undefined);
  for (const stretch of course.stretches.slice(1)) assert.ok(stretch.from > 0);
});

test("repetitions sound at the drill's tempo", () => {
  const item = plan.items.find((each) => each.drill === "squat");
  const drill = drillOf(pack, "squat");
  const course = courseOf(item, drill);
  const first = course.stretches.find((stretch) => stretch.part === "work");
  const beats = soundsOf(course).filter((each) => each.sound === "beat" && each.at < first.from + first.seconds);
  assert.equal(beats.length, item.amount - 1);
  assert.equal(beats[0].at - first.from, drill.dose.tempo_seconds);
  assert.equal(momentAt(course, first.from + 2.5 * drill.dose.tempo_seconds).beat, 3);
});

// Entries with ids and numbers, as keep gives them out.
const idOf = (sequence) => `019b1c2e-7d40-7a31-8c55-${String(sequence).padStart(12, "0")}`;
const named = (entries, from = 0) =>
  entries.map((entry, at) => {
    const sequence = from + at + 1;
    return { ...entry, id: idOf(sequence), sequence, device_time: "2026-11-26T18:20:00+01:00" };
  });

// Each event as the page does it: its entries are kept and come back with their ids.
function kept(state, ...events) {
  const all = [];
  for (const event of events) {
    const after = through(state, event);
    const made = named(after.entries, all.length);
    all.push(...made);
    state = step(after.state, { event: "kept", entries: made }).state;
  }
  return { state, entries: all };
}

const kWrapUp = [
  { event: "go", screen: "wrap-up" },
  { event: "there", count: 15 },
  { event: "did-it", did_it: "most" },
  { event: "needs-help", drill: "squat", yes: true },
  { event: "wrapped-up", at: second(1080) },
];

test("a corrected wrap-up names what it corrects, and enters nothing that stays as it was", () => {
  const { entries } = kept(
    started.state,
    ...kWrapUp,
    { event: "correct-wrap-up" },
    { event: "there", count: 13 },
    { event: "needs-help", drill: "squat", yes: false },
    { event: "wrapped-up", at: second(2000) },
    { event: "correct-wrap-up" },
    { event: "wrapped-up", at: second(3000) },
  );
  const [attendance, wrap, help, again, back, ...more] = entries;
  assert.deepEqual([attendance.kind, wrap.kind, help.mark], ["attendance", "wrap-up", "needs-help"]);
  assert.equal(again.kind, "attendance");
  assert.deepEqual([again.there, again.corrects], [13, attendance.id]);
  assert.deepEqual([back.kind, back.corrects], ["taken-back", help.id]);
  assert.deepEqual(more, []);
});

test("a mistaken hurt or soreness is taken back once, and lessens no caution", () => {
  const hurt = kept(started.state, { event: "hurt", player: "Q04" }, { event: "sore", sore: { player: "Q07", points: 7 } });
  const { state, entries } = through(
    hurt.state,
    ...hurt.entries.flatMap(({ id }) => [{ event: "take-back", id }, { event: "take-back", id }]),
    { event: "sore", sore: { player: "Q07", points: 1 } },
  );
  assert.deepEqual(entries.map(({ kind, player, corrects }) => [kind, player, corrects]), [
    ["withdrawn", "Q04", hurt.entries[0].id],
    ["withdrawn", "Q07", hurt.entries[1].id],
    ["soreness", "Q07", undefined],
  ]);
  const { away } = requestFor("plan", pack, state).squad.tonight;
  assert.ok(away.includes("Q04") && away.includes("Q07"));
});

test("the ledger takes what the phone corrects, and shows the newest", () => {
  const folder = mkdtempSync(join(tmpdir(), "lanework-corrected-"));
  const lanework = (...rest) => execFileSync(program(), ["ledger", ...rest, "--ledger", join(folder, "ledger")], { encoding: "utf8" });
  const { entries } = kept(
    fresh,
    { event: "planned", plan },
    { event: "start", at: kBegan },
    { event: "hurt", player: "Q04" },
    { event: "take-back", id: idOf(2) },
    ...kWrapUp,
    { event: "correct-wrap-up" },
    { event: "there", count: 13 },
    { event: "wrapped-up", at: second(2000) },
  );
  assert.ok(entries.some(({ kind, corrects }) => kind === "withdrawn" && corrects === idOf(2)));
  try {
    lanework("new");
    writeFileSync(join(folder, "batch.json"), JSON.stringify({ entries }));
    lanework("add", join(folder, "batch.json"), "--device", "phone-1", "--author", "maren");
    const { sessions, odd = [] } = JSON.parse(lanework("state", "--json"));
    assert.equal(sessions.length, 1, JSON.stringify(sessions));
    assert.equal(sessions[0].attendance?.there, 13, JSON.stringify(sessions));
    assert.ok(!sessions[0].twice);
    assert.deepEqual(odd, []);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
