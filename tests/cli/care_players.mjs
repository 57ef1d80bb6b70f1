// Pain, what stands of entries, and the way back, as the lead meets them; and what the planner makes of it.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text}` : "");

const kOn = ["--on", "2026-11-26"];
const entries = (club) => club.path("entries.toml");
const standing = (club, ...words) => club.run("care", "standing", entries(club), "--roster", club.path("roster.csv"), ...kOn, ...words);
const back = (club, ...words) => club.run("care", "return", "--from", entries(club), "--roster", club.path("roster.csv"), "--date", "2026-11-26", ...words);

// Rows put at the end, received one after the other on the evening of the 26th.
const received = (minute) => `2026-11-26T18:${String(minute).padStart(2, "0")}+01:00`;
const row = (number, keys) => `\n[[entry]]\nid = "more-${number}"\nreceipt = ${100 + number}\nreceived = "${keys.received ?? received(number)}"\n${Object.entries({ by: "lead", player: "Q16", ...keys })
  .filter(([key]) => key !== "received").map(([key, value]) => `${key} = ${JSON.stringify(value)}`).join("\n")}\n`;
const add = (club, ...rows) => club.append("entries.toml", rows.map((keys, index) => row(index + 1, keys)).join(""));

export const kCareAnswers = [
  ["care", "pain", "--place", "knee", "--during", "3", "--date", "2026-11-26"],
  ["care", "pain", "--place", "head", "--before", "0"],
  ["care", "pain", "--place", "knee", "--before", "0"],
  ["care", "standing", "demo/quillmere/entries.toml", ...kOn],
  ["care", "return", "--from", "demo/quillmere/entries.toml", "--player", "Q16"],
  ["care", "return", "--from", "demo/quillmere/entries.toml", "--player", "Q01"],
  ["care", "return", "--explore"],
].map((words) => [...words, "--json"]);

const pain = (flags, answer, more = /./) => withClub(`care pain: ${flags || "nothing"} ${answer}`, (club) => {
  const said = club.run("care", "pain", ...flags.split(" ").filter(Boolean));
  return all(status(said, 0), said.out.startsWith(`Answer: ${answer}.\n`) ? "" : said.out, says(said.out, more), says(said.out, /Local rules and licensed practice come first\.\n$/),
    silent(said.out, /\b(green|amber|yellow|red)\b/));
});

const pains = [
  pain("--place knee --before 2", "joins in"),
  pain("--place knee --during 3", "joins in with swaps", /The coach reads: swaps only, stop if it hurts\. It holds until the lead lifts it\./),
  pain("--place knee --before 5", "sits out, see a clinician"),
  pain("--place knee --before 1 --next-morning 1", "sits out, see a clinician", /1\/10 the next morning: not settled/),
  pain("--place knee --before 2 --a-week-ago 1", "joins in with swaps", /worse than the week before/),
  pain("--place head --before 0", "sits out, see a clinician", /the head is never judged by a number/),
  pain("--place knee --before 1 --sign growth-plate", "sits out, see a clinician", /suspected growth-plate pain/),
  pain("--before 1", "sits out, see a clinician", /Not known: the place, the next morning\./),
  pain("--place knee", "sits out, see a clinician", /Not known: any number\./),
  pain("--place knee --before 1 --why", "joins in", /own judgement[^]*unverified/),
];

