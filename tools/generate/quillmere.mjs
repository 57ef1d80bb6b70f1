// The demo club's coaches.toml, and its squads beside the three written by hand: roster-club.csv, restrictions-club.toml
// and squads/*.toml.
// Invented people, invented clubs, one seed: the same bytes on every machine. As a program it writes the files; a test
// compares. Births follow a season that starts in September (common practice).
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { generator } from "./seeded_numbers.mjs";

const kFolder = "demo/quillmere";
const kSeed = 20261123;
const kSeasonYear = 2026;

// id, name, who, band, players, routine, strip, minutes, kit of balls, [weekday, start] of its week
const kTable = `
u10-goldcrests   Goldcrests    Girls 10 11 first-steps  south-side  14 12  monday 17:00, wednesday 17:00
u11-siskins      Siskins       -     11 16 first-steps  south-side  15 16  monday 17:00, wednesday 17:00
u11-linnets      Linnets       Girls 11 12 first-steps  south-side  15 12  tuesday 17:00, thursday 17:00
u12-dunnocks     Dunnocks      -     12 24 early-teens  south-side  18 20  monday 17:30, wednesday 17:30, friday 17:00
u12-redstarts    Redstarts     Girls 12 13 hall         school-hall 16 12  monday 17:15, wednesday 17:15
u13-wagtails     Wagtails      Girls 13 15 hall         school-hall 16 14  tuesday 17:15, thursday 17:15
u13-fieldfares   Fieldfares    Boys  13 18 early-teens  south-side  20 16  tuesday 17:30, thursday 17:30
u14-lapwings     Lapwings      Girls 14 14 early-teens  south-side  20 14  monday 18:00, wednesday 18:00
u14-jackdaws     Jackdaws      Boys  14 20 early-teens  south-side  22 20  monday 17:30, wednesday 17:30, friday 17:30
u14-plovers      Plovers       -     14 10 early-teens  north-end   20 10  monday 17:45, wednesday 17:45
u15-curlews      Curlews       Girls 15 13 hall         school-hall 16 13  monday 18:00, wednesday 18:00
u15-sparrowhawks Sparrowhawks  Boys  15 17 mid-teens    south-side  20 16  tuesday 18:00, thursday 18:00, friday 18:00
u15-redwings     Redwings      -     15 9  mid-teens    north-end   20 9   monday 18:15, wednesday 18:15
u16-avocets      Avocets       Girls 16 15 mid-teens    south-side  20 15  monday 18:30, wednesday 18:30
u16-goshawks     Goshawks      Boys  16 19 mid-teens    south-side  22 18  tuesday 18:30, thursday 18:30, friday 18:30
u17-egrets       Egrets        Girls 17 12 older        south-side  22 12  monday 19:00, wednesday 19:00
u17-herons       Herons        Boys  17 18 older        south-side  22 18  tuesday 19:00, thursday 19:00
u18-cranes       Cranes        Girls 18 11 older        south-side  22 11  monday 19:00, wednesday 19:00
u18-buzzards     Buzzards      Boys  18 16 older        south-side  22 16  tuesday 19:00, thursday 19:00, friday 19:00
u19-ospreys      Ospreys       Girls 19 10 older        north-end   22 10  monday 19:15, wednesday 19:15
u19-kites        Kites         -     19 8  older        north-end   12 8   monday 19:45, friday 19:45
`;

function readTable(text) {
  return text.trim().split("\n").map((line) => {
    const [id, name, who, band, players, routine, strip, minutes, balls, ...week] = line.trim().split(/\s+/);
    const slots = week.join(" ").split(", ").map((slot) => slot.split(" "));
    return { id, name, who: who === "-" ? "" : who, band: Number(band), players: Number(players), routine, strip,
      minutes: Number(minutes), balls: Number(balls), slots };
  });
}

