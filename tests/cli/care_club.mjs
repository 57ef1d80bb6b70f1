// A club whose club.toml names its entries and its region: every evening, block and card goes by them, and the cards of
// one day by that day's weather.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { withClub } from "./club.mjs";

const all = (...checks) => checks.find((check) => check !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text.slice(0, 1500)}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text.slice(0, 1500)}` : "");
const same = (what, is, wanted) => (JSON.stringify(is) === JSON.stringify(wanted) ? "" : `${what}: ${JSON.stringify(is)}, not ${JSON.stringify(wanted)}`);
const pdfText = (pdf) => spawnSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }).stdout.replace(/\s+/g, " ");
const on = (club, command, ...words) => club.run(command, "--club", club.folder, "--catalogue", club.path("catalogue"), ...words);
const cards = (club, ...words) => on(club, "cards", "--out", club.out, ...words);
const page = (club, squad, name) => pdfText(`${club.out}/${squad}/${name}.pdf`);

function withCare(club, lines) {
  club.append("club.toml", `\n[care]\n${lines.join("\n")}\n`);
}
// A knee of one of the egrets, told on the Tuesday.
function hurt(club, player = "Q227") {
  withCare(club, ['entries = "reports.toml"']);
  writeFileSync(club.path("reports.toml"), `[[entry]]\nid = "a-1"\nreceipt = 1\nreceived = "2026-11-24T20:40+01:00"\nby = "coach"\nplayer = "${player}"\nkind = "hurt"\nplace = "knee"\n`);
}
const turnouts = (club) => {
  const said = on(club, "block", "--squad", "u17-egrets", "--json");
  writeFileSync(club.path("answer.json"), said.out);
  return JSON.parse(said.out).squads[0].sessions.map((session) => session.turnout);
};

export const careClub = [
  withClub("care of a club: a hurt player sits out on the card of that week, with the age of what is known", (club) => {
    const before = cards(club, "--squad", "u17-egrets", "--date", "2026-11-25");
    const usual = page(club, "u17-egrets", "2026-11-25-slip");
    hurt(club);
    const said = cards(club, "--squad", "u17-egrets", "--date", "2026-11-25");
    const slip = page(club, "u17-egrets", "2026-11-25-slip");
    return all(status(before, 0), status(said, 0), silent(usual, /Amberrigg[^]*sits out, see a clinician/), says(slip, /Rosheen Amberrigg[^]*sits out, see a clinician/),
      says(page(club, "u17-egrets", "2026-11-25-card"), /Restrictions as known Sunday 20:10, reports Tuesday 20:40/), silent(slip, /knee/i),
      same("pages", readdirSync(`${club.out}/u17-egrets`).sort(), ["2026-11-25-card.pdf", "2026-11-25-slip.pdf"]));
  }),
  withClub("care of a club: a block without the hurt player, and the checker counts alike", (club) => {
    club.edit("squads/u17-egrets.toml", "expected_turnout = 10\n", "");
    const usual = turnouts(club);
    hurt(club);
    const fewer = turnouts(club);
    const judged = club.run("block", "check", "--club", club.folder, "--catalogue", club.path("catalogue"), "--answer", club.path("answer.json"));
    return all(same("turnouts", fewer, usual.map((count) => count - 1)), status(judged, 0));
  }),
  withClub("care of a club: an evening of a squad's own file goes by the club's entries, a flag in their place", (club) => {
    hurt(club, "Q07");
    const sits = JSON.parse(club.plan("--json").out).turnout;
    writeFileSync(club.path("none.toml"), "");
    const joins = JSON.parse(club.plan("--json", "--entries", club.path("none.toml")).out).turnout;
    return sits === joins - 1 ? "" : `${sits} and ${joins} take part`;
  }),
  withClub("care of a club: entries of somebody who has left are passed over, and told", (club) => {
    hurt(club, "Q999");
    const checked = club.run("club", "check", "--club", club.folder, "--catalogue", club.path("catalogue"));
    return all(status(checked, 0), says(checked.out, /the entries hold back Q999, whom no roster has/));
  }),
  withClub("care of a club: the turn of a season takes the entries along", (club) => {
    hurt(club);
    const to = `${club.folder}-next`;
    const said = club.run("club", "turn", "--club", club.folder, "--to", to, "--catalogue", club.path("catalogue"));
    const there = existsSync(`${to}/reports.toml`) && readFileSync(`${to}/club.toml`, "utf8");
    spawnSync("rm", ["-r", to]);
    return all(status(said, 0), says(said.out, /What was reported of players goes along as it is/), says(there || "", /entries = "reports\.toml"/));
  }),
  withClub("care of a club: 38 degrees: one page a squad of that day, no slip, status 1", (club) => {
    const said = cards(club, "--date", "2026-11-26", "--weather", club.path("weather/hot.toml"));
    const squads = readdirSync(club.out);
    const others = squads.filter((squad) => readdirSync(`${club.out}/${squad}`).some((name) => name !== "2026-11-26-card.pdf"));
    return all(status(said, 1), squads.length > 5 ? "" : squads.join(), same("squads with more than the page", others, []), says(said.err, /u13-kestrels on 2026-11-26: no session: heat/),
      says(page(club, "u13-kestrels", "2026-11-26-card"), /No session tonight[^]*No session: heat/));
  }),
  withClub("care of a club: warm: the break stands on the card of that day, by the region of the club", (club) => {
    const warm = cards(club, "--squad", "u13-kestrels", "--date", "2026-11-26", "--weather", club.path("weather/warm.toml"));
    const text = page(club, "u13-kestrels", "2026-11-26-card");
    withCare(club, ['region = "united-states-school"']);
    const elsewhere = cards(club, "--squad", "u13-kestrels", "--date", "2026-11-26", "--weather", club.path("weather/warm.toml"));
    const other = page(club, "u13-kestrels", "2026-11-26-card");
    return all(status(warm, 0), says(text, /1 break of 3 min/), silent(text, /below 82\.0 °F/), status(elsewhere, 0), says(other, /below 82\.0 °F/));
  }),
  withClub("care of a club: an evening begun before anything was measured goes by what was measured then", (club) => {
    club.edit("weather/hot.toml", "17:40:00", "19:30:00");
    const said = cards(club, "--squad", "u13-kestrels", "--date", "2026-11-26", "--weather", club.path("weather/hot.toml"));
    return all(status(said, 1), says(page(club, "u13-kestrels", "2026-11-26-card"), /No session tonight/));
  }),
  ...[
    ["an unknown region", ['region = "the moon"'], ["--date", "2026-11-26", "--weather", "weather/warm.toml"], /club\.toml: care\.region: found 'the moon', expected one of children/],
    ["entries that are not there", ['entries = "nowhere.toml"'], [], /club\.toml:\d+:\d+: care\.entries: .*nowhere\.toml/],
    ["entries outside the folder", ['entries = "../elsewhere.toml"'], [], /club\.toml:\d+:\d+: .*entries/],
    ["an unknown key", ['entrys = "entries.toml"'], [], /club\.toml:\d+:\d+: care\.entrys: /],
    ["a day outside the block", [], ["--date", "2025-11-26"], /--date: found '2025-11-26', expected a day of the block, 2026-11-23 to 2027-01-03/],
    ["no day", [], ["--date", "tomorrow"], /--date: found 'tomorrow'/],
    ["weather without a day", [], ["--weather", "weather/warm.toml"], /--weather requires --date/],
  ].map(([what, lines, words, line]) => withClub(`care of a club: bad input: ${what}`, (club) => {
    if (lines.length > 0) withCare(club, lines);
    const said = cards(club, "--squad", "u13-kestrels", ...words.map((word) => (word.startsWith("weather/") ? club.path(word) : word)));
    return all(status(said, 2), said.lines.length === 1 ? "" : said.err, says(said.err, line), club.wrote() ? "something was written" : "");
  })),
];
