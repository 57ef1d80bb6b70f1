// care growth, care load and care screen: nothing without agreement, no guess of a coach's, no change below what measuring
// makes, one line for a mistake, and what goes on to the coach holds no measure.
import { readFileSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const kTables = "tests/cli/tables";
const kDay = ["--date", "2026-11-26"];
const kPeople = `${kTables}/growth_people.csv`;
export const kGrowth = ["care", "growth", `${kTables}/growth_measurements.csv`, "--people", kPeople, ...kDay];
export const kLoad = ["care", "load", `${kTables}/load_sessions.csv`, ...kDay];
export const kScreen = ["care", "screen", `${kTables}/screens.csv`, ...kDay];

const first = (...details) => details.find((detail) => detail !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text.slice(0, 1200)}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text.slice(0, 1200)}` : "");

function growthOf(club, people, measurements, ...words) {
  writeFileSync(club.path("people.csv"), people);
  writeFileSync(club.path("measured.csv"), measurements);
  return club.run("care", "growth", club.path("measured.csv"), "--people", club.path("people.csv"), ...kDay, ...words);
}
const kPeopleRow = "player,born,sex,mother_cm,father_cm,consent,assent,withdrawn\nQ01,2013-11-20,boy,165,180,";
const kMeasured = "player,date,height_cm,sitting_height_cm,mass_kg\nQ01,2025-11-26,149.3,76.7,39.9\nQ01,2026-11-26,158.1,81.3,47.7\n";
const kAnyMeasure = /149\.3|158\.1|76\.7|81\.3|39\.9|47\.7|cm a year|8\.8/;

const agreements = [
  ["neither", ",,", /off: neither the guardian's consent nor the child's assent is recorded/],
  ["no assent", "2025-01-01,,", /off: the child's own assent is not recorded/],
  ["no consent", ",2025-01-01,", /off: the guardian's consent is not recorded/],
  ["an assent of tomorrow", "2025-01-01,2026-11-27,", /off: the child's own assent is not recorded/],
  ["taken back", "2025-01-01,2025-01-01,2026-11-26", /off: taken back/],
  ["taken back, and only one given anew", "2026-11-01,2025-01-01,2026-10-01", /off: taken back/],
].map(([name, dates, said]) =>
  withClub(`care growth: ${name}: nothing measured is shown`, (club) => first(...[[], ["--json"], ["--player", "Q01"]].map((words) => {
    const found = growthOf(club, `${kPeopleRow}${dates}\n`, kMeasured, ...words);
    return first(status(found, 1), says(found.out, said), silent(found.out + found.err, kAnyMeasure));
  }))));

const growth = [
  ...agreements,
  withClub("care growth: no fault quotes a value of a player who did not agree", (club) => {
    const found = growthOf(club, `${kPeopleRow}2025-01-01,,\n`, "player,date,height_cm\nQ01,2026-11-26,1.581\nQ01,never,many\n");
    return first(status(found, 1), silent(found.out + found.err, /1\.581|many|never/));
  }),
  withClub("care growth: withdrawing takes away what was shown", (club) => {
    const before = growthOf(club, `${kPeopleRow}2025-01-01,2025-01-01,\n`, kMeasured);
    const after = growthOf(club, `${kPeopleRow}2025-01-01,2025-01-01,2026-11-25\n`, kMeasured);
    return first(status(before, 0), says(before.out, /8\.8 cm a year/), status(after, 1), silent(after.out, kAnyMeasure));
  }),
  withClub("care growth: what was measured before the agreement is left out", (club) => {
    const found = growthOf(club, `${kPeopleRow}2026-01-01,2026-01-01,\n`, kMeasured);
    return first(status(found, 0), says(found.out, /1 measured before the agreement/), says(found.out, /no rate/), silent(found.out, /149\.3/));
  }),
  withClub("care growth: two within 90 days give no rate and say when the next is due", (club) => {
    const found = growthOf(club, `${kPeopleRow}2025-01-01,2025-01-01,\n`, "player,date,height_cm\nQ01,2026-08-29,156\nQ01,2026-11-26,158\n");
    return first(status(found, 0), says(found.out, /no rate: two heights at least 90 days apart/), says(found.out, /again from 2027-02-24 on/));
  }),
  withClub("care growth: without a sex both families' equations, and no adult height", (club) => {
    const found = growthOf(club, `${kPeopleRow.replace("boy", "")}2025-01-01,2025-01-01,\n`, kMeasured);
    return first(status(found, 0), says(found.out, /boys' equation/), says(found.out, /girls' equation/), says(found.out, /not foretold: no sex is recorded/));
  }),
  withClub("care growth: the careful side where something is not known, and it says so", (club) => {
    const found = growthOf(club, "player,consent,assent\nQ01,2025-01-01,2025-01-01\n", "player,date,height_cm\nQ01,2026-11-26,131\n");
    return first(status(found, 0), says(found.out, /no birth date is known; the careful side is taken/), says(found.out, /Changed +50 % of the landings/));
  }),
  withClub("care growth: what is said of limits stands in every answer", (club) => {
    const found = club.run(...kGrowth);
    return first(status(found, 0), says(found.out, /Local rules and licensed practice come first\./), says(found.out, /not valid for every child/),
      says(found.out, /never a date/), says(found.out, /unverified/), silent(found.out, /\b(green|amber|red|traffic|safe to|at risk|high risk)\b/i));
  }),
  withClub("care growth: the club's restrictions take what comes out, and it holds no measure", (club) => {
    const found = club.run(...kGrowth, "--restrictions");
    const before = readFileSync(club.path("restrictions.toml"), "utf8");
    const usual = club.card();
    const slip = readFileSync(`${club.out}/slip.pdf`);
    writeFileSync(club.path("restrictions.toml"), `${before}\n${found.out}`);
    const spared = club.card();
    return first(status(found, 0), silent(found.out, /grow|height|mass|body|spurt|cm|%|\d(?!\d*-|\d*"|\d*\n)/i), status(usual, 0), status(spared, 0),
      slip.equals(readFileSync(`${club.out}/slip.pdf`)) ? "the slip did not change" : "");
  }),
  withClub("care growth: nobody spared is status 1", (club) => {
    const found = club.run(...kGrowth, "--player", "Q06", "--restrictions");
    return first(status(found, 1), found.out === "# nobody\n" ? "" : found.out);
  }),
];

const load = [
  withClub("care load: a coach's guess is kept out and told by its row", (club) => {
    const found = club.run(...kLoad);
    const answer = JSON.parse(club.run(...kLoad, "--json").out);
    const week = answer.players[0].weeks.find(({ monday }) => monday === "2026-11-09");
    return first(status(found, 0), says(found.out, /load_sessions\.csv:10: 'Q01', entered by 'coach'/), says(found.out, /load_sessions\.csv:19: 'Q02', nobody is named/),
      week.load === 375 ? "" : `${week.load}`, answer.kept_out.length === 2 ? "" : JSON.stringify(answer.kept_out));
  }),
  withClub("care load: the worked week of Foster 2001, with the sample's deviation", (club) => {
    const week = JSON.parse(club.run(...kLoad, "--json").out).players[0].weeks.find(({ monday }) => monday === "2026-11-02");
    return week.load === 1800 && Math.abs(week.monotony - 1.221) < 0.001 && Math.abs(week.strain - 2198) < 0.5 ? "" : JSON.stringify(week);
  }),
  withClub("care load: a description with its criticism; no ratio of means, no zone, no score", (club) => {
    const found = club.run(...kLoad);
    return first(says(found.out, /cannot say whether risk is rising \(Impellizzeri 2020\)/), says(found.out, /makes artefacts/), says(found.out, /no ratio, no zone and no score/),
      says(found.out, /over six/), says(found.out, /not settled before 2026-12-14/), says(found.out, /unverified, no limits/), says(found.out, /not applicable/),
      silent(JSON.stringify(JSON.parse(club.run(...kLoad, "--json").out)), /ratio|zone|risk_|score/i));
  }),
  withClub("care load: rows of coaches alone are no feed: status 1", (club) => {
    writeFileSync(club.path("load.csv"), "player,date,minutes,effort,entered_by\nQ01,2026-11-24,60,5,coach\n");
    const found = club.run("care", "load", club.path("load.csv"), ...kDay);
    return first(status(found, 1), says(found.out, /No row that may be used/), says(found.out, /load\.csv:2: 'Q01', entered by 'coach'/));
  }),
];

const screens = [
  withClub("care screen: a change below what measuring makes is not told, one beyond it is", (club) => {
    const found = club.run(...kScreen);
    const answer = JSON.parse(club.run(...kScreen, "--json").out);
    const changes = answer.players.map(({ tests }) => tests.find(({ test }) => test === "frontal-plane-angle").sides[0].change_since_last);
    return first(status(found, 0), changes.join() === "within,better" ? "" : changes.join(), says(found.out, /none beyond what measuring alone makes \(8\.93 degrees\)/),
      silent(found.out, /7\.54|5\.7\b/));
  }),
  withClub("care screen: 90 % is a prompt, adults are named, included angles are turned", (club) => {
    const found = club.run(...kScreen);
    return first(says(found.out, /85\.5 % of the stronger .*a prompt, not a verdict: of uninjured athletes only 24 in 100/), says(found.out, /90\.9 % of the stronger on 2026-11-24\n/),
      says(found.out, /of 100 active adults of 18 to 28/), says(found.out, /say nothing about a child/), says(found.out, /2026-11-24: 54\n/));
  }),
];

const kNoPeople = ["care", "growth", `${kTables}/growth_measurements.csv`];
// [what, words, the line]
const kMistakes = [
  ["no people", [...kNoPeople, ...kDay], /--people is required/],
  ["no verb", ["care"], /subcommand/],
  ["a file that is not there", [...kNoPeople, "--people", "nowhere.csv", ...kDay], /nowhere\.csv/],
  ["a sheet of something else", [...kNoPeople, "--people", `${kTables}/arms.csv`, ...kDay], /arms\.csv: found no heading row that we know, expected .*'player', 'consent' and 'assent'.*docs\/formats\/growth\.md/],
  ["a player who is not listed", [...kGrowth, "--player", "Q99"], /^--player: found 'Q99', expected a player of .*growth_people\.csv/],
  ["a day that is none", [...kLoad.slice(0, 3), "--date", "2026-11-31"], /^--date: found '2026-11-31'/],
  ["a sheet without a column", ["care", "load", `${kTables}/screens.csv`, ...kDay], /screens\.csv:1: found no column 'minutes'/],
  ["a player without a row", [...kScreen, "--player", "Q77"], /^--player: found 'Q77'/],
  ["a catalogue without care", [...kScreen, "--catalogue", "demo"], /care\/screens\.toml/],
].map(([name, words, said]) =>
  withClub(`care, bad input: ${name}`, (club) => {
    const found = club.run(...words);
    const several = name === "a sheet without a column";  // one line for each column that lacks
    return first(status(found, 2), says(found.lines[0], said), several || found.lines.length === 1 ? "" : found.err, found.out === "" ? "" : found.out);
  }));

const kCells = [
  ["metres", "Q01,2026-11-26,1.58,,", /measured\.csv:2: height_cm: found '1\.58', .*metres/],
  ["inches", "Q01,2026-11-26,62.2,,", /height_cm: .*inches/],
  ["a sitting height with the seat", "Q01,2026-11-26,158,124,", /measured\.csv:2: sitting_height_cm: .*seat/],
  ["pounds", "Q01,2026-11-26,158,81,200", /mass_kg: .*pounds/],
  ["a player who shrank", "Q01,2026-08-26,158,,\nQ01,2026-11-26,156,,", /measured\.csv:3: height_cm: .*line 2.*shrinks/],
  ["a day twice", "Q01,2026-11-26,158,,\nQ01,2026-11-26,158.2,,", /measured\.csv:3: date: .*line 2/],
  ["a day to come", "Q01,2026-11-27,158,,", /measured\.csv:2: date: found '2026-11-27'/],
].map(([name, rows, said]) =>
  withClub(`care growth, bad input: ${name}`, (club) => {
    const found = growthOf(club, `${kPeopleRow}2025-01-01,2025-01-01,\n`, `player,date,height_cm,sitting_height_cm,mass_kg\n${rows}\n`);
    return first(status(found, 2), found.lines.length === 1 ? "" : found.err, says(found.err, said), found.out === "" ? "" : found.out);
  }));

export const careMeasures = [...growth, ...load, ...screens, ...kMistakes, ...kCells];

// Answers of every kind, to be held against the schema.
export const kCareMeasuresAnswers = [kGrowth, [...kGrowth, "--player", "Q04"], [...kGrowth, "--restrictions"], kLoad, kScreen].map((words) => [...words, "--json"]);
