// A club's folder as its lead keeps it: every inconsistency one line, and the turn to the next season.
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const check = (club, ...words) => club.run("club", "check", "--club", club.folder, "--catalogue", club.path("catalogue"), ...words);
const turn = (club, to) => club.run("club", "turn", "--club", club.folder, "--catalogue", club.path("catalogue"), "--to", to);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text}`);

const kLapwings = "squads/u14-lapwings.toml";
const kWeek = '[[week]]\nweekday = "monday"\nstart = 18:00:00\nminutes = 20\nlanes = 2\n';

// [what, how it is broken, the line it gets]
const kFaults = [
  ["a squad without slots", (c) => writeFileSync(c.path(kLapwings), readFileSync(c.path(kLapwings), "utf8").replace(/\[\[week\]\]\n(.+\n)+\n/g, "")),
    /^squads\/u14-lapwings\.toml: week: found no slot, expected at least one \[\[week\]\]$/],
  ["overlapping slots of one squad", (c) => c.edit(kLapwings, kWeek, `${kWeek}\n${kWeek.replace("18:00", "18:15")}`),
    /^squads\/u14-lapwings\.toml:\d+:1: week\.2: found Monday 18:15 to 18:35 beside Monday 18:00 to 18:20, expected slots of one squad/],
  ["a match without a date", (c) => c.edit(kLapwings, "date = 2026-12-05\nstart", "start"),
    /^squads\/u14-lapwings\.toml:\d+:1: match\.1\.date: found a match without a date, expected a date/],
  ["an unknown strip in the week", (c) => c.edit(kLapwings, "lanes = 2\n", 'lanes = 2\nstrip = "moor"\n'),
    /^squads\/u14-lapwings\.toml:\d+:1: week\.1\.strip: found 'moor', expected one of the strips of club\.toml: north-end, school-hall, south-side$/],
  ["more lanes than the strip has", (c) => c.edit(kLapwings, "lanes = 2\n", "lanes = 5\n"),
    /^squads\/u14-lapwings\.toml:\d+:1: week\.1\.lanes: found 5 lanes of south-side, expected at most 4/],
  ["a strip that club.toml does not have", (c) => c.edit("club.toml", '[[strip]]\nid = "north-end"\nfile = "strips/north-end.toml"\n', ""),
    /^squads\/u10-wrens\.toml:6:1: strip: found '\.\.\/strips\/north-end\.toml', expected one of the strips/, "many"],
  ["an unknown routine", (c) => c.edit(kLapwings, '"early-teens"', '"weekend"'), /^squads\/u14-lapwings\.toml:6:1: routine: found routine 'weekend'/],
  ["an unknown drill in the history", (c) => c.edit(kLapwings, "easy-laps =", "moon-walk ="),
    /^squads\/u14-lapwings\.toml:\d+:1: taught\.moon-walk: found 'moon-walk', expected the id of a drill/],
  ["an unknown drill locked for a band", (c) => c.edit("club.toml", '"kneeling-hamstring-lower"', '"moon-walk"'),
    /^club\.toml:\d+:1: lock\.1\.bans: found 'moon-walk'/],
  ["an unknown squad served first", (c) => c.edit("club.toml", "[season]", 'served_first = ["u99"]\n\n[season]'), /^club\.toml:3:1: served_first: found 'u99'/],
  ["a squad of the roster without a file", (c) => rmSync(c.path("squads/u14-jackdaws.toml")),
    /^roster-club\.csv:\d+: found squad 'U14 Boys', expected a squad that a file in squads\/ names as in_roster$/, "two"],
  ["a squad file for nobody", (c) => c.edit("squads/u19-kites.toml", 'in_roster = "U19"', 'in_roster = "U21"'),
    /^squads\/u19-kites\.toml:5:1: in_roster: found 'U21', who is nobody/, "two"],
  ["two squads of one name", (c) => c.edit(kLapwings, "Under-14 Lapwings", "Under-14 Jackdaws"),
    /^squads\/u14-lapwings\.toml:3:1: name: found 'Under-14 Jackdaws', expected a name that .*u14-jackdaws\.toml does not have$/],
  ["two squads of the same players", (c) => c.edit("squads/u14-jackdaws.toml", '"U14 Boys"', '"U14 Girls"'),
    /in_roster: found 'U14 Girls', expected players that are not those of/, "two"],
  ["holidays out of season", (c) => c.edit("club.toml", "to = 2027-04-04", "to = 2027-07-04"),
    /^club\.toml:\d+:\d+: holiday\.3: found 'Spring break' from 2027-03-29 to 2027-07-04, expected days of the season/],
  ["a block past the season's end", (c) => c.edit("club.toml", "first_monday = 2026-11-23", "first_monday = 2027-06-07"),
    /^club\.toml:8:1: block\.first_monday: found a block from 2027-06-07 to 2027-07-18, expected days of the season/],
  ["a block that starts on a Thursday", (c) => c.edit("club.toml", "first_monday = 2026-11-23", "first_monday = 2026-11-26"),
    /^club\.toml:8:1: block\.first_monday: found 2026-11-26, a Thursday, expected a Monday/],
  ["a restriction for somebody who is not there", (c) => c.edit("restrictions-club.toml", /player = "(Q\d+)"/.exec(readFileSync(c.path("restrictions-club.toml"), "utf8"))[1], "Q999"),
    /^restrictions-club\.toml:\d+:1: restriction\.1\.player: found 'Q999'/],
  ["no squads at all", (c) => rmSync(c.path("squads"), { recursive: true }), /^squads: found no squad file, expected at least one squad/],
  ["no club file", (c) => rmSync(c.path("club.toml")), /^club\.toml: found no such file/],
  ["a pin and a ban of one drill", (c) => c.append(kLapwings, '\n[locks]\npins = [{ drill = "squat" }]\nbans = ["squat"]\n'),
    /^squads\/u14-lapwings\.toml: locks: found 'squat' both pinned and banned/],
];

function faultCase([what, breakIt, pattern, lines = "one"]) {
  return withClub(`club check: ${what} is one line, status 2, nothing said`, (club) => {
    breakIt(club);
    const said = check(club);
    const plain = said.lines.map((line) => club.plain(line));
    return all(status(said, 2), said.out === "" ? "" : said.out, plain.some((line) => pattern.test(line)) ? "" : `no ${pattern} in\n${plain.join("\n")}`,
      lines === "one" && plain.length !== 1 ? `${plain.length} lines:\n${plain.join("\n")}` : "");
  });
}

// 200 squads: the lapwings again and again, each with players and hours of its own.
function twoHundred(club) {
  const roster = readFileSync(club.path("roster-club.csv"), "utf8").trimEnd().split("\n");
  const girls = roster.filter((line) => line.includes("U14 Girls") && !line.startsWith("Q12,") && !line.startsWith("Q03,"));
  const text = readFileSync(club.path(kLapwings), "utf8").replace(/\[\[match\]\]\n(.+\n)+\n/g, "");
  for (let i = 1; i <= 176; i++) {
    const label = `Extra ${i}`;
    girls.forEach((line, n) => roster.push(line.replace(/^Q\d+,[^,]+/, `X${i}-${n},Player ${i}-${n}`).replace("U14 Girls", label)));
    const hour = String(6 + (i % 12)).padStart(2, "0");
    writeFileSync(club.path(`squads/extra-${i}.toml`), text.replace("Under-14 Lapwings", label).replace('"U14 Girls"', `"${label}"`)
      .replaceAll("18:00", `${hour}:${i % 2 ? "00" : "30"}`));
  }
  writeFileSync(club.path("roster-club.csv"), `${roster.join("\n")}\n`);
}

// Every byte of a folder, by name.
function bytesOf(folder) {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return names.map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`).sort().map((path) => `${path}\n${readFileSync(path, "latin1")}`).join("\n");
}

