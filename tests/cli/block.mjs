// The blocks of the demo club as its lead meets them: every squad, one squad session by session, and what is odd.
import { readFileSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text.slice(0, 3000)}`);
const block = (club, ...words) => club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), ...words);
const squadOf = (said) => JSON.parse(said.out).squads[0];

const kKestrels = "squads/u13-kestrels.toml";

// What every answer must hold, whatever the club.
function isSound(squad, weeks) {
  const dates = squad.sessions.map((session) => `${session.date} ${session.start}`);
  if ([...dates].sort().join() !== dates.join()) return "sessions are not in the order of their dates";
  if (squad.bound < squad.value) return `bound ${squad.bound} below value ${squad.value}`;
  if (squad.weeks.length !== weeks) return `${squad.weeks.length} weeks`;
  for (const session of squad.sessions) {
    if (!session.match_day && session.planned_steps > session.budget_steps) return `${session.date} is too long`;
    const set = new Set(squad.spells[squad.weeks[session.week - 1].spell - 1].drills);
    const stranger = session.match_day ? undefined : session.drills.find((drill) => !set.has(drill.drill));
    if (stranger) return `${session.date} does ${stranger.drill}, which is not of its spell`;
  }
  for (const week of squad.weeks) {
    for (const load of ["contacts", "eccentric", "hard_running_metres"]) {
      if (week[load].used > week[load].ceiling) return `week ${week.week}: ${load} ${week[load].used} of ${week[load].ceiling}`;
    }
  }
  return "";
}

export const blocks = [
  withClub("block: every squad of the demo club, bound above value, ceilings kept", (club) => {
    const said = block(club, "--json");
    if (said.status !== 0) return status(said, 0);
    const answer = JSON.parse(said.out);
    const bad = answer.squads.map((squad) => [squad.squad, isSound(squad, 6)]).find(([, detail]) => detail !== "");
    return all(answer.squads.length === 24 ? "" : `${answer.squads.length} squads`, bad ? bad.join(": ") : "",
      said.lines.length === 24 && /^squad 24 of 24 planned$/.test(said.lines[23]) ? "" : said.err);
  }),
  withClub("block: one thread and three give the same bytes", (club) => {
    const words = ["--json", "--squad", "u10-wrens", "--squad", "u13-kestrels", "--squad", "u16-merlins"];
    const one = block(club, ...words, "--threads", "1");
    const three = block(club, ...words, "--threads", "3");
    return all(status(one, 0), status(three, 0), one.out === three.out ? "" : "they differ");
  }),
  withClub("block: one squad is told session by session", (club) => {
    const said = block(club, "--squad", "u13-kestrels");
    return all(status(said, 0), says(said.out, /^Under-13 Kestrels$/m), says(said.out, /weeks 1-3: the drills of the house routine/),
      says(said.out, /^ {2}Tuesday 24 November 2026, 18:00, 20 min, match in 4 days$/m), says(said.out, /min more on \w+days at 18:00/),
      says(said.out, /no session, Winter break/));
  }),
  withClub("block: every number says where it comes from, for the ages of the squads that are told", (club) => {
    const said = block(club, "--squad", "u10-wrens", "--squad", "u13-kestrels", "--why");
    if (said.status !== 0) return status(said, 0);
    const why = said.out.slice(said.out.indexOf("Where the numbers of the block come from"));
    const rows = why.split("\n").filter((line) => line.startsWith("  "));
    const bare = rows.find((row) => !/ {2}.+ {2,}\S.* {2,}\S/.test(row) || /none stated$/.test(row));
    return all(bare ? `no source: ${bare}` : "", rows.length > 60 ? "" : `${rows.length} rows`,
      says(why, /^ {2}hard sessions: from start to start, at least +48 h +unverified, from memory$/m), says(why, /^ {2}drills never done before +2 a session, 3 a week +/m),
      says(why, /^ {2}contacts, ages 8 to 9 +20 a session, 40 a week +/m), says(why, /^ {2}contacts, ages 12 to 13 +32 a session, 64 a week +/m), says(why, /^ {2}credits: of a session that most did +4 quarters +own judgement$/m));
  }),
  withClub("block: a club's own ceiling and week target are told with their source", (club) => {
    club.edit("catalogue/limits.toml", "most_new_drills = 2", "most_new_drills = 1");
    club.edit("catalogue/families.toml", "week_seconds = 225", "week_seconds = 180");
    const said = block(club, "--squad", "u13-kestrels", "--why");
    return all(status(said, 0), says(said.out, /drills never done before +1 a session, 2 a week +/), says(said.out, /^ {2}pulse raising +180 s of work +Steib S/m));
  }),
  withClub("block: a squad that is not there is one line", (club) => {
    const said = block(club, "--squad", "u99");
    return all(status(said, 2), said.lines.length === 1 && said.out === "" ? "" : said.err, says(said.err, /--squad: found 'u99'/));
  }),
  withClub("block: a fault of the folder comes before any planning", (club) => {
    club.edit(kKestrels, 'routine = "early-teens"', 'routine = "weekend"');
    const said = block(club);
    return all(status(said, 2), said.out === "" ? "" : said.out.slice(0, 200), says(said.err, /found routine 'weekend'/));
  }),
  withClub("block: a banned drill leaves at the start, and nothing else does", (club) => {
    const before = squadOf(block(club, "--json", "--squad", "u13-kestrels"));
    club.append(kKestrels, '\n[locks]\nbans = ["side-plank"]\n');
    const after = squadOf(block(club, "--json", "--squad", "u13-kestrels"));
    const first = after.spells[0];
    return all(isSound(after, 6), before.spells[0].leaves.length === 0 ? "" : "the first spell is not the routine",
      first.leaves.join() === "side-plank" && first.comes_in.length === 1 ? "" : JSON.stringify(first),
      after.sessions.some((session) => session.drills.some((drill) => drill.drill === "side-plank")) ? "it is still done" : "");
  }),
  withClub("block: holidays leave a week without sessions, and say so", (club) => {
    const squad = squadOf(block(club, "--json", "--squad", "u13-kestrels"));
    const missed = squad.missed.filter((slot) => slot.why === "Winter break");
    return all(missed.length > 0 ? "" : "nothing missed", squad.sessions.some((session) => session.date >= "2026-12-21" && session.date <= "2026-12-27") ? "a session in the holidays" : "");
  }),
  withClub("block: all holidays is a block of nothing, not a crash", (club) => {
    const text = readFileSync(club.path("club.toml"), "utf8").replace("from = 2026-12-21\nto = 2026-12-27", "from = 2026-11-23\nto = 2027-01-03");
    writeFileSync(club.path("club.toml"), text);
    club.edit(kKestrels, "date = 2026-11-28", "date = 2027-02-06");
    const said = block(club, "--json", "--squad", "u10-wrens");
    if (said.status !== 0) return status(said, 0);
    const squad = squadOf(said);
    return squad.sessions.every((session) => session.match_day) && squad.missed.length > 0 ? "" : JSON.stringify(squad).slice(0, 500);
  }),
];