const stories = [
  withClub("care standing: who sits out and who has swaps, why, and how old that is", (club) => {
    const said = standing(club);
    const earlier = club.run("care", "standing", entries(club), "--on", "2026-11-30");
    return all(status(said, 0), says(said.out, /^As known Thursday 26 November 2026 17:52, the same day\. Ask who is sore tonight\.$/m), says(earlier.out, /4 days before Monday 30 November 2026/),
      says(said.out, /Sits out\n {2}Q05[^]*Q07[^]*Q09[^]*Joins in with swaps\n {2}Q10[^]*Q14[^]*Q16/), says(said.out, /On the way back\n {2}Q16/));
  }),
  withClub("care standing: a restriction is over after its last day", (club) => silent(club.run("care", "standing", entries(club), "--on", "2026-12-04").out, /Q14/)),
  withClub("care standing: the planner reads what it writes, and the slip changes", (club) => {
    const before = club.plan("--json").out;
    club.card();
    const slip = readFileSync(`${club.out}/slip.pdf`);
    const said = standing(club, "--restrictions", club.path("restrictions.toml"));
    const written = readFileSync(club.path("restrictions.toml"), "utf8");
    const plan = club.plan();
    const turnout = JSON.parse(club.plan("--json").out).turnout;
    const card = club.card();
    return all(status(said, 0), says(said.out, /Written: /), status(plan, 0), says(plan.out, /Restrictions as known Thursday 17:52; ask who is sore tonight/), turnout < JSON.parse(before).turnout ? "" : "nobody more sits out",
      status(card, 0), slip.equals(readFileSync(`${club.out}/slip.pdf`)) ? "the slip did not change" : "", silent(written, /concussion|hurt,|head|clearance|lead-000|device/));
  }),
  withClub("care standing: a hurt received late reopens, whatever the device's clock says", (club) => {
    add(club, { by: "clinician", player: "Q09", kind: "clearance", names: ["wrens-0001"], clinician: "Dr Ilse Quarrington", profession: "paediatrician" },
      { player: "Q09", kind: "lifted", names: ["wrens-0001"] });
    const lifted = standing(club);
    club.append("entries.toml", row(9, { by: "coach", player: "Q09", kind: "hurt", place: "knee", device_time: "2026-11-24T18:39" }));
    const again = standing(club);
    return all(silent(lifted.out, /Q09/), says(again.out, /Q09[^]*hurt, knee, received Thursday 26 November 2026 18:09 \(more-9\)/));
  }),
  withClub("care standing: what is refused is said", (club) => {
    add(club, { player: "Q09", kind: "lifted", names: ["wrens-0001"] }, { by: "coach", kind: "step-begun", course: "lead-0002", step: "team-drills" },
      { kind: "step-begun", course: "lead-0002", step: "team-drills" });
    const said = standing(club);
    return all(status(said, 0), says(said.out, /more-1 +Q09 +does not lift wrens-0001: no clearance by a named clinician names it/), says(said.out, /more-2 +Q16 +refused: a step is begun by the lead or a clinician/),
      says(said.out, /more-3 +Q16 +refused: too early for 'team drills without contact, as hard as usual'; needed: a check without any symptoms/));
  }),
  withClub("care standing: the order of the file decides nothing, and rows sent twice neither", (club) => {
    const before = standing(club);
    const [head, ...rows] = readFileSync(entries(club), "utf8").split("[[entry]]");
    writeFileSync(entries(club), head + [...rows.reverse(), ...rows.slice(0, 4)].map((text) => `[[entry]]${text.replace(/^#.*\n/gm, "")}`).join("\n"));
    return standing(club).out === before.out ? "" : standing(club).out + standing(club).err;
  }),
  withClub("care return: the step, since when, the next one, what it waits for and what sets it back", (club) => {
    const said = back(club, "--player", "Q16");
    return all(status(said, 0), says(said.out, /now +step 3 of 6, sport-specific exercise alone/), says(said.out, /begun Tuesday 24 November 2026 17:50/), says(said.out, /not before +Wednesday 25 November 2026 17:50/),
      says(said.out, /clearance before any risk of a knock to the head: the clearance of a named clinician/), says(said.out, /14 days without symptoms before 'clearance to contact'/), says(said.out, /unverified: the careful side/),
      says(said.out, /Nothing begins by itself/));
  }),
  withClub("care return: heart rates of step 2, rounded down; none without an age", (club) => {
    club.edit("entries.toml", 'step = "own-sport"', 'step = "daily-life"');
    const said = back(club, "--player", "Q16");
    const ageless = club.run("care", "return", "--from", entries(club), "--player", "Q16");
    return all(says(said.out, /first up to 114 beats a minute \(55 % of 220 - 12\)\n +then up to 145 beats/), says(ageless.out, /the age is not known, so no heart rate can be named/), says(ageless.out, /the age is not known: held as for a child/));
  }),
  withClub("care return: symptoms set back, and the planner has the player sit out", (club) => {
    add(club, { by: "player", kind: "symptom-check", course: "lead-0002", symptoms: "worse", worse_points: 4 });
    const said = back(club, "--player", "Q16");
    return all(says(said.out, /now +step 2 of 6[^]*not begun; as it is since Thursday 26 November 2026 18:01/), says(said.out, /coach reads +sits out/), says(said.out, /not before +Friday 27 November 2026 18:01/),
      says(standing(club).out, /Sits out[^]*Q16[^]*On the way back/));
  }),
  withClub("care return: to the last step only by clearances and over days", (club) => {
    const on = (day, minute) => `2026-12-${String(day).padStart(2, "0")}T18:${String(minute).padStart(2, "0")}+01:00`;
    const check = (day, minute) => ({ by: "player", kind: "symptom-check", course: "lead-0002", symptoms: "none", after_session: true, received: on(day, minute) });
    const clear = (gate, day, minute) => ({ by: "clinician", kind: "clearance", names: ["lead-0001"], course: "lead-0002", gate, clinician: "Dr Ilse Quarrington", profession: "paediatrician", received: on(day, minute) });
    const begin = (step, day, minute) => ({ kind: "step-begun", course: "lead-0002", step, received: on(day, minute) });
    const way = [check(1, 0), clear("head-impact-risk", 1, 5), begin("team-drills", 1, 6), check(2, 0), clear("contact", 2, 5), check(5, 11), clear("contact", 5, 12), begin("full-practice", 5, 13), check(5, 20), begin("match", 6, 12), begin("match", 6, 13)];
    add(club, ...way);
    const said = back(club, "--player", "Q16");
    return all(says(said.out, /more-5 +refused: not free of symptoms for long enough; needed: 14 days without symptoms before 'clearance to contact'/), says(said.out, /more-10 +refused: too early for 'match play'; needed: at least 24 h/),
      says(said.out, /step 6 of 6, match play/), silent(standing(club).out, /Q16 Tom[^]*On the way back/));
  }),
  withClub("care return: exploration keeps every promise, and finds a gate that is gone", (club) => {
    const sound = club.run("care", "return", "--explore");
    const rules = club.path("catalogue/care/return_rules.toml");
    club.edit("catalogue/care/return_rules.toml", '[[course.gate]]\nkey = "contact"\nname = "clearance to contact"\nsources = ["patricios-2023"]\n', "");
    club.edit("catalogue/care/return_rules.toml", 'gate = "contact"\n', "");
    club.edit("catalogue/care/return_rules.toml", 'gate = "contact"\n', 'gate = "head-impact-risk"\n');
    const broken = club.run("care", "return", rules, "--explore");
    return all(status(sound, 0), silent(sound.out, /broken/), says(sound.out, /concussion +symptom-free-14-days +a child +\d+ +\d+ +\d+ +0 +360 h +all kept/), status(broken, 1),
      says(broken.out, /Broken in concussion, consensus: a step comes after its gate's clearance\.\n {2}A shortest way there:\n {4}begin daily-life by the lead/));
  }),
];

const kHead = 'id = "x"\nreceipt = 500\nreceived = "2026-11-26T19:00+01:00"\nby = "coach"\nplayer = "Q16"\n';

// [what, words, the row put in, the line it gets]
const kMistakes = [
  ["a number of 11", `${kHead}kind = "soreness"\nbefore = 11\n`, /entries\.toml:\d+:1: entry\.14\.before: found 11, expected a whole number from 0 to 10$/],
  ["an unknown place", `${kHead}kind = "hurt"\nplace = "tummy"\n`, /entry\.14\.place: found 'tummy', expected one of head, neck/],
  ["an unknown sign", `${kHead}kind = "hurt"\nsigns = ["odd"]\n`, /entry\.14\.signs: found 'odd', expected one of swelling/],
  ["an unknown kind", `${kHead}kind = "pain"\n`, /entry\.14\.kind: found 'pain', expected one of hurt, soreness/],
  ["an unknown player", `${kHead.replace("Q16", "Q99")}kind = "hurt"\n`, /entry\.14\.player: found 'Q99', expected the id of a player of the roster$/],
  ["a time without its offset", `${kHead.replace("+01:00", "")}kind = "hurt"\n`, /entry\.14\.received: found '2026-11-26T19:00', expected a time with its offset/],
  ["a receipt number that is taken", `${kHead.replace("500", "3")}kind = "hurt"\n`, /entry\.14\.receipt: found 3 of 'lead-0003' too/],
  ["a clearance without a profession", `${kHead}kind = "clearance"\nnames = ["y"]\nclinician = "Dr A"\n`, /entry\.14\.profession: found nothing/],
  ["an unknown course", `${kHead}kind = "course-opened"\ncourse = "ankle"\n`, /entry\.14\.course: found 'ankle', expected one of concussion, general$/],
  ["a word for the coach that says what is the matter", `${kHead}kind = "restriction"\ninstruction = "sprained"\n`, /entry\.14\.instruction: found 'sprained'/],
  ["a free note", `${kHead}kind = "hurt"\nnote = "fell over"\n`, /entry\.14\.note: found 'note'/],
];

const mistakes = kMistakes.map(([what, text, line]) => withClub(`care: bad input: ${what}`, (club) => {
  club.append("entries.toml", `\n[[entry]]\n${text}`);
  const out = club.path("made.toml");
  const said = standing(club, "--restrictions", out);
  const other = back(club, "--player", "Q16");
  return all(...[said, other].map((one) => all(status(one, 2), one.out === "" ? "" : one.out, one.lines.length === 1 ? "" : one.err, says(one.lines[0] ?? "", line))), existsSync(out) ? "written all the same" : "");
}));

const kUsage = [
  ["no entries", ["care", "standing"], /ENTRIES/],
  ["entries that are not there", ["care", "standing", "nowhere.toml"], /nowhere\.toml/],
  ["a day that is none", ["care", "standing", "demo/quillmere/entries.toml", "--on", "tomorrow"], /--on: found 'tomorrow'/],
  ["a place that cannot be written", ["care", "standing", "demo/quillmere/entries.toml", "--restrictions", "nowhere/at/all.toml"], /nowhere\/at\/all\.toml/],
  ["a number of 11", ["care", "pain", "--before", "11"], /--before/],
  ["an unknown place", ["care", "pain", "--before", "1", "--place", "tummy"], /--place: found 'tummy', expected one of head/],
  ["an unknown sign", ["care", "pain", "--before", "1", "--sign", "odd"], /--sign: found 'odd', expected one of swelling/],
  ["return without entries", ["care", "return", "--player", "Q16"], /--from: found nothing, expected a file of entries/],
  ["return without a player", ["care", "return", "--from", "demo/quillmere/entries.toml"], /--player: found nothing/],
  ["return of a stranger", ["care", "return", "--from", "demo/quillmere/entries.toml", "--player", "Q99", "--roster", "demo/quillmere/roster.csv", "--date", "2026-11-26"], /--player: found 'Q99'/],
  ["rules that are none", ["care", "return", "demo/quillmere/club.toml", "--explore"], /club\.toml/],
];

const usage = kUsage.map(([what, words, line]) => withClub(`care: bad input: ${what}`, (club) => {
  const said = club.run(...words);
  return all(status(said, 2), said.out === "" ? "" : said.out, says(said.err, line), existsSync("nowhere") ? "something was made" : "");
}));

export const carePlayers = [...pains, ...stories, ...mistakes, ...usage];