const kGiven = {
  Girls: ["Aisling", "Bettany", "Csilla", "Dagny", "Elowen", "Fenja", "Ginevra", "Hesper", "Ilse", "Jadwiga", "Keziah", "Linnea",
    "Marisol", "Nerys", "Oonagh", "Pilar", "Quilla", "Rosheen", "Solveig", "Tamsin", "Ursel", "Vasilisa", "Wren", "Xanthe", "Ysolde",
    "Zuzana"],
  Boys: ["Anselm", "Bartek", "Corentin", "Digby", "Emrys", "Florian", "Gethin", "Havel", "Ivo", "Jorun", "Kasimir", "Leander",
    "Mattis", "Niels", "Osric", "Piran", "Quentin", "Radek", "Sandor", "Tibor", "Ulf", "Viggo", "Wilmot", "Xavi", "Yannick", "Zeno"],
};
const kFront = ["Amber", "Bramble", "Copper", "Dapple", "Elder", "Fern", "Gorse", "Heather", "Inkle", "Jasper", "Kettle", "Larch",
  "Mallow", "Nettle", "Otter", "Pebble", "Quill", "Rowan", "Sedge", "Thistle", "Umber", "Vetch", "Willow", "Yarrow"];
const kBack = ["acre", "beck", "combe", "dale", "edge", "feather", "garth", "hollow", "ing", "knott", "low", "mere", "ness", "over",
  "pike", "rigg", "stone", "thwaite", "vane", "whistle"];
const kOpponents = ["Bramblewick Colts", "Copperbeck Rangers", "Otterden Wanderers", "Pennyfold Juniors", "Larkhollow Athletic",
  "Thimbleby Rovers", "Sedgeworth Youth"];

// What a squad of a routine has done before.
const kTaught = {
  "first-steps": ["easy-laps", "side-shuffle", "knee-hug-walk", "hip-opening", "high-skip", "bridge", "single-leg-stance", "front-plank",
    "squat", "drop-and-freeze", "jump-and-stick", "run-and-stick", "curved-runs"],
  "early-teens": ["easy-laps", "side-shuffle", "lunge-rotate-reach", "hip-closing", "high-skip", "side-lying-inner-thigh-lift",
    "single-leg-bridge", "reach-on-one-leg", "side-plank", "squat", "jump-and-stick", "plant-and-cut", "strides"],
  hall: ["carioca", "easy-laps", "knee-hug-walk", "hip-closing", "high-skip", "hinge-to-wall", "heel-to-toe-stance", "wall-plank",
    "single-leg-squat-at-wall", "line-hop-pattern", "wall-drives", "run-and-stick", "forward-and-back-shuttle"],
  "mid-teens": ["side-shuffle", "easy-laps", "walking-thigh-stretch", "hip-closing", "high-skip", "adductor-hold-partner",
    "kneeling-hamstring-lower", "one-leg-partner-nudge", "plank-with-reach", "single-leg-squat", "side-to-side-hop", "build-up-runs",
    "plant-and-cut"],
  older: ["backpedal", "easy-laps", "lunge-rotate-reach", "hip-opening", "high-skip", "adductor-hold-partner",
    "kneeling-hamstring-lower", "one-leg-partner-nudge", "side-plank", "split-squat", "bounding", "build-up-runs", "plant-and-cut"],
};

// Of the squads of the roster, who also plays for another: [squad, which of its players, the other's label].
const kInTwo = [["u12-redstarts", 3, "U13 Girls"], ["u15-curlews", 5, "U16 Girls"], ["u17-herons", 2, "U18 Boys"]];
// The two of the Under-13 Kestrels who play up, as roster.csv has them.
const kFromOtherRoster = [
  ["Q03", "Çağla Yıldızoğlu", "2014-05-27", "U13/U14 Girls", 3, 2, "no"],
  ["Q12", "نورة القمري", "2014-03-24", "U13/U14 Girls", 12, 3, "no"],
];

const label = (squad) => `U${squad.band}${squad.who === "" ? "" : ` ${squad.who}`}`;
const two = (number) => String(number).padStart(2, "0");
const iso = (day) => new Date(day).toISOString().slice(0, 10);
const kDay = 86400000;

