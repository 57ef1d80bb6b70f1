// What a lead tells of a block that has begun, and what becomes of the rest: short stories of the demo club, each with the
// text that is printed (tests/cli/stories/, read and approved like the golden texts) and with what a coach expects. Every
// new plan is held against the independent check.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { loadTypescript } from "../pitchside/typescript.mjs";
import { Club, withClub } from "./club.mjs";

const { becauseTold } = await loadTypescript("../desk/squad/because.ts");

const file = (squad) => `squads/${squad}.toml`;
const all = (...checks) => checks.find((check) => check !== "") ?? "";
const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);

const changesOf = (squad, date) => squad.rolling.sessions.find((session) => session.date === date)?.changes.length ?? 0;
const nothingChanges = ({ before, after, today }) => {
  const coming = (squad) => squad.sessions.filter((session) => session.date >= today);
  return all(same(coming(before), coming(after)) ? "" : "a session to come has changed", same(before.spells, after.spells) ? "" : "a set has changed",
    after.rolling.sessions.every((session) => session.changes.length === 0) ? "" : "a change is told");
};
const atMost = (date, most, least = 0) => ({ after }) => {
  const changes = changesOf(after, date);
  return changes >= least && changes <= most ? "" : `${date}: ${changes} changes, not ${least} to ${most}`;
};
const setsStand = ({ before, after }) => (same(before.spells, after.spells) ? "" : "a set has changed");
// Sessions from this day on are those that stood.
const staysFrom = (date) => ({ before, after }) => {
  const later = (squad) => squad.sessions.filter((session) => session.date >= date).map(({ drills }) => drills);
  return same(later(before), later(after)) ? "" : `a session from ${date} on has changed`;
};
const targetOf = (squad, week, family) => squad.weeks[week - 1].families.find((row) => row.family === family).target;
const owed = (week, family, more) => ({ before, after }) => {
  const rise = targetOf(after, week, family) - targetOf(before, week, family);
  return rise === more ? "" : `week ${week}: the target of ${family} rises by ${rise}, not ${more}`;
};
const says = (pattern) => ({ after }) => (after.rolling.sentences.some((sentence) => pattern.test(sentence)) ? "" : `no ${pattern} in\n${after.rolling.sentences.join("\n")}`);
const share = (squad, date, wanted) => squad.sessions.find((session) => session.date === date).drills.filter(({ drill }) => wanted.includes(drill));