export const clubFolder = [
  withClub("club check: the demo club is sound, and its summary says what there is", (club) => {
    const said = check(club);
    return all(status(said, 0), said.err, says(said.out, /^24 squads, 346 players, 53 slots a week, 64 matches; \d+ sessions in the block\.$/m),
      says(said.out, /^Falls out: 53 slots, Winter break\.$/m), says(said.out, /^ {2}Q03: u13-kestrels, u14-lapwings$/m),
      says(said.out, /^u13-kestrels +Under-13 Kestrels +18 +12-13 +early-teens +2 +3 +12$/m),
      says(said.out, /Q241 is wanted twice at once, Tuesday/), /Okonjo|Thimblewood/.test(said.out) ? "a name is printed" : "");
  }),
  ...kFaults.map(faultCase),
  withClub("club check: faults of several files are told at once, in JSON too", (club) => {
    club.edit(kLapwings, '"early-teens"', '"weekend"');
    club.edit("squads/u14-jackdaws.toml", "Under-14 Jackdaws", "Under-14 Plovers");
    club.edit("club.toml", "to = 2027-04-04", "to = 2027-03-04");
    const said = check(club, "--json");
    const answer = JSON.parse(said.out);
    return all(status(said, 2), answer.faults.length === said.lines.length && said.lines.length >= 2 ? "" : said.err);
  }),
  withClub("club check: wishes beyond a strip are a remark with its cure, and the squads go on", (club) => {
    club.edit("squads/u14-plovers.toml", "start = 17:45:00", "start = 18:05:00");
    const said = check(club);
    return all(status(said, 0), says(said.out, /Monday 18:15, 5 times from 2026-11-23: u15-redwings wants 2 lanes of north-end and has none \(beside u14-plovers\); cure: start 10 min later \(18:25\)/),
      says(said.out, /every lane of north-end is taken/));
  }),
  withClub("club check: two hundred squads in a second or so", (club) => {
    twoHundred(club);
    const from = Date.now();
    const said = check(club);
    const took = Date.now() - from;
    return all(status(said, 0), said.err, says(said.out, /^200 squads, \d+ players/m), took < 10000 ? "" : `${took} ms`);
  }),
  withClub("club check: a block of nothing but holidays is no mistake, and said for every squad", (club) => {
    club.edit("club.toml", "from = 2026-12-21\nto = 2026-12-27", "from = 2026-11-23\nto = 2027-01-03");
    for (const name of readdirSync(club.path("squads"))) {
      const path = club.path(`squads/${name}`);
      writeFileSync(path, readFileSync(path, "utf8").replace(/\[\[match\]\]\n(.+\n?)+\n?/g, ""));
    }
    const said = check(club);
    return all(status(said, 0), said.out.match(/no session in the whole block: Winter break/g)?.length === 24 ? "" : said.out);
  }),
  withClub("an evening of a squad file with a week and no slot is one line", (club) => {
    const said = club.run("plan", "--squad", club.path(kLapwings), "--catalogue", club.path("catalogue"));
    return all(status(said, 2), said.lines.length === 1 ? "" : said.err, says(said.err, /slot\.date: found nothing, expected the date of the evening/));
  }),
  withClub("club turn: a new folder that holds, and the old one as it was", (club) => {
    const before = bytesOf(club.folder);
    const to = `${club.folder}-next`;
    try {
      const said = turn(club, to);
      const next = club.run("club", "check", "--club", to, "--catalogue", club.path("catalogue"), "--json");
      const again = turn(club, to);
      const twice = `${to}-next`;
      const second = club.run("club", "turn", "--club", to, "--catalogue", club.path("catalogue"), "--to", twice);
      rmSync(twice, { recursive: true, force: true });
      const ids = JSON.parse(next.out).squads.map((squad) => squad.id);
      return all(status(said, 0), said.err, status(next, 0), ids.includes("u14-kestrels") && !ids.includes("u10-wrens") ? "" : ids.join(),
        says(said.out, /^Under-13 Kestrels becomes Under-14 Kestrels\.$/m), says(said.out, /^Under-19 Kites ends:/m),
        says(said.out, /^What Under-13 Kestrels was taught goes to Under-14 Kestrels, with 18 of its 18 players\.$/m),
        says(readFileSync(`${to}/squads/u14-kestrels.toml`, "utf8"), /^plant-and-cut = 10$/m),
        bytesOf(club.folder) === before ? "" : "the old folder changed", status(again, 2), says(again.err, /found something that is there already/),
        status(second, 0), existsSync(`${to}/strips/north-end.toml`) ? "" : "no strips");
    } finally {
      rmSync(to, { recursive: true, force: true });
    }
  }),
  withClub("club turn: nothing is written of a club with a fault, nor inside the old folder", (club) => {
    const inside = turn(club, club.path("next"));
    club.edit(kLapwings, '"early-teens"', '"weekend"');
    const to = `${club.folder}-next`;
    const said = turn(club, to);
    return all(status(inside, 2), says(inside.err, /--to: found '.*next', expected a folder outside the old one/), status(said, 2),
      existsSync(to) || existsSync(club.path("next")) ? "something was written" : "", readdirSync(club.folder).some((name) => name.startsWith("next")) ? "left over" : "");
  }),
  withClub("club turn: the club's own drills and routines go along", (club) => {
    mkdirSync(club.path("ours/routines"), { recursive: true });
    cpSync(club.path("catalogue/drills/squat.toml"), club.path("ours/our-squat.toml"));
    club.edit("ours/our-squat.toml", 'id = "squat"', 'id = "our-squat"');
    cpSync(club.path("catalogue/routines/early-teens.toml"), club.path("ours/routines/ours.toml"));
    club.edit("ours/routines/ours.toml", 'id = "early-teens"', 'id = "ours"');
    club.edit("ours/routines/ours.toml", 'id = "squat"', 'id = "our-squat"');
    club.edit(kLapwings, 'routine = "early-teens"', 'routine = "ours"\ncatalogue = "../ours"');
    const to = `${club.folder}-next`;
    try {
      const said = turn(club, to);
      return all(status(said, 0), said.err, existsSync(`${to}/ours/our-squat.toml`) ? "" : "left behind",
        says(readFileSync(`${to}/squads/u15-lapwings.toml`, "utf8"), /^catalogue = "\.\.\/ours"$/m));
    } finally {
      rmSync(to, { recursive: true, force: true });
    }
  }),
];