function playersOf(squads, random) {
  const used = new Set();
  const rows = [];
  const pick = (list) => list[Math.floor(random() * list.length)];
  for (const squad of squads) {
    const first = Date.UTC(kSeasonYear - squad.band, 8, 1);
    squad.rows = [];
    for (let i = 0; i < squad.players; i++) {
      const lists = squad.who === "" ? [kGiven.Girls, kGiven.Boys][i % 2] : kGiven[squad.who];
      let name;
      do name = `${pick(lists)} ${pick(kFront)}${pick(kBack)}`; while (used.has(name));
      used.add(name);
      const row = { name, birth: iso(first + Math.floor(random() * 365) * kDay), squads: label(squad), shirt: i + 1,
        size: 1 + Math.floor(random() * 4), contact: random() < 0.9 ? "yes" : "no" };
      row.id = `Q${String(rows.length + 1).padStart(3, "0")}`;
      rows.push(row);
      squad.rows.push(row);
    }
  }
  for (const [id, which, other] of kInTwo) squads.find((squad) => squad.id === id).rows[which].squads += `/${other}`;
  return rows;
}

function rosterText(rows) {
  const lines = rows.map((row) => [row.id, row.name, row.birth, row.squads, row.shirt, row.size, row.contact].join(","));
  const heading = "Member No,Player,Date of birth,Squad,Shirt No,Size group,Contact OK";
  return `${[heading, ...kFromOtherRoster.map((row) => row.join(",")), ...lines].join("\n")}\n`;
}

function restrictionsText(squads) {
  const player = (id, which) => squads.find((squad) => squad.id === id).rows[which].id;
  return `# Made by tools/generate/quillmere.mjs.
as_known = "Sunday 20:10"

[[restriction]]
player = "${player("u15-curlews", 5)}"
areas = ["ankle"]
kinds = ["impact", "twist"]
allowed = "light"
review = 2026-12-11
instruction = "small quiet jumps only, no sharp turns"

[[restriction]]
player = "${player("u14-jackdaws", 7)}"
areas = ["knee"]
kinds = ["impact"]
allowed = "none"
until = 2026-12-13
instruction = "no jumping"

[[restriction]]
player = "${player("u18-buzzards", 4)}"
areas = ["back-thigh"]
kinds = ["speed", "stretch", "load"]
allowed = "light"
review = 2026-12-04
instruction = "easy running only, no kneeling lowers"

[[restriction]]
player = "${player("u12-dunnocks", 11)}"
review = 2026-12-07
sits_out = true
instruction = "sits out until the lead has spoken with the family"
`;
}

// Kick-offs half an hour apart where two squads are at home on one strip, and every second match away.
function matchesOf(squad, index, kickOffs) {
  if (squad.band < 12) return [];
  const matches = [];
  for (let week = index % 2; week < 8; week += squad.who === "" ? 3 : 2) {
    const sunday = squad.band >= 16;
    const day = iso(Date.UTC(2026, 10, 28 + (sunday ? 1 : 0)) + 7 * week * kDay);
    if (day >= "2026-12-21" && day <= "2026-12-27") continue;
    const opponent = kOpponents[(index + week) % kOpponents.length];
    if (matches.length % 2 === 1) {
      matches.push(`[[match]]\ndate = ${day}\nopponent = "${opponent}"\naway = true`);
      continue;
    }
    const key = `${day} ${squad.strip}`;
    const count = kickOffs.get(key) ?? 0;
    kickOffs.set(key, count + 1);
    const minutes = 9 * 60 + 30 + 30 * count;
    matches.push(`[[match]]\ndate = ${day}\nstart = ${two(Math.floor(minutes / 60))}:${two(minutes % 60)}:00\nopponent = "${opponent}"`);
  }
  return matches;
}