// name: [the story, squad, rows below the heading, today, what the club changes, what a coach expects]
export const kStories = {
  "nothing-yet": {
    story: "The block begins today, and nothing has happened. Nothing changes.",
    squad: "u13-kestrels", rows: [], today: "2026-11-23", expect: [nothingChanges],
  },
  "as-planned": {
    story: "Two weeks were held as planned. Nothing changes, whatever the plan itself left short.",
    squad: "u13-kestrels", today: "2026-12-07",
    rows: ["2026-11-24,held", "2026-11-26,held", "2026-11-28,held", "2026-12-01,held", "2026-12-03,held"],
    expect: [nothingChanges, owed(3, "trunk", 0), owed(4, "trunk", 0)],
  },
  "a-missed-week": {
    story: "Frost: the whole first week was missed. The next two weeks are asked for a half more at most, no ceiling moves, and the sessions change where there is room.",
    squad: "u15-redwings", today: "2026-11-30", rows: "the first week missed",
    expect: [setsStand, atMost("2026-12-02", 4, 1), owed(2, "hamstring", 5), owed(3, "hamstring", 5), owed(4, "hamstring", 0), staysFrom("2026-12-14"), says(/still owed after the missed week 1/)],
  },
  "a-cut-session": {
    story: "Tuesday was over after seven minutes. What came last in it was not done; Thursday makes up for what it has room for.",
    squad: "u13-kestrels", today: "2026-11-25", rows: ["2026-11-24,cut short,7"],
    expect: [setsStand, atMost("2026-11-26", 3, 1), staysFrom("2026-12-01"), owed(2, "trunk", 0), says(/short after the cut session of Tuesday 24 November/)],
  },
  "few-did-it": {
    story: "Few did it on Tuesday. Loads count in full, credits for a quarter.",
    squad: "u13-kestrels", today: "2026-11-25", rows: ["2026-11-24,held,,few"],
    expect: [setsStand, atMost("2026-11-26", 2, 1), staysFrom("2026-12-01"), says(/after the session that few did on Tuesday 24 November/),
      ({ before, after }) => (after.weeks[0].contacts.used >= before.weeks[0].contacts.used - 6 ? "" : "loads of Tuesday are gone")],
  },
  "half-did-it-without-two-drills": {
    story: "Half did it, and the squat and the side plank were left out. Thursday is full: nothing changes, and what stays short is said.",
    squad: "u13-kestrels", today: "2026-11-25", rows: ["2026-11-24,held,,half,squat; Side plank"],
    expect: [setsStand, atMost("2026-11-26", 1), staysFrom("2026-12-01"), says(/^week 1: .*trunk/)],
  },
  "no-word": {
    story: "Nobody has said a word of the first week. Its loads count as planned, nothing counts as done.",
    squad: "u13-kestrels", today: "2026-11-30", rows: [],
    expect: [setsStand, atMost("2026-12-01", 2), staysFrom("2026-12-15"), says(/^no word of 3 sessions/), owed(2, "trunk", 5)],
  },
  "a-new-match-tomorrow": {
    story: "All is held as planned. On Monday a match is put into Wednesday: Tuesday, now the day before it, becomes lighter; other weeks stay as they are.",
    squad: "u13-kestrels", today: "2026-11-30", rows: ["2026-11-24,held", "2026-11-26,held", "2026-11-28,held"],
    change: (club) => club.edit(file("u13-kestrels"), "[[match]]\n", '[[match]]\ndate = 2026-12-02\nopponent = "Thimbleby Rovers"\n\n[[match]]\n'),
    expect: [setsStand, atMost("2026-12-01", 3, 1), atMost("2026-12-03", 3), staysFrom("2026-12-08"), says(/the next match is tomorrow, not in 4 days/),
      ({ before, after }) => {
        const hard = ["jump-and-stick", "strides", "plant-and-cut"];
        const amount = (squad) => share(squad, "2026-12-01", hard).reduce((sum, drill) => sum + drill.sets * drill.amount, 0);
        return amount(after) < amount(before) ? "" : "Tuesday is not lighter";
      }],
  },
  "a-drill-that-may-not-be-done": {
    story: "The lead bars the squat in the second week. One drill of its family takes its place until the spell ends; the rest of the sets stand.",
    squad: "u13-kestrels", today: "2026-11-30", rows: ["2026-11-24,held", "2026-11-26,held", "2026-11-28,held"],
    change: (club) => club.append(file("u13-kestrels"), '\n[locks]\nbans = ["squat"]\n'),
    expect: [atMost("2026-12-01", 4, 2), ({ after }) => all(same(after.rolling.swapped.map(({ leaves }) => leaves), ["squat"]) ? "" : JSON.stringify(after.rolling.swapped),
      after.sessions.some((session) => session.date >= "2026-11-30" && session.drills.some(({ drill }) => drill === "squat")) ? "it is still done" : "")],
  },
  "a-drill-that-is-fixed": {
    story: "In the second week the lead fixes the front plank for the squad. It takes the place of one trunk drill in every set to come and is done in every session; the rest of the sets stand.",
    squad: "u13-kestrels", today: "2026-11-30", rows: ["2026-11-24,held", "2026-11-26,held", "2026-11-28,held"],
    change: (club) => club.append(file("u13-kestrels"), '\n[locks]\npins = [{ drill = "front-plank" }]\n'),
    expect: [atMost("2026-12-01", 4, 2), ({ after }) => all(same(after.rolling.swapped.map(({ comes_in, why }) => `${comes_in} ${why}`), ["front-plank fixed"]) ? "" : JSON.stringify(after.rolling.swapped),
      after.sessions.some((session) => session.date >= "2026-11-30" && !session.match_day && !session.drills.some(({ drill }) => drill === "front-plank")) ? "a session goes without it" : "")],
  },
  "a-rung-is-confirmed": {
    story: "Two weeks were held as planned. The lead has seen the single-leg bridge and confirms its next rung from the fourth week on: until then nothing changes, then the rung does.",
    squad: "u13-kestrels", today: "2026-12-07",
    rows: ["2026-11-24,held", "2026-11-26,held", "2026-11-28,held", "2026-12-01,held", "2026-12-03,held"],
    change: (club) => club.append(file("u13-kestrels"), '\n[[rung]]\ndrill = "single-leg-bridge"\nrung = "leg-long"\nfrom = 2026-12-14\n'),
    expect: [setsStand, atMost("2026-12-08", 0), atMost("2026-12-10", 0), atMost("2026-12-15", 3, 1), ({ after }) => {
      const bridges = after.sessions.flatMap(({ date, match_day, drills }) => (match_day ? [] : drills.filter(({ drill }) => drill === "single-leg-bridge").map(({ rung }) => [date, rung])));
      const wrong = bridges.filter(([date, rung]) => (rung === "leg-long") !== (date >= "2026-12-14"));
      return all(wrong.length === 0 && bridges.length > 4 ? "" : JSON.stringify(bridges), after.rolling.rungs.some(({ drill }) => drill === "single-leg-bridge") ? "what is confirmed is still proposed" : "");
    }],
  },
  "hardly-done": {
    story: "On Tuesday the squat was left out, on Thursday few did anything. No rung moves by itself; an easier one of the squat is put before the lead.",
    squad: "u13-kestrels", today: "2026-11-27", rows: ["2026-11-24,held,,most,squat", "2026-11-26,held,,few"],
    expect: [setsStand, says(/^Squat: hardly done in 2 sessions in a row; an easier rung is: half-way down$/), ({ before, after }) => {
      const rungs = (squad) => squad.sessions.filter(({ date }) => date >= "2026-11-27").flatMap(({ drills }) => drills.map(({ drill, rung }) => `${drill} ${rung}`));
      return all(rungs(after).every((rung) => rungs(before).includes(rung)) ? "" : "a rung has moved", same(after.rolling.rungs.map(({ drill, why }) => `${drill} ${why}`), ["squat hardly done"]) ? "" : JSON.stringify(after.rolling.rungs));
    }],
  },
  "a-shorter-evening": {
    story: "All is held as planned. From now on Thursdays are five minutes shorter: Thursdays lose what is worth least, Tuesdays stay nearly as they are.",
    squad: "u13-kestrels", today: "2026-11-30", rows: ["2026-11-24,held", "2026-11-26,held", "2026-11-28,held"],
    change: (club) => club.edit(file("u13-kestrels"), 'weekday = "thursday"\nstart = 18:00:00\nminutes = 20', 'weekday = "thursday"\nstart = 18:00:00\nminutes = 15'),
    expect: [setsStand, atMost("2026-12-01", 2), says(/the slot is 5 min shorter/)],
  },
};

