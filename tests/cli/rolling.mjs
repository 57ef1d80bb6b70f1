// A block that has begun, as its lead gets it wrong: one clear line each, exit status 2, nothing planned; and that the
// answer does not hang on threads or on which squads are asked for.
import { readFileSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";

function planned(club, ...squads) {
  const said = club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), "--json", ...squads.flatMap((squad) => ["--squad", squad]));
  writeFileSync(club.path("standing.json"), said.out);
  return JSON.parse(said.out);
}

function rolled(club, rows, ...words) {
  writeFileSync(club.path("sessions.csv"), ["squad,date,happened,minutes,did it,left out", ...rows].join("\n") + "\n");
  return club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), "--squad", "u13-kestrels", "--standing", club.path("standing.json"),
    "--sessions", club.path("sessions.csv"), ...words);
}

const day = ["--today", "2026-12-02"];

// [what, rows, flags, the lines it gets, what is done to the club first]
const kMistakes = [
  ["an unknown squad and an unknown drill", ["u13-owls,2026-11-24,held", "u13-kestrels,2026-11-24,held,,,moon walk"], day,
    [/^sessions\.csv:2: squad: found 'u13-owls', expected the id or the name of a squad of the club$/, /^sessions\.csv:3: left out: found 'moon walk'/]],
  ["a drill that was not planned", ["u13-kestrels,2026-11-24,held,,,front-plank"], day,
    [/^sessions\.csv:2: left out: found 'front-plank', expected a drill that was planned for u13-kestrels on 2026-11-24 at 18:00$/]],
  ["a day without a session", ["u13-kestrels,2026-11-25,held"], day, [/^sessions\.csv:2: date: found '2026-11-25', expected a day with a session of u13-kestrels$/]],
  ["a day to come", ["u13-kestrels,2026-12-03,held"], day, [/^sessions\.csv:2: date: found '2026-12-03', expected a day of the block that is not to come: 2026-11-23 to 2026-12-02$/]],
  ["a day before the block", ["u13-kestrels,2026-11-17,held"], day, [/^sessions\.csv:2: date: found '2026-11-17', expected a day of the block/]],
  ["two rows of one session", ["u13-kestrels,2026-11-24,held", "Under-13 Kestrels,24.11.2026,missed"], day, [/^sessions\.csv:3: date: .*line 2 has it already$/]],
  ["more minutes than the slot has", ["u13-kestrels,2026-11-24,cut short,21"], day, [/^sessions\.csv:2: minutes: found '21', expected a whole number from 1 to 20, the minutes of the slot$/]],
  ["minutes below nothing", ["u13-kestrels,2026-11-24,cut short,-3"], day, [/^sessions\.csv:2: minutes: found '-3'/]],
  ["a day that is none", [], ["--today", "soon"], [/^--today: found 'soon', expected a date such as 2026-12-01$/]],
  ["an answer of another block", [], day, [/^standing\.json: monday: found 6 weeks from 2026-11-23, expected 5 weeks from 2026-11-23, as club\.toml says/],
    (club) => club.edit("club.toml", "weeks = 6", "weeks = 5")],
  ["an answer without the squad", [], day, [/^standing\.json: squads: found no block of u13-kestrels/], (club) => planned(club, "u10-wrens")],
  ["an answer that is broken off", [], day, [/^standing\.json/], (club) => writeFileSync(club.path("standing.json"), '{"answer": "block", "squads": [')],
  ["an answer with a drill that there is not", [], day, [/^standing\.json: .*found 'easy-lap', 'steady'/], (club) => club.edit("standing.json", '"drill": "easy-laps"', '"drill": "easy-lap"')],
];

export const rolling = [
  ...kMistakes.map(([what, rows, words, lines, change]) => withClub(`rolling: ${what}`, (club) => {
    planned(club, "u13-kestrels");
    change?.(club);
    const said = rolled(club, rows, ...words);
    const plain = said.lines.map((line) => club.plain(line));
    return all(said.status === 2 ? "" : `exit status ${said.status}\n${said.err}`, said.out === "" ? "" : said.out.slice(0, 300),
      plain.length === lines.length && lines.every((line, i) => line.test(plain[i])) ? "" : plain.join("\n"));
  })),
  withClub("rolling: a day that is over and falls out of the calendar is one line", (club) => {
    planned(club, "u13-kestrels");
    club.edit("club.toml", "from = 2026-12-21", "from = 2026-11-26");
    const said = rolled(club, [], ...day);
    return all(said.status === 2 ? "" : `exit status ${said.status}`, /found a session of u13-kestrels on 2026-11-26 at 18:00, expected none, as the calendar says now/.test(said.err) ? "" : said.err);
  }),
  withClub("rolling: rows without a plan that stands are refused", (club) => {
    const said = club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), "--today", "2026-12-02");
    return said.status === 2 && /--standing/.test(said.err) ? "" : said.err;
  }),
  withClub("rolling: alone or with others, on one thread or three, the same", (club) => {
    planned(club, "u10-wrens", "u13-kestrels", "u16-merlins");
    const rows = ["u13-kestrels,2026-11-24,missed", "u16-merlins,2026-11-24,cut short,7"];
    const alone = rolled(club, rows, "--today", "2026-11-25", "--json");
    const more = ["--squad", "u10-wrens", "--squad", "u16-merlins", "--today", "2026-11-25", "--json"];
    const one = rolled(club, rows, ...more, "--threads", "1");
    const three = rolled(club, rows, ...more, "--threads", "3");
    const kestrels = (said) => JSON.stringify(JSON.parse(said.out).squads.find(({ squad }) => squad === "u13-kestrels"));
    return all(one.out === three.out ? "" : "threads differ", kestrels(alone) === kestrels(one) ? "" : "alone it is another");
  }),
  withClub("rolling: the summary tells what was held from what was missed", (club) => {
    planned(club, "u13-kestrels");
    const said = rolled(club, ["u13-kestrels,2026-11-24,missed", "u13-kestrels,2026-11-26,cut short,7"], ...day, "--json");
    writeFileSync(club.path("answer.json"), said.out);
    const summary = club.run("summary", "--club", club.folder, "--catalogue", club.path("catalogue"), "--block", club.path("answer.json"), "--out", club.path("out"));
    const text = readFileSync(club.path("out/block-summary.txt"), "utf8");
    return all(summary.status === 0 ? "" : summary.err, /10 evenings, 2 matches \(so far 1 cut short, 1 missed, 2 without a word\)/.test(text) ? "" : text.slice(0, 600),
      /Sessions so far 1 cut short, 1 missed, 2 without a word\./.test(text) ? "" : text.slice(0, 600));
  }),
  withClub("rolling: a block that is over says so, and is sound", (club) => {
    planned(club, "u13-kestrels");
    const words = ["--today", "2027-01-20"];
    const text = rolled(club, ["u13-kestrels,2026-11-24,held"], ...words);
    const said = rolled(club, ["u13-kestrels,2026-11-24,held"], ...words, "--json");
    writeFileSync(club.path("answer.json"), said.out);
    const checked = club.run("block", "check", "--club", club.folder, "--catalogue", club.path("catalogue"), "--answer", club.path("answer.json"),
      "--sessions", club.path("sessions.csv"), "--standing", club.path("standing.json"), ...words);
    return all(/no session of the block is to come/.test(text.out) ? "" : text.out.slice(0, 900), checked.status === 0 ? "" : checked.out);
  }),
];
