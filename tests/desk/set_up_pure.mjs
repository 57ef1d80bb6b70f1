// Set up's own reckoning: what a week gives of each family against the program's block, moves in a routine by the real door, dates
// of birth, rows that are certainly wrong, and who is who in another list.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { loadDoor } from "../../wasm/load.mjs";
import { program, root, wasmModule } from "../pitchside/places.mjs";
import { samplePackage } from "../pitchside/sample_package.mjs";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { weekOf } = await loadTypescript("../desk/set_up/routine/week_work.ts");
const { drillsToAdd, lineMovedBy, lineMovedTo, withDrill, withoutLine } = await loadTypescript("../desk/set_up/routine/routine_document.ts");
const { isoDate, mayBeDate, orderOf } = await loadTypescript("../desk/set_up/sheet_dates.ts");
const { rowFaults } = await loadTypescript("../desk/set_up/row_faults.ts");
const { freshIds, whoIsWho } = await loadTypescript("../desk/set_up/who_is_who.ts");
const { putTogether } = await loadTypescript("../desk/api/put_together.ts");
const { readRows, tableOf, writeRoster } = await loadTypescript("../desk/set_up/sheet.ts");

const pack = samplePackage(program());
const { catalogue } = pack;
const byId = new Map(catalogue.drills.map((drill) => [drill.id, drill]));
const drillOf = (id) => byId.get(id);
const families = catalogue.families.family;
const routine = { ...pack.evenings[0].documents.routine, minutes: 20 };
const ids = ({ drill }) => drill.map(({ id }) => id);

test("a session's doses of each family are those of the program's block", () => {
  const said = JSON.parse(execFileSync(program(), ["block", "--club", "demo/quillmere", "--squad", "u13-fieldfares", "--json"], { cwd: root, maxBuffer: 1 << 26 }));
  const [squad] = said.squads;
  const week = squad.weeks.find(({ week: number }) => squad.sessions.some((session) => session.week === number && !session.match_day));
  const sessions = squad.sessions.filter((session) => session.week === week.week);
  const sum = new Map(families.map(({ key }) => [key, 0]));
  for (const session of sessions) {
    const lines = session.drills.map(({ drill, rung, sets, amount }) => ({ id: drill, rung, sets, amount }));
    for (const one of weekOf({ ...routine, drill: lines }, drillOf, families, 12, 1)) sum.set(one.family, sum.get(one.family) + one.doses);
  }
  for (const { family, credits } of week.families) assert.equal(sum.get(family) * 4, credits, family);
});

test("a drill is put behind its family, and the door takes the routine with every drill that is offered", async () => {
  const run = await loadDoor(readFileSync(wasmModule()));
  const faultsOf = (tried) => {
    const answer = JSON.parse(run(JSON.stringify({ request: "plan", catalogue, ...pack.evenings[0].documents, routine: tried })));
    return (answer.faults ?? []).filter(({ file, field }) => file.includes("routine") && !field.endsWith("amount")); // a ceiling is told, not kept from
  };
  const offered = drillsToAdd(routine, catalogue.drills);
  assert.ok(offered.length > 10);
  for (const drill of offered.slice(0, 12)) {
    const more = withDrill(routine, drill, drillOf);
    assert.equal(more.drill.length, routine.drill.length + 1);
    assert.deepEqual(faultsOf(more), [], drill.id);
    assert.deepEqual(withoutLine(more, drill.id), routine);
  }
});

test("a line moves within its part of the session and comes back", () => {
  const [first, second] = ids(routine);
  const swapped = lineMovedTo(routine, drillOf, second, first);
  assert.deepEqual(ids(swapped).slice(0, 2), [second, first]);
  assert.deepEqual(lineMovedBy(swapped, drillOf, first, -1), routine);
  assert.equal(lineMovedTo(routine, drillOf, first, ids(routine).at(-1)), routine); // another part
});