const namesIn = (text, key) => [...text.matchAll(new RegExp(`^${key} = "(.*)"\\nname = "(.*)"`, "gm"))].map(([, id, name]) => [id, name]);
const drillNames = new Map(readdirSync("catalogue/drills").flatMap((name) => namesIn(readFileSync(`catalogue/drills/${name}`, "utf8"), "id")));
const familyNames = new Map(namesIn(readFileSync("catalogue/families.toml", "utf8"), "key"));
const names = { drill: (id) => drillNames.get(id), family: (key) => familyNames.get(key), rung: (_, key) => key };

// A screen that says the codes in English says what the program says.
function codesSay({ rolling, missed }) {
  const pairs = [...rolling.sessions.flatMap(({ why, because }) => why.map((sentence, index) => [sentence, because[index]])), ...missed.map(({ why, because }) => [why, because])];
  const other = pairs.map(([sentence, because]) => [sentence, becauseTold(because, sentence, names)]).find(([sentence, { words, english }]) => english || words !== sentence);
  return other ? `the codes say '${other[1].words}'${other[1].english ? " (not known)" : ""}, the program '${other[0]}'` : "";
}

const standing = new Map();  // the first plan of a squad, planned once

function standingOf(program, squad) {
  if (!standing.has(squad)) {
    const club = new Club(program);
    try {
      standing.set(squad, club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), "--squad", squad, "--json").out);
    } finally {
      club.close();
    }
  }
  return standing.get(squad);
}