function squadText(squad, index, random, kickOffs) {
  const lines = ["# Made by tools/generate/quillmere.mjs.", 'club = "Quillmere Juniors"', `name = "Under-${squad.band} ${squad.name}"`,
    'roster = "../roster-club.csv"', `in_roster = "${label(squad)}"`, `routine = "${squad.routine}"`, `strip = "../strips/${squad.strip}.toml"`,
    'restrictions = "../restrictions-club.toml"'];
  if (squad.band < 12) lines.push('match_day_routine = "first-steps"');
  if (index % 3 === 0) lines.push(`expected_turnout = ${squad.players - 2}`);
  const lanes = squad.strip === "south-side" ? "\nlanes = 2" : "";
  for (const [weekday, start] of squad.slots) {
    lines.push("", `[[week]]\nweekday = "${weekday}"\nstart = ${start}:00\nminutes = ${squad.minutes}${lanes}`);
  }
  for (const match of matchesOf(squad, index, kickOffs)) lines.push("", match);
  lines.push("", `[kit]\ncones = 16\nballs = ${squad.balls}`);
  // Every sixth squad is new to all of it.
  if (index % 6 !== 5) {
    lines.push("", "[taught]");
    const kept = kTaught[squad.routine].filter(() => random() < 0.85);
    for (const drill of kept) lines.push(`${drill} = ${2 + Math.floor(random() * 10)}`);
  }
  if (index % 4 === 1) lines.push("", `[clock]\npace = ${(0.95 + Math.floor(random() * 12) / 100).toFixed(2)}`);
  lines.push("", `[partners]\nmeasure = "${squad.band < 12 ? "age" : "size-group"}"`);
  return `${lines.join("\n")}\n`;
}

// First names are enough: who coaches what is the club's business, and nobody here is real.
const kCoaches = ["Maren", "Tolly", "Ottilie", "Bram", "Sigrun", "Cato", "Hollis", "Petra", "Edwin", "Noor", "Fabian", "Ilka", "Jonas",
  "Wilma", "Rufus", "Anouk", "Casper", "Dilys", "Egon", "Freya", "Gustav", "Hedda", "Isak", "Jette", "Klaas", "Lovisa"];
const kTaughtWhat = ["first evening", "landing and cutting drills", "visit in the second week"];

// Two coaches share the squads written by hand; every third of the others has not been taught yet.
function coachesText(squads) {
  const ids = ["u10-wrens", "u13-kestrels", "u16-merlins", ...squads.map((squad) => squad.id)];
  const coaches = kCoaches.slice(0, ids.length + 1).map((id, index) => ({ id, squads: [ids[Math.max(index - 1, 0)]], taught: [] }));
  coaches.forEach((coach, index) => {
    if (index % 3 === 1) return;
    for (let lesson = 0; lesson <= index % 2; lesson++) {
      const day = iso(Date.UTC(2026, 10, 14) + 7 * (lesson - 1) * kDay + (index % 2) * kDay);
      coach.taught.push(`{ date = ${day}, by = "the lead", what = "${kTaughtWhat[lesson]}" }`);
    }
  });
  coaches[0].squads = ["u10-wrens", "u13-kestrels"];
  coaches[1].squads = ["u13-kestrels"];
  return `# Made by tools/generate/quillmere.mjs. First names are enough: ids for the club, not persons.\n${coaches.map((coach) => {
    const list = coach.squads.map((id) => `"${id}"`).join(", ");
    const taught = coach.taught.length === 0 ? "[]" : `[${coach.taught.join(", ")}]`;
    return `\n[[coach]]\nid = "${coach.id}"\nsquads = [${list}]\ntaught = ${taught}\n`;
  }).join("")}`;
}

// Every generated file by its path.
export function quillmere() {
  const random = generator(kSeed);
  const squads = readTable(kTable);
  const rows = playersOf(squads, random);
  const kickOffs = new Map();
  const files = new Map([[`${kFolder}/roster-club.csv`, rosterText(rows)], [`${kFolder}/restrictions-club.toml`, restrictionsText(squads)],
    [`${kFolder}/coaches.toml`, coachesText(squads)]]);
  squads.forEach((squad, index) => files.set(`${kFolder}/squads/${squad.id}.toml`, squadText(squad, index, random, kickOffs)));
  return files;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [path, text] of quillmere()) writeFileSync(path, text);
}
