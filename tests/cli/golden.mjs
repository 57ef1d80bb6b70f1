// What the program prints for the demo squads, byte for byte, as somebody has read and approved it
// (node tools/approve.mjs). A text that nobody has approved is a failure.
import { existsSync, readFileSync } from "node:fs";
import { kGrowth, kLoad, kScreen } from "./care_measures.mjs";
import { kSeasonHalves } from "./evidence.mjs";
import { runProgram } from "../../tools/suite/programs.mjs";

const squad = (name) => ["--squad", `demo/quillmere/squads/${name}.toml`];

const table = (name) => `tests/cli/tables/${name}.csv`;
const kSmallClub = "tests/evidence/r/squad_weeks_small.csv";
const smallClub = (outcome) => ["--data", kSmallClub, "--outcome", outcome, "--hours", "hours"];

export const kGoldens = {
  "u10-usual": ["plan", ...squad("u10-wrens")],
  "u13-usual": ["plan", ...squad("u13-kestrels")],
  "u16-usual": ["plan", ...squad("u16-merlins")],
  "u13-short": ["plan", ...squad("u13-kestrels"), "--minutes", "14"],
  "u13-hopeless": ["plan", ...squad("u13-kestrels"), "--minutes", "5", "--pin", "easy-laps", "--pin", "strides", "--pin", "squat", "--pin", "side-plank", "--pin", "high-skip", "--pin", "plant-and-cut", "--pin", "single-leg-bridge"],
  "u13-why": ["plan", ...squad("u13-kestrels"), "--why"],
  "long-practice-clock": ["clock", "--routine", "long-practice"],
  "u13-pairs": ["pairs", "--roster", "demo/quillmere/roster.csv", "--in-roster", "U13", "--date", "2026-11-26", "--measure", "size-group"],
  "u13-block-why": ["block", "--club", "demo/quillmere", "--squad", "u13-kestrels", "--why"],
  "catalogue-check": ["catalogue", "check"],
  "side-plank": ["catalogue", "show", "side-plank"],
  "evidence-rate": ["evidence", "rate", "--events", "5", "--hours", "1250", "--days", "3,0,12,40,6"],
  "evidence-rate-none": ["evidence", "rate", "--events", "0", "--hours", "800"],
  "evidence-ratio": ["evidence", "ratio", "--events", "41", "--hours", "28010", "--other-events", "15", "--other-hours", "19017"],
  "evidence-ratio-seasons": ["evidence", "ratio", "--events", "9", "--hours", "4200", "--other-events", "17", "--other-hours", "5100", "--hours-a-season", "1500"],
  "evidence-arms": ["evidence", "arms", "--data", table("arms")],
  "evidence-pool": ["evidence", "pool", "--data", table("trials")],
  "evidence-standardise": ["evidence", "standardise", "--data", table("parts")],
  "evidence-fit": ["evidence", "fit", ...smallClub("y"), "--fixed", "adh,sexF,match_share", "--category", "age=U11", "--curve", "week=4", "--random", "squad"],
  "evidence-fit-nb2": ["evidence", "fit", ...smallClub("ynb"), "--fixed", "adh", "--random", "squad", "--family", "nb2"],
  "evidence-watch": ["evidence", "watch", "--data", kSmallClub, "--events", "y", "--usual", "4"],
  "evidence-funnel": ["evidence", "funnel", "--data", kSmallClub, "--events", "y"],
  "evidence-shrink": ["evidence", "shrink", "--data", kSmallClub, "--events", "y"],
  "evidence-power": ["evidence", "power", "--rate", "4", "--other-rate", "2.6", "--hours-a-squad", "1500", "--hours-a-season", "30000", "--simulate", "1000"],
  "evidence-emphasis": ["evidence", "emphasis", "--records", "demo/quillmere/season", "--from", "2025-08-25", "--to", "2026-05-31"],
  "evidence-emphasis-too-few": ["evidence", "emphasis", "--records", "demo/quillmere/season", "--from", "2025-08-25", "--to", "2025-09-28", "--as-of", "2026-05-31"],
  "evidence-agree-scores": ["evidence", "agree", "--data", table("judges"), "--scores", "first,second,third,fourth"],
  "evidence-seasons": kSeasonHalves,
  "care-growth": kGrowth,
  "care-growth-restrictions": [...kGrowth, "--restrictions"],
  "care-load": kLoad,
  "care-screen": kScreen,
  "evidence-agree-classes": ["evidence", "agree", "--data", table("observers"), "--classes", "lead,helper", "--order", "few,half,most", "--weights", "linear"],
  "care-weather-hot": ["care", "weather", "tests/cli/weather/hot-evening.toml", "--at", "18:07"],
  "care-weather-warm": ["care", "weather", "tests/cli/weather/warm-evening.toml", "--at", "18:00"],
  "care-weather-cold": ["care", "weather", "tests/cli/weather/cold-evening.toml", "--at", "18:00"],
  "care-weather-nothing": ["care", "weather", "tests/cli/weather/nothing-known.toml", "--at", "18:00"],
  "care-heat": ["care", "heat", "--air-celsius", "35", "--humidity-percent", "40", "--minutes-old", "10"],
  "care-heat-meter": ["care", "heat", "--wet-bulb-globe-celsius", "23.4", "--acclimatised-days", "16", "--youngest-age", "14", "--minutes-old", "10"],
  "care-cold": ["care", "cold", "--air-celsius", "-4", "--wind-kilometres-per-hour", "20", "--minutes-old", "10"],
  "care-lightning": ["care", "lightning", "--at", "14:25", "--thunder", "14:00", "--flash-to-thunder", "14:20=29"],
  "care-air": ["care", "air", "--fine-particles-micrograms-per-cubic-metre", "40", "--minutes-old", "20"],
  "care-pain": ["care", "pain", "--place", "knee", "--during", "3", "--date", "2026-11-26", "--why"],
  "care-standing": ["care", "standing", "demo/quillmere/entries.toml", "--roster", "demo/quillmere/roster.csv", "--on", "2026-11-26"],
  "care-return": ["care", "return", "--from", "demo/quillmere/entries.toml", "--player", "Q16", "--roster", "demo/quillmere/roster.csv", "--date", "2026-11-26"],
  "care-explore": ["care", "return", "--explore"],
};

// Of these only what follows the heading: a better solver may give another block.
const kFrom = { "u13-block-why": "Where the numbers of the block come from\n" };

export const goldenPath = (name) => `tests/cli/golden/${name}.txt`;

export async function goldenText(program, name) {
  const said = await runProgram(program, kGoldens[name]);
  const from = kFrom[name] ? said.output.indexOf(kFrom[name]) : 0;
  return `exit status ${said.status}\n${said.output.slice(Math.max(0, from))}`;
}

function firstDifference(approved, printed) {
  const [a, b] = [approved.split("\n"), printed.split("\n")];
  const line = a.findIndex((text, index) => text !== b[index]);
  const at = line < 0 ? a.length : line;
  return `line ${at + 1}\n- ${a[at] ?? "(end)"}\n+ ${b[at] ?? "(end)"}`;
}

export const goldens = Object.entries(kGoldens).map(([name, words]) => ({
  name: `golden: ${name}`,
  async run(program) {
    if (!existsSync(goldenPath(name))) return `${goldenPath(name)} is not there: read what 'lanework ${words.join(" ")}' prints, then node tools/approve.mjs`;
    const approved = readFileSync(goldenPath(name), "utf8");
    const printed = await goldenText(program, name);
    return approved === printed ? "" : firstDifference(approved, printed);
  },
}));
