// The commands as a user runs them: exit statuses, flags, what changes and what does not.
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const all = (...checks) => checks.find((check) => check !== "") ?? "";
const drillsOf = (answer) => answer.items.map((item) => item.drill);

const kPinned = ["easy-laps", "side-plank", "squat", "strides", "plant-and-cut", "single-leg-bridge", "high-skip"].flatMap((drill) => ["--pin", drill]);

export const commands = [
  withClub("plan answers with status 0", (club) => status(club.plan(), 0)),
  withClub("help is no mistake", (club) => all(...[["--help"], ["plan", "--help"], ["card", "--help"]].map((words) => status(club.run(...words), 0)))),
  withClub("a command line that is not understood is one line and status 2", (club) => all(...[
    [], ["warm-up"], ["plan"], ["plan", "--squad"], ["card", "--squad", club.squad], ["plan", "--squad", club.squad, "--wether", "rain"],
    ["plan", "--squad", club.squad, "--turnout", "many"], ["pairs"], ["clock"], ["catalogue"], ["catalogue", "show"],
    ["card", "--squad", club.squad, "--out", club.out, "--paper", "a3"], ["pairs", "--roster", club.path("roster.csv"), "--measure", "height"],
  ].map((words) => {
    const said = club.run(...words);
    return all(status(said, 2), said.lines.length === 1 ? "" : `${words}: ${said.lines.length} lines:\n${said.err}`, said.out === "" ? "" : `${words}: ${said.out}`);
  }))),
  withClub("nothing fits: status 1, why and the way out", (club) => {
    const said = club.plan("--minutes", "5", ...kPinned);
    const card = club.card("--minutes", "5", ...kPinned);
    return all(status(said, 1), /No session keeps all of these:\n  \S/.test(said.out) && /Way out: \S/.test(said.out) ? "" : said.out,
      status(card, 1), club.wrote() ? "a card was written" : "", card.out === "" ? "" : "something on standard output");
  }),
  withClub("what a flag states wins, and only that", (club) => {
    const usual = JSON.parse(club.plan("--json").out);
    const fewer = JSON.parse(club.plan("--json", "--turnout", "10").out);
    const shorter = JSON.parse(club.plan("--json", "--minutes", "17.5").out);
    return all(fewer.turnout === 10 && fewer.slot_seconds === usual.slot_seconds ? "" : "turnout",
      shorter.slot_seconds === 1050 && shorter.turnout === usual.turnout ? "" : "minutes",
      fewer.planned_seconds < usual.planned_seconds ? "" : "10 players take no less than 15");
  }),
  withClub("a flag hides no mistake of the file", (club) => {
    club.edit("squads/u13-kestrels.toml", "[kit]\ncones = 16\nballs = 10\n", "");
    club.edit("squads/u13-kestrels.toml", "club =", "kit = 7\nclub =");
    const said = club.plan("--balls", "4");
    return all(status(said, 2), /kit: found 7, expected a table/.test(said.err) ? "" : said.err);
  }),
  withClub("a ban takes a drill away, a pin that the file has already is fine", (club) => {
    const banned = JSON.parse(club.plan("--json", "--ban", "squat").out);
    club.edit("squads/u13-kestrels.toml", "seed = 1", 'seed = 1\npins = [{ drill = "squat", sets = 1, amount = 8 }]');
    const said = club.plan("--json", "--pin", "squat");
    return all(drillsOf(banned).includes("squat") ? "banned, but there" : "", status(said, 0),
      JSON.parse(said.out).items.some((item) => item.drill === "squat" && item.amount === 8) ? "" : "the file's pin is lost");
  }),
  withClub("a sore knee changes the slip and not a byte of the plan", (club) => {
    const before = club.plan("--json");
    const after = club.plan("--json", "--sore", "Q07=knee");
    club.card("--sore", "Q07=knee");
    const sore = readFileSync(`${club.out}/slip.pdf`);
    const card = readFileSync(`${club.out}/card.pdf`);
    club.card();
    return all(before.out === after.out ? "" : "the plan changed", sore.equals(readFileSync(`${club.out}/slip.pdf`)) ? "the slip did not change" : "",
      card.equals(readFileSync(`${club.out}/card.pdf`)) ? "" : "the card changed");
  }),
  withClub("the files written are those named, and no others", (club) => {
    const said = club.card();
    const named = said.out.trim().split("\n").map((path) => path.replace(`${club.out}/`, "")).sort();
    const written = readdirSync(club.out).sort();
    return all(status(said, 0), named.join() === written.join() ? "" : `${named} named, ${written} written`, said.err,
      ["card.pdf", "slip.pdf"].every((name) => written.includes(name)) ? "" : `${written}`);
  }),
  withClub("a folder that cannot be is one line and status 2", (club) => {
    writeFileSync(club.out, "a file");
    const said = club.card();
    return all(status(said, 2), said.lines.length === 1 ? "" : said.err, readFileSync(club.out, "utf8") === "a file" ? "" : "overwritten");
  }),
  withClub("a saved plan passes the check, an edited one that breaks a rule has status 1", (club) => {
    const plan = club.path("plan.json");
    writeFileSync(plan, club.plan("--json").out);
    const words = ["plan", "check", "--squad", club.squad, "--catalogue", club.path("catalogue"), "--plan"];
    const routine = club.path("routines-edited.toml");
    writeFileSync(routine, '[[drill]]\nid = "strides"\nrung = "rolling-start"\nsets = 1\namount = 3\n\n[[drill]]\nid = "easy-laps"\nrung = "steady"\nsets = 1\namount = 3\n');
    const good = club.run(...words, plan);
    const bad = club.run(...words, routine);
    return all(status(good, 0), status(bad, 1), /Broken:\n  \S/.test(bad.out) ? "" : bad.out, status(club.run(...words, club.path("gone.toml")), 2));
  }),
  withClub("the problem is written one file a level", (club) => {
    club.plan("--export-mps", club.path("x.mps"), "--export-lp", club.path("x.lp"));
    const levels = (ending) => readdirSync(club.folder).filter((name) => name.startsWith("x.") && name.endsWith(ending)).length;
    return all(levels(".mps") === 4 ? "" : `${levels(".mps")} MPS files`, levels(".lp") === 4 ? "" : `${levels(".lp")} LP files`);
  }),
  withClub("the catalogue is listed, shown and checked", (club) => {
    const list = club.run("catalogue", "list");
    const shown = club.run("catalogue", "show", "side-plank");
    const unknown = club.run("catalogue", "show", "moon-walk");
    return all(status(list, 0), list.out.split("\n").length > 41 ? "" : "fewer than 40 drills", status(shown, 0), shown.out.includes("Side plank") ? "" : shown.out,
      status(unknown, 2), unknown.lines.length === 1 ? "" : unknown.err, status(club.run("catalogue", "check"), 0));
  }),
  withClub("the club's own drills are checked with the shipped ones", (club) => {
    club.edit("catalogue/drills/squat.toml", 'id = "squat"', 'id = "squatt"');
    const said = club.run("catalogue", "--catalogue", club.path("catalogue"), "check");
    return all(status(said, 2), said.lines.some((line) => /squat\.toml:1:1: id/.test(line)) ? "" : said.err);
  }),
  withClub("a club may lower a ceiling, and its routine takes the place of a shipped one", (club) => {
    mkdirSync(club.path("ours/routines"), { recursive: true });
    // Half the landings: 16 of the warm-up at 12 and 13.
    const limits = readFileSync(club.path("catalogue/limits.toml"), "utf8").replace("warm_up_share_percent = 40", "warm_up_share_percent = 20");
    writeFileSync(club.path("ours/limits.toml"), limits);
    const shipped = readFileSync(club.path("catalogue/routines/early-teens.toml"), "utf8");
    const check = () => club.run("catalogue", "--catalogue", club.path("catalogue"), "check", club.path("ours"));
    const passing = check();
    writeFileSync(club.path("ours/routines/early-teens.toml"), shipped.replace(/\[\[drill\]\]\nid = "jump-and-stick"\n.*\n.*\n.*\n/, ""));
    const own = check();
    club.edit("squads/u13-kestrels.toml", "[slot]", 'catalogue = "../ours"\n\n[slot]');
    const said = club.plan();
    return all(status(passing, 2), /catalogue\/routines\/early-teens\.toml/.test(passing.err) ? "" : passing.err, /early-teens/.test(own.err) ? own.err : "",
      status(said, 0), /contacts \d+ of at most 12;/.test(said.out) ? "" : said.out);
  }),
  // Trade practice: such a session takes 20 to 35 minutes (common practice, no source).
  withClub("a long routine for 16 in two lines of 15 m takes 20 to 35 minutes", (club) => {
    const answer = JSON.parse(club.run("clock", "--routine", "long-practice", "--players", "16", "--json").out);
    const minutes = answer.median_seconds / 60;
    return minutes >= 20 && minutes <= 35 ? "" : `${minutes} min`;
  }),
  withClub("every number says where it comes from", (club) => {
    const said = club.plan("--why");
    return all(status(said, 0), said.out.includes("Where the numbers come from") ? "" : "no such heading", /own judgement/.test(said.out) ? "" : "no judgement named",
      ["work of one pass", "done so often, one is known", "against one never done", "against one not yet known", "metres as paces"].find((row) => !said.out.split("\n").some((line) => line.includes(row) && /  \d+ \w+ +(own judgement|common practice)$/.test(line))) ?? "");
  }),
  withClub("pairs name every player once", (club) => {
    const said = club.run("pairs", "--roster", club.path("roster.csv"), "--in-roster", "U13", "--date", "2026-11-26", "--apart", "Q06+Q10", "--json");
    if (said.status !== 0) return status(said, 0);
    const answer = JSON.parse(said.out);
    const ids = [...answer.groups.flatMap((group) => group.players), ...answer.alone];
    return all(ids.length === 18 && new Set(ids).size === 18 ? "" : `${ids}`,
      answer.groups.some((group) => group.players.includes("Q06") && group.players.includes("Q10")) ? "kept apart, but together" : "");
  }),
  withClub("nothing is left beside the files", (club) => {
    const before = readdirSync(club.folder).sort().join();
    club.plan("--json");
    club.run("pairs", "--roster", club.path("roster.csv"), "--date", "2026-11-26");
    return existsSync(club.out) || readdirSync(club.folder).sort().join() !== before ? "a file was written" : "";
  }),
];
