// What bad input gets: one clear line each, exit status 2, nothing on standard output, nothing written.
import { chmodSync, rmSync, readFileSync, writeFileSync, mkdirSync, readdirSync } from "node:fs";
import { withClub } from "./club.mjs";

const kSquad = "squads/u13-kestrels.toml";
const kStrip = "strips/north-end.toml";
const kTable = "Member No;Player;Date of birth;Squad;Weight (kg)\n";

function roster(club, rows, heading = kTable) {
  writeFileSync(club.path("roster.csv"), heading + rows.join("\n") + "\n");
  club.edit(kSquad, 'away = ["Q03", "Q16"]\n', "");
  club.edit(kSquad, 'forbidden = [["Q06", "Q10"]]\n', "");
  club.edit(kSquad, 'restrictions = "../restrictions.toml"\n', "");
}

function players(count) {
  return Array.from({ length: count }, (_, i) => `R${i + 1};Player ${i + 1};2014-03-${String(1 + (i % 28)).padStart(2, "0")};U13;`);
}

// [what, how it is broken, the line it gets, flags]
const kMistakes = [
  ["a player twice", (c) => roster(c, ["A;Ann;2014-03-14;U13;", "B;Bo;2014-04-15;U13;", "A;Cid;2014-05-16;U13;"]),
    /^roster\.csv:4.*found 'A'/],
  ["the same name and birth date twice", (c) => roster(c, ["A;Ann;2014-03-14;U13;", "B;Bo;2014-04-15;U13;", "C;Ann;2014-03-14;U13;"]),
    /^roster\.csv:4.*Ann/],
  ["a date that does not exist", (c) => roster(c, ["A;Ann;30/02/2014;U13;", "B;Bo;15/04/2014;U13;"]),
    /^roster\.csv:2.*Date of birth.*'30\/02\/2014'/],
  ["a date in the future", (c) => roster(c, ["A;Ann;2034-03-14;U13;", "B;Bo;2014-04-15;U13;"]), /^roster\.csv:2.*2034/],
  ["dates that can be read in two ways", (c) => roster(c, ["A;Ann;03/04/2014;U13;", "B;Bo;05/06/2014;U13;"]),
    /^roster\.csv:2.*03\/04\/2014.*(day-first|month-first|two ways)/],
  ["a mass without its unit", (c) => roster(c, ["A;Ann;2014-03-14;U13;84", "B;Bo;2014-04-15;U13;80"],
    "Member No;Player;Date of birth;Squad;Weight\n"), /^roster\.csv:[12].*Weight.*(kg|unit)/],
  ["a mass in stones of a giant", (c) => roster(c, ["A;Ann;2014-03-14;U13;400", "B;Bo;2014-04-15;U13;40"]), /^roster\.csv:2.*400/],
  ["one player", (c) => roster(c, ["A;Ann;2014-03-14;U13;"]), /^roster\.csv.*found 1/],
  ["nobody", (c) => roster(c, []), /^roster\.csv.*(found 0|nobody|no player|nothing)/],
  ["nobody of the squad", (c) => c.edit(kSquad, 'in_roster = "U13"', 'in_roster = "U12"'), /0 players/],
  ["everybody away but one", (c) => {
    roster(c, players(3));
    c.edit(kSquad, "late = 2\n", 'away = ["R1", "R2"]\n');
  }, /^squads\/u13-kestrels\.toml:4.*found 1 player tonight, expected 2 to 40/],
  ["sixty players", (c) => roster(c, players(60)), /^squads\/u13-kestrels\.toml:4.*found 60 players tonight, expected 2 to 40/],
  ["a turnout of sixty", () => {}, /tonight\.turnout: found 60, expected a whole number from 2 to 40$/, ["--turnout", "60"]],
  ["a turnout of one", () => {}, /tonight\.turnout: found 1, expected a whole number from 2 to 40$/, ["--turnout", "1"]],
  ["a turnout of none", () => {}, /tonight\.turnout: found 0, expected a whole number from 2 to 40$/, ["--turnout", "0"]],
  ["more late than there", () => {}, /tonight\.late: found 9 late of 9, expected fewer/, ["--turnout", "9", "--late", "9"]],
  ["negative minutes", (c) => c.edit(kSquad, "minutes = 20", "minutes = -20"),
    /^squads\/u13-kestrels\.toml:\d+:1: slot\.minutes: found -20, expected a number from 5 to 60$/],
  ["negative minutes by flag", () => {}, /slot\.minutes: found -20(\.0)?, expected a number from 5 to 60$/, ["--minutes", "-20"]],
  ["minutes in words", () => {}, /^lanework: .*minutes.*twenty/i, ["--minutes", "twenty"]],
  ["a lane of 0 m", (c) => c.edit(kStrip, "lane_length_metres = 15", "lane_length_metres = 0"),
    /^strips\/north-end\.toml:2:1: lane_length_metres: found 0, expected a number from 5 to 60$/],
  ["a lane of 0 m by flag", () => {}, /lane_length_metres: found 0(\.0)?, expected a number from 5 to 60$/, ["--lane-length", "0"]],
  ["cones further apart than the lane is long", (c) => c.edit(kStrip, "cone_spacing_metres = 5", "cone_spacing_metres = 16"),
    /^strips\/north-end\.toml:3:1: cone_spacing_metres/],
  ["an unknown drill in the routine", (c) => c.edit("catalogue/routines/early-teens.toml", 'id = "easy-laps"', 'id = "moon-walk"'),
    /^catalogue\/routines\/early-teens\.toml:8:1: drill\.1\.id: found 'moon-walk'/],
  ["an unknown drill pinned", () => {}, /tonight\.pins\.1\.drill: found 'moon-walk'/, ["--pin", "moon-walk"]],
  ["an unknown drill banned", () => {}, /tonight\.bans: found 'moon-walk'/, ["--ban", "moon-walk"]],
  ["an unknown routine", () => {}, /routine 'weekend'.*early-teens/, ["--routine", "weekend"]],
  ["an unknown player away", (c) => c.edit(kSquad, 'away = ["Q03", "Q16"]', 'away = ["Q03", "Q99"]'),
    /^squads\/u13-kestrels\.toml:\d+:1: tonight\.away: found 'Q99'/],
  ["a sore player who is not there", () => {}, /found 'Q99', expected the id of a player/, ["--sore", "Q99=knee"]],
  ["sore without an area", () => {}, /--sore: found 'Q07', expected PLAYER=AREA/, ["--sore", "Q07"]],
  ["an unknown area", () => {}, /--sore: found 'soul', expected one of head, neck/, ["--sore", "Q07=soul"]],
  ["a family without a drill", (c) => {
    for (const name of readdirSync(c.path("catalogue/drills"))) {
      const path = c.path(`catalogue/drills/${name}`);
      if (/^family = "balance"/m.test(readFileSync(path, "utf8"))) rmSync(path);
    }
  }, /balance/, [], "any"],
  ["a figure for a rung that is not there", (c) => c.append("catalogue/drills/side-plank.toml", "\n[rung_figure.knee-down]\n"),
    /^catalogue\/drills\/side-plank\.toml:\d+:\d+: rung_figure\.knee-down: found 'knee-down', expected one of knees-down, /],
  ["a rung's figure that stands on a word", (c) => c.edit("catalogue/drills/side-plank.toml", '["forearm_left", "knee_left"]', '["forearm_left", "knee_lef"]'),
    /^catalogue\/drills\/side-plank\.toml:\d+:\d+: rung_figure\.knees-down\.pose\.1\.contacts: found 'knee_lef', expected feet, /],
  ["a family that is empty text", (c) => c.edit("catalogue/drills/squat.toml", 'family = "leg-strength"', 'family = ""'),
    /^catalogue\/drills\/squat\.toml:3:1: family: found '', expected one of pulse-raising/],
  ["text where a table belongs", (c) => c.edit(kSquad, "[kit]\ncones = 16\nballs = 10\n", "[kit]\ncones = \"many\"\n"),
    /^squads\/u13-kestrels\.toml:\d+:1: kit\.cones: found 'many', expected a whole number from 0 to 500$/],
  ["a number where a table belongs", (c) => c.edit(kSquad, '[tonight]\nlate = 2\naway = ["Q03", "Q16"]\nseed = 1\n', ""),
    /^squads\/u13-kestrels\.toml:1:1: tonight: found 5, expected a table$/, [], "one", (c) => c.edit(kSquad, "club =", "tonight = 5\nclub =")],
  ["TOML that is none", (c) => c.edit(kSquad, "minutes = 20", "minutes = = 20"), /^squads\/u13-kestrels\.toml:12:11: /],
  ["an unknown key", (c) => c.edit(kSquad, "minutes = 20", "minutes = 20\nminuets = 3"), /slot\.minuets: found 'minuets', expected one of date, start, minutes/],
  ["a half-written squad file", (c) => {
    const text = readFileSync(c.squad, "utf8");
    writeFileSync(c.squad, text.slice(0, text.indexOf("early-teens") + 5));
  }, /^squads\/u13-kestrels\.toml:5/],
  ["a half-written drill", (c) => {
    const path = c.path("catalogue/drills/squat.toml");
    writeFileSync(path, readFileSync(path, "utf8").slice(0, 40));
  }, /^catalogue\/drills\/squat\.toml:[23]/, [], "any"],
  ["a half-written roster", (c) => {
    const bytes = readFileSync(c.path("roster.csv"));
    writeFileSync(c.path("roster.csv"), bytes.subarray(0, bytes.indexOf('"ring mum') + 4));
  }, /^roster\.csv:\d+/, [], "any"],
  ["a roster that is a workbook", (c) => writeFileSync(c.path("roster.csv"), Buffer.from("PK\x03\x04\x14\x00\x06\x00workbook", "latin1")),
    /^roster\.csv.*/],
  ["a roster of noughts", (c) => writeFileSync(c.path("roster.csv"), Buffer.alloc(400)), /^roster\.csv.*/],
  ["an empty roster", (c) => writeFileSync(c.path("roster.csv"), ""), /^roster\.csv.*/],
  ["no roster", (c) => rmSync(c.path("roster.csv")),
    /^squads\/u13-kestrels\.toml:3:1: roster: found '.*roster\.csv', no such file, expected a file that can be read$/],
  ["a folder for a roster", (c) => {
    rmSync(c.path("roster.csv"));
    mkdirSync(c.path("roster.csv"));
  }, /^squads\/u13-kestrels\.toml:3:1: roster: found .*a folder/],
  ["a strip outside the club", (c) => c.edit(kSquad, "../strips/north-end.toml", "../../strip.toml"),
    /^squads\/u13-kestrels\.toml:6:1: strip: found '\.\.\/\.\.\/strip\.toml', expected a file in the folder/],
  ["no squad file", (c) => rmSync(c.squad), /^squads\/u13-kestrels\.toml: found no such file/],
  ["a routine above a youth ceiling", (c) => c.edit("catalogue/routines/early-teens.toml",
    'id = "jump-and-stick"\nrung = "forward"\nsets = 2\namount = 6',
    ["jump-and-stick|forward|2|6", "side-to-side-hop|small-line|2|20"].map((line) => {
      const [id, rung, sets, amount] = line.split("|");
      return `id = "${id}"\nrung = "${rung}"\nsets = ${sets}\namount = ${amount}`;
    }).join("\n\n[[drill]]\n")), /^catalogue\/routines\/early-teens\.toml:\d+.*/, [], "any"],
  ["limits of the club's own that allow more", (c) => {
    mkdirSync(c.path("ours"));
    writeFileSync(c.path("ours/limits.toml"), readFileSync(c.path("catalogue/limits.toml"), "utf8").replace("eccentric_session = 10 ", "eccentric_session = 11 "));
    c.edit(kSquad, "[slot]", 'catalogue = "../ours"\n\n[slot]');
  }, /^ours\/limits\.toml:34:1: ceilings\.3\.eccentric_session: found 11, expected at most 10 at age 12 \(a club may lower/],
  ["an instruction that says what is the matter", (c) => c.edit("restrictions.toml", '"no jumping, no sharp turns"', '"torn ligament"'),
    /^restrictions\.toml:10:1: restriction\.1\.instruction: found 'torn'/],
];

// Everything that is told, when it may be more than one line.
function judge(club, said, pattern, lines) {
  if (said.status !== 2) return `exit status ${said.status}\n${said.err}${said.out.slice(0, 400)}`;
  if (said.out !== "") return `on standard output: ${said.out.slice(0, 200)}`;
  if (said.lines.length === 0) return "nothing was said";
  const plain = said.lines.map((line) => club.plain(line));
  if (lines === "one" && plain.length !== 1) return `not one line:\n${plain.join("\n")}`;
  if (!plain.some((line) => pattern.test(line))) return `none fits ${pattern}:\n${plain.join("\n")}`;
  if (plain.some((line) => line.length > 400)) return `a line of ${Math.max(...plain.map((line) => line.length))} characters`;
  return "";
}

const cases = kMistakes.map(([what, breakIt, pattern, flags = [], lines = "one", more]) => withClub(`bad input: ${what}`, (club) => {
  breakIt(club);
  if (more) more(club);
  const request = club.path("request.json");
  const planned = judge(club, club.plan(...flags, "--save-request", request, "--export-mps", club.path("x.mps")), pattern, lines);
  if (planned) return planned;
  if (readdirSync(club.folder).some((name) => /^(request\.json|x\.)/.test(name))) return "plan wrote a file";
  const carded = judge(club, club.card(...flags), pattern, lines);
  if (carded) return `card: ${carded}`;
  return club.wrote() ? "card made its folder" : "";
}));

// Only where the file's mode binds us at all.
if (process.getuid?.() !== 0) {
  cases.push(withClub("bad input: a roster that may not be read", (club) => {
    chmodSync(club.path("roster.csv"), 0);
    return judge(club, club.plan(), /^squads\/u13-kestrels\.toml:3:1: roster: .*may not be read/, "one");
  }));
}

export const badInput = cases;
