// What a club prints and hands out: cards of a week, the pack for a coach's first evening, calendars, the open table and
// the summary, made of the club's folder and of the answer of 'lanework block'.
import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const same = (what, is, wanted) => (JSON.stringify(is) === JSON.stringify(wanted) ? "" : `${what}: ${JSON.stringify(is)}, not ${JSON.stringify(wanted)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text}` : "");
const textOf = (pdf) => spawnSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }).stdout.replace(/\s+/g, " ");
const filesIn = (folder) => (existsSync(folder) ? readdirSync(folder, { recursive: true }).filter((name) => name.includes(".")).sort() : []);

const kSquad = ["--squad", "u13-kestrels"];
const on = (club, command, ...words) => club.run(command, "--club", club.folder, "--catalogue", club.path("catalogue"), "--out", club.out, ...words);

// The answer of one squad, as a file in the club's folder.
function answerOf(club, change = () => {}) {
  const said = club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), "--json", ...kSquad);
  const answer = JSON.parse(said.out);
  change(answer);
  writeFileSync(club.path("answer.json"), JSON.stringify(answer));
  return answer;
}
const withAnswer = (club) => ["--block", club.path("answer.json")];

const kStale = [
  ["another block", (a) => (a.monday = "2026-11-30"), /monday: found 6 weeks from 2026-11-30, expected 6 weeks from 2026-11-23, as club\.toml says \(plan the block again: /],
  ["an unknown squad", (a) => (a.squads[0].squad = "u99"), /squads\.1\.squad: found 'u99', expected a squad of the club/],
  ["a session on another day", (a) => (a.squads[0].sessions[0].date = "2026-11-25"), /sessions\.1: found u13-kestrels on 2026-11-25 at 18:00, expected a session of the squad's calendar/],
  ["an unknown drill", (a) => (a.squads[0].sessions[0].drills[0].drill = "moon-walk"), /drills\.1: found 'moon-walk', 'steady', \d x \d+, expected a drill, a rung and a dose of the catalogue/],
  ["no JSON", null, /answer\.json:1:\d+: found/],
];

export const clubPages = [
  withClub("cards: a week of some squads, one folder a squad, the same on one thread and on many", (club) => {
    const some = ["u10-wrens", "u13-kestrels", "u15-curlews", "u17-herons"].flatMap((id) => ["--squad", id]);
    const many = on(club, "cards", "--week", "2", ...some, "--threads", "3");
    const first = new Map(filesIn(club.out).map((name) => [name, readFileSync(join(club.out, name))]));
    rmSync(club.out, { recursive: true });
    const one = on(club, "cards", "--week", "2", ...some, "--threads", "1");
    const differing = filesIn(club.out).filter((name) => !first.get(name)?.equals(readFileSync(join(club.out, name))));
    const squads = new Set([...first.keys()].map((name) => name.split("/")[0]));
    return all(status(many, 0), status(one, 0), same("bytes that differ", differing, []), same("output", one.out === many.out, true),
      squads.size === 4 ? "" : `${squads.size} squads`, says(many.err, /^card \d+ of \d+$/m), says(many.err, /^\d+ pages in [\d.]+ s, [\d.]+ s a page$/m),
      first.has("u13-kestrels/2026-12-01-card.pdf") && first.has("u13-kestrels/2026-12-03-slip.pdf") ? "" : [...first.keys()].join());
  }),
  withClub("cards: a squad's whole block, by the answer's drills", (club) => {
    const answer = answerOf(club);
    const said = on(club, "cards", ...kSquad, "--all-weeks", ...withAnswer(club));
    const cards = filesIn(club.out).filter((name) => name.endsWith("-card.pdf"));
    const dates = answer.squads[0].sessions.map((session) => `u13-kestrels/${session.date}-card.pdf`);
    const spell = answer.squads[0].spells.find((each) => each.comes_in.length > 0);
    const session = answer.squads[0].sessions.find((each) => each.week === spell.first_week && each.drills.some((drill) => spell.comes_in.includes(drill.drill)));
    const text = textOf(`${club.out}/u13-kestrels/${session.date}-card.pdf`);
    return all(status(said, 0), same("cards", cards, dates.sort()), says(text, /New from this week: /), says(text, /new from this week/));
  }),
  withClub("cards: a week of holidays prints nothing and says why", (club) => {
    const said = on(club, "cards", "--week", "5");
    return all(status(said, 0), same("lines", said.lines, ["no session in week 5: Winter break"]), club.wrote() ? "something was written" : "");
  }),
  ...[["a week past the block", ["--week", "7"], /--week: found 7, expected a week of the block, 1 to 6/], ["an unknown squad", ["--squad", "u99"], /--squad: found 'u99'/]].map(
    ([what, words, pattern]) => withClub(`cards: ${what} is one line, status 2`, (club) => {
      const said = on(club, "cards", ...words);
      return all(status(said, 2), says(said.err, pattern), same("lines", said.lines.length, 1), club.wrote() ? "something was written" : "");
    })),
  ...kStale.map(([what, change, pattern]) => withClub(`cards, export, summary: an answer of ${what} is one line, status 2, nothing written`, (club) => {
    if (change) answerOf(club, change);
    else writeFileSync(club.path("answer.json"), "nonsense");
    return all(...["cards", "export", "summary"].map((command) => {
      const said = on(club, command, ...kSquad, ...withAnswer(club));
      return all(status(said, 2), says(said.lines[0], pattern), said.out, club.wrote() ? "something was written" : "");
    }));
  })),
  withClub("export: calendars and the table carry drills and nobody's name or restriction", (club) => {
    answerOf(club);
    const said = on(club, "export", ...kSquad, ...withAnswer(club), "--stamp", "20261120T080000Z");
    const files = filesIn(club.out);
    const calendar = readFileSync(`${club.out}/u13-kestrels.ics`, "utf8").replaceAll("\r\n ", "");
    const text = files.map((name) => readFileSync(join(club.out, name), "utf8")).join("\n");
    const rows = readFileSync(club.path("roster.csv"), "utf8").split("\n").filter((row) => /^[QW]\d\d;/.test(row));
    const named = rows.map((row) => row.split(";")[1].replaceAll('"', "")).filter((name) => text.includes(name));
    const again = text;
    on(club, "export", ...kSquad, ...withAnswer(club), "--stamp", "20261120T080000Z");
    const repeated = filesIn(club.out).map((name) => readFileSync(join(club.out, name), "utf8")).join("\n");
    return all(status(said, 0), same("files", files, ["datapackage.json", "sessions.csv", "u13-kestrels.ics"]), same("named", named, []),
      says(calendar, /DESCRIPTION:Easy laps of the lane\\, one steady pace: 3 passes\\n/), says(calendar, /DTSTAMP:20261120T080000Z\r\n/),
      says(calendar, /SUMMARY:Under-13 Kestrels: warm-up before the match against Thimbleby Rovers/), same("repeats", repeated === again, true),
      rows.length < 30 ? "too few rows were looked for" : "", same("instructions", /no jumping|restriction/i.test(text), false));
  }),
  withClub("export: without a block there are calendars, a bad stamp is one line", (club) => {
    const said = on(club, "export");
    const files = filesIn(club.out);
    const bad = on(club, "export", "--stamp", "20261320T080000Z");
    return all(status(said, 0), same("files", [files.length, files.every((name) => name.endsWith(".ics"))], [24, true]), status(bad, 2),
      says(bad.err, /--stamp: found '20261320T080000Z', expected a moment/));
  }),
  withClub("summary: one page and the same as text", (club) => {
    const answer = answerOf(club);
    const said = on(club, "summary", ...kSquad, ...withAnswer(club));
    const page = textOf(`${club.out}/block-summary.pdf`);
    const text = readFileSync(`${club.out}/block-summary.txt`, "utf8");
    return all(status(said, 0), says(page, /\d+ of 45 met/), says(text, /Weekly targets: \d+ of 45 met/), says(text, /gap \d+\.\d %/),
      ...answer.squads[0].shortfalls.map((sentence) => (text.includes(sentence) ? "" : `no '${sentence}'`)),
      existsSync(`${club.out}/block-summary-side-2.png`) ? "more than one page" : "");
  }),
  withClub("clinic: the pack shows who was taught, and both are needed or a routine", (club) => {
    const said = on(club, "clinic", ...kSquad);
    const page = textOf(`${club.out}/first-evening.pdf`);
    const routine = club.run("clinic", "--routine", "hall", "--catalogue", club.path("catalogue"), "--out", club.out);
    const neither = club.run("clinic", "--out", club.out, "--catalogue", club.path("catalogue"));
    return all(status(said, 0), says(page, /Maren: taught 7 Nov 2026 by the lead \(first evening\)/), says(page, /Tolly: not yet taught/),
      says(page, /Local rules and licensed practice come first/), status(routine, 0), status(neither, 2), same("lines", neither.lines.length, 1));
  }),
  withClub("clinic: whom to tell is filled from the venue's plan; without one, and for a routine alone, it is a form", (club) => {
    const back = () => textOf(`${club.out}/first-evening.pdf`);
    const planned = on(club, "clinic", ...kSquad);
    const known = back();
    club.edit("venues/millrace.toml", 'meets_ambulance = "a parent at the gate"\n', "");
    on(club, "clinic", ...kSquad);
    const lacking = back();
    club.edit("strips/north-end.toml", 'venue = "../venues/millrace.toml"\n', "");
    const unplanned = on(club, "clinic", ...kSquad);
    const form = back();
    const routine = club.run("clinic", "--routine", "hall", "--catalogue", club.path("catalogue"), "--out", club.out);
    const forms = [form, back()];
    return all(status(planned, 0), says(known, /Whom to tell Millrace ground: pitch 2 behind the club house/), says(known, /Emergency number 112/), says(known, /Who stays with the player the squad's coach/),
      says(known, /Address Millrace Lane 9, Quillmere/), says(known, /Who meets the ambulance a parent at the gate/), says(known, /The lead, phone/), silent(known, /Plan incomplete/),
      says(lacking, /Plan incomplete: nobody meets the ambulance\./), says(lacking, /Who meets the ambulance/), silent(lacking, /a parent at the gate/),
      status(unplanned, 0), status(routine, 0), ...forms.flatMap((page) => [says(page, /Whom to tell The lead, phone/), silent(page, /Millrace|112|Who calls/)]));
  }),
  withClub("clinic: a mistake in the venue's file is one line, and nothing is written", (club) => {
    club.append("venues/millrace.toml", 'nurse = "me"\n');
    const said = on(club, "clinic", ...kSquad);
    return all(status(said, 2), same("lines", said.lines.length, 1), says(said.err, /venues\/millrace\.toml:\d+:1: roles\.nurse: found 'nurse'/), existsSync(club.out) ? "wrote" : "");
  }),
  withClub("club check: mistakes in coaches.toml are one line each", (club) => {
    club.edit("coaches.toml", '"u13-kestrels"', '"u99"');
    club.append("coaches.toml", '\n[[coach]]\nid = "Maren"\nsquads = []\n');
    const said = club.run("club", "check", "--club", club.folder, "--catalogue", club.path("catalogue"));
    return all(status(said, 2), same("output", said.out, ""), same("lines", said.lines.length, 2),
      says(club.plain(said.lines[0]), /^coaches\.toml:\d+:\d+: coach\.1\.squads: found 'u99'/), says(club.plain(said.lines[1]), /coach\.\d+\.id: found coach 'Maren' twice/));
  }),
  withClub("club turn: coaches go on with their squads", (club) => {
    const said = club.run("club", "turn", "--club", club.folder, "--catalogue", club.path("catalogue"), "--to", `${club.folder}-next`);
    const coaches = existsSync(`${club.folder}-next/coaches.toml`) ? readFileSync(`${club.folder}-next/coaches.toml`, "utf8") : "";
    rmSync(`${club.folder}-next`, { recursive: true, force: true });
    return all(status(said, 0), says(coaches, /id = "Maren"\nsquads = \["u11-wrens", "u14-kestrels"\]/), says(coaches, /what = "first evening"/));
  }),
];