function rowsOf(story, before) {
  const heading = "squad,date,happened,minutes,did it,left out";
  const rows = story.rows === "the first week missed" ? before.sessions.filter(({ week }) => week === 1).map(({ date }) => `${date},missed`) : story.rows;
  return [heading, ...rows.map((row) => `${story.squad},${row}`)].join("\n") + "\n";
}

// Runs the story in the club's folder: the text to approve, and what the coach would say of it.
function tell(club, story) {
  const before = JSON.parse(standingOf(club.program, story.squad)).squads[0];
  writeFileSync(club.path("standing.json"), standingOf(club.program, story.squad));
  writeFileSync(club.path("sessions.csv"), rowsOf(story, before));
  story.change?.(club);
  const words = ["--club", club.folder, "--catalogue", club.path("catalogue"), "--standing", club.path("standing.json"),
    "--sessions", club.path("sessions.csv"), "--today", story.today];
  const text = club.run("block", "--squad", story.squad, ...words);
  const json = club.run("block", "--squad", story.squad, "--json", ...words);
  if (json.status !== 0) return { text: json.err, detail: `exit status ${json.status}\n${json.err}` };
  writeFileSync(club.path("answer.json"), json.out);
  const checked = club.run("block", "check", "--answer", club.path("answer.json"), ...words);
  const after = JSON.parse(json.out).squads[0];
  const detail = all(checked.status === 0 ? "" : `the check: ${checked.out}`, codesSay(after), ...story.expect.map((expect) => expect({ before, after, today: story.today })));
  const told = text.out.split("\n\n")[1];
  return { text: `${story.story}\n\n${readFileSync(club.path("sessions.csv"), "utf8")}\n${told}\n`, detail };
}

export const storyPath = (name) => `tests/cli/stories/${name}.txt`;

// The text as it is now, written to be read and approved (tools/approve.mjs).
export function writeStory(program, name) {
  const club = new Club(program);
  try {
    mkdirSync(dirname(storyPath(name)), { recursive: true });
    writeFileSync(storyPath(name), tell(club, kStories[name]).text);
  } finally {
    club.close();
  }
}

function firstDifference(approved, printed) {
  const [a, b] = [approved.split("\n"), printed.split("\n")];
  const line = b.findIndex((text, index) => text !== a[index]);
  return `line ${line + 1}\n- ${a[line] ?? "(end)"}\n+ ${b[line] ?? "(end)"}`;
}

export const rollingStories = Object.keys(kStories).map((name) => withClub(`story: ${name}`, (club) => {
  const { text, detail } = tell(club, kStories[name]);
  if (detail !== "") return detail;
  if (!existsSync(storyPath(name))) return `${storyPath(name)} is not there: read what is printed, then node tools/approve.mjs`;
  const approved = readFileSync(storyPath(name), "utf8");
  return approved === text ? "" : firstDifference(approved, text);
}));
