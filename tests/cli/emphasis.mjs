// Emphasis from evidence, as the lead meets it: a proposal of a season, accepted or not, and what plans make of it.
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text}` : "");

const kSeason = ["--from", "2025-08-25", "--to", "2026-05-31"];
const kAccepted = "from = 2025-08-25\nto = 2026-05-31\n\n[weights]\nbalance = 6\n";
const propose = (club, ...words) => club.run("evidence", "emphasis", "--records", club.path("season"), "--catalogue", club.path("catalogue"), ...(words.includes("--from") ? [] : kSeason), ...words);
const accept = (club, text = kAccepted) => writeFileSync(club.path("emphasis.toml"), text);
const weightOf = (said) => /^ {2}balance +weight (\d)/m.exec(said.out)?.[1];

// Every ankle of the season is an elbow: no family's drills are meant for it.
const elsewhere = (club) => writeFileSync(club.path("season/injuries.csv"), readFileSync(club.path("season/injuries.csv"), "utf8").replaceAll(",ankle,", ",elbow,"));

const proposals = [
  withClub("emphasis: many ankles propose balance one step up, with limits, and nothing is written", (club) => {
    const said = propose(club);
    const answer = JSON.parse(propose(club, "--json").out);
    const balance = answer.families.find((one) => one.family === "balance");
    return all(status(said, 0), says(said.out, /for the lead to accept or not/), said.out.includes(kAccepted) ? "" : said.out, says(said.out, /it does not show that more of these drills\nwould have/),
      says(said.out, /local rules and licensed\npractice come first/), says(said.out, /own judgement/), existsSync(club.path("emphasis.toml")) ? "written unasked" : "",
      balance.weight === 5 && balance.proposed_weight === 6 && balance.limits.low > 1.25 ? "" : JSON.stringify(balance),
      answer.families.every((one) => [0, 1].includes(one.proposed_weight - one.weight)) ? "" : "out of bounds",
      answer.regions.reduce((sum, one) => sum + one.injuries, 0) === answer.injuries ? "" : "regions do not add up");
  }),
  withClub("emphasis: what is accepted is what plans and blocks weigh by, and --why says so", (club) => {
    const before = club.plan("--why");
    const said = propose(club, "--write", club.path("emphasis.toml"));
    const after = club.plan("--why");
    const block = club.run("block", "--club", club.folder, "--catalogue", club.path("catalogue"), "--squad", "u13-kestrels", "--why");
    return all(status(said, 0), said.out.endsWith(`Written: ${club.path("emphasis.toml")}\n`) ? "" : said.out, readFileSync(club.path("emphasis.toml"), "utf8").endsWith(kAccepted) ? "" : "other lines",
      weightOf(before) === "5" && weightOf(after) === "6" && weightOf(block) === "6" ? "" : `${weightOf(before)} ${weightOf(after)} ${weightOf(block)}`,
      silent(before.out, /emphasis/), says(after.out, /balance, the club's emphasis +in place of 5 +accepted by the lead, from the injuries of 2025-08-25 to 2026-05-31/),
      says(block.out, /balance, the club's emphasis +in place of 5/));
  }),
  withClub("emphasis: a saved request carries it, and the checker judges by it", (club) => {
    accept(club);
    const saved = club.path("asked.json");
    const answer = club.path("answer.json");
    const said = club.plan("--minutes", "12", "--save-request", saved, "--json");
    writeFileSync(answer, said.out);
    const row = JSON.parse(readFileSync(saved, "utf8")).catalogue.families.family.find((one) => one.key === "balance");
    const checked = club.run("plan", "check", "--squad", club.squad, "--catalogue", club.path("catalogue"), "--minutes", "12", "--plan", answer);
    return all(status(said, 0), row.weight === 6 && row.emphasis.catalogue_weight === 5 ? "" : JSON.stringify(row), status(checked, 0));
  }),
  withClub("emphasis: proposed again with one accepted, it is still one step from the catalogue", (club) => {
    accept(club);
    const answer = JSON.parse(propose(club, "--json").out);
    const balance = answer.families.find((one) => one.family === "balance");
    return balance.weight === 5 && balance.proposed_weight === 6 ? "" : JSON.stringify(balance);
  }),
  withClub("emphasis: where no family is clearly called for nothing is proposed or written", (club) => {
    elsewhere(club);
    const said = propose(club, "--write", club.path("emphasis.toml"));
    return all(status(said, 0), says(said.out, /^Nothing is proposed: the weights stay as they are\.$/m), says(said.out, /Nothing written\.\n$/), existsSync(club.path("emphasis.toml")) ? "written" : "");
  }),
  withClub("emphasis: no injuries, no answer", (club) => {
    const said = propose(club, "--from", "2026-07-01", "--to", "2026-07-02");
    return all(status(said, 1), says(said.out, /^Cannot be estimated: no injury of the season counts for a region\.$/m));
  }),
  withClub("emphasis: the turn of a season takes it along and says so", (club) => {
    accept(club);
    const to = `${club.folder}-next`;
    try {
      const said = club.run("club", "turn", "--club", club.folder, "--catalogue", club.path("catalogue"), "--to", to);
      return all(status(said, 0), says(said.out, /^The emphasis goes along: emphasis\.toml, from the injuries of 2025-08-25 to 2026-05-31\.$/m), existsSync(`${to}/emphasis.toml`) ? "" : "left behind");
    } finally {
      rmSync(to, { recursive: true, force: true });
    }
  }),
];

// [what, emphasis.toml, the line it gets]
const kMistakes = [
  ["two steps", kAccepted.replace("= 6", "= 7"), /^emphasis\.toml:5:1: weights\.balance: found 7, expected 4 to 6, one step at most from the catalogue's 5$/],
  ["a weight that none may have", kAccepted.replace("balance = 6", "jump-and-land = 9"), /^emphasis\.toml:5:1: weights\.jump-and-land: found 9, expected a whole number from 1 to 8$/],
  ["half a weight", kAccepted.replace("= 6", "= 5.5"), /^emphasis\.toml:5:1: weights\.balance: found 5\.5/],
  ["an unknown family", kAccepted.replace("balance", "stretching"), /^emphasis\.toml:5:1: weights\.stretching: found 'stretching', expected one of pulse-raising/],
  ["no season", kAccepted.replace("from = 2025-08-25\n", ""), /^emphasis\.toml:1:1: from: found nothing, expected the first day of the season it rests on$/],
  ["a season that ends before it begins", kAccepted.replace("2026-05-31", "2025-05-31"), /^emphasis\.toml:2:1: to: found 2025-05-31, expected a day not before 2025-08-25$/],
  ["no weights", kAccepted.replace(/\[weights\][^]*/, ""), /^emphasis\.toml:1:1: weights: found nothing/],
  ["another key", `why = "ankles"\n${kAccepted}`, /^emphasis\.toml:1:1: why: found 'why'/],
];

const mistakes = kMistakes.map(([what, text, line]) =>
  withClub(`emphasis: bad input: ${what}`, (club) => {
    accept(club, text);
    const evening = club.plan();
    const check = club.run("club", "check", "--club", club.folder, "--catalogue", club.path("catalogue"));
    return all(...[evening, check].map((said) => all(status(said, 2), said.out === "" ? "" : said.out, said.lines.length === 1 ? "" : said.err, says(club.plain(said.lines[0] ?? ""), line))));
  }));

const kUsage = [
  ["no period", ["evidence", "emphasis", "--records", "demo/quillmere/season"], /--from/],
  ["no records", ["evidence", "emphasis", ...kSeason], /./],
  ["a level above 100", ["evidence", "emphasis", "--records", "demo/quillmere/season", ...kSeason, "--level", "120"], /--level/],
  ["a place that cannot be written", ["evidence", "emphasis", "--records", "demo/quillmere/season", ...kSeason, "--write", "nowhere/at/all.toml"], /nowhere\/at\/all\.toml/],
];

const usage = kUsage.map(([what, words, line]) =>
  withClub(`emphasis: bad input: ${what}`, (club) => {
    const said = club.run(...words);
    return all(status(said, 2), said.out === "" ? "" : said.out, says(said.err, line), existsSync("nowhere") ? "something was made" : "");
  }));

export const emphasis = [...proposals, ...mistakes, ...usage,
  withClub("emphasis: bad input: a reference whose shares are not 100 per cent", (club) => {
    club.edit("catalogue/emphasis_reference.toml", "usual_percent = 18", "usual_percent = 28");
    const said = propose(club);
    return all(status(said, 2), said.lines.length === 1 ? "" : said.err, says(club.plain(said.err), /^catalogue\/emphasis_reference\.toml:\d+:\d+: region: found usual shares of 110 % together, expected 100 %/));
  }),
];