test("dates tell by the column which comes first, or are asked about", () => {
  assert.equal(orderOf(["03/04/2014", "13/04/2014"]), "day-first");
  assert.equal(orderOf(["03/04/2014", "03/14/2014"]), "month-first");
  assert.equal(orderOf(["13/04/2014", "04/13/2014"]), "both");
  assert.equal(orderOf(["03/04/2014"]), "");
  assert.equal(orderOf(["2014-04-03", "3.4.2014"]), "none");
  assert.equal(isoDate("03/04/2014", "day-first"), "2014-04-03");
  assert.equal(isoDate("03/04/2014", "month-first"), "2014-03-04");
  assert.equal(isoDate("31/02/2014", "day-first"), "31/02/2014");
  for (const [cell, may] of [["2014-02-29", false], ["2012-02-29", true], ["31.04.2014", false], ["31 May 2014", true], ["41425", true], ["unknown", false]]) assert.equal(mayBeDate(cell, ""), may, cell);
});

test("headings below a title, and rows that are certainly wrong", () => {
  const { headings, rows, above } = tableOf(readRows("Our club;;\nName;DOB;Team\nAda;2014-02-30;U13\n;2014-02-03;U13\nAda;2014-02-30;\n"));
  assert.deepEqual([headings, above, rows.length], [["Name", "DOB", "Team"], 1, 3]);
  const faults = rowFaults(rows, ["name", "birth", "squad"], "");
  assert.deepEqual(faults.map(({ row, trouble }) => `${row} ${trouble}`), ["0 no-such-day", "1 no-name", "2 no-such-day", "2 no-squad", "2 twice"]);
});

test("ids go by name, whatever its order, and by the squad where a name is there twice", () => {
  const known = [{ player: "Q1", name: "Ada Mársh", squads: ["U13"] }, { player: "Q2", name: "Bo Fell", squads: ["U13"] }, { player: "Q3", name: "Bo Fell", squads: ["U16"] }];
  const rows = [["bo fell", "U16"], ["Marsh, Ada", "U14"], ["Bo Fell", "U10"], ["Cleo Holm", "U13"]];
  const fresh = freshIds(4, false);
  const who = whoIsWho(rows, ["name", "squad"], known, fresh, {});
  assert.deepEqual(who.map(({ how }) => how), ["known", "known", "unsure", "new"]);
  assert.deepEqual(who.map(({ id }) => id), ["Q3", "Q1", fresh[2], fresh[3]]);
  assert.equal(whoIsWho(rows, ["name", "squad"], known, fresh, { 2: "Q2" })[2].id, "Q2");
  assert.equal(new Set(freshIds(2000, false)).size, 2000);
  assert.equal(writeRoster([["=cmd", "x"]], ["name", ""], "", ["P01"]), '"ID","Name"\n"P01","=cmd"\n');
});

test("two leads' changes of one document are put together, and what both changed is named", () => {
  const base = { name: "U13", minutes: 20, week: [{ weekday: "tuesday" }, { weekday: "thursday" }], kit: { cones: 16, balls: 10 } };
  const evening = (weekday) => ({ weekday });
  const mine = { ...base, minutes: 25, week: [...base.week, evening("friday")] };
  const theirs = { name: "U13 A", week: [evening("thursday"), evening("monday")], kit: { balls: 10, cones: 16 }, minutes: 20 };
  const { content, both } = putTogether(base, mine, theirs, ["week"]);
  assert.deepEqual(both, []);
  assert.deepEqual(content, { name: "U13 A", minutes: 25, kit: base.kit, week: ["thursday", "monday", "friday"].map(evening) });
  assert.deepEqual(putTogether(base, mine, theirs).both, ["week"]);
  assert.deepEqual(putTogether(base, mine, theirs).content.week, mine.week);
  // Both changed the same evening: no row of either is guessed.
  const [moved, other] = ["monday", "friday"].map((day) => ({ ...base, week: [evening(day), evening("thursday")] }));
  assert.deepEqual(putTogether(base, moved, other, ["week"]), { content: moved, both: ["week"] });
  // One took a key out that the other left, and both did the same.
  const { kit: _, ...without } = base;
  assert.deepEqual(putTogether(base, without, { ...base, name: "x" }).content, { ...without, name: "x" });
  assert.deepEqual(putTogether(base, { ...base, name: "x" }, { ...base, name: "x" }).both, []);
});
