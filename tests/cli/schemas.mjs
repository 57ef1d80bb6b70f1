// Real answers against schema/: each fits, and each key that stands in an answer is described there.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { eveningsOfAllSquads, kSquads } from "../../tools/suite/evenings.mjs";
import { runProgram } from "../../tools/suite/programs.mjs";
import { kCareAnswers } from "./care_players.mjs";
import { kCareMeasuresAnswers } from "./care_measures.mjs";
import { kEvidenceAnswers } from "./evidence.mjs";
import { kWeatherAnswers } from "./weather.mjs";

const kNames = ["plan-request", "plan-answer", "slip-answer", "pairs-answer", "clock-answer", "plan-check-answer", "club-check-answer", "block-answer", "block-check-answer", "evidence-answer", "weather-answer", "care-players-answer", "care-measures-answer", "faults"];

// Readers pass over keys they do not know, so the schemas leave objects open; here every key must be known.
function closed(schema) {
  if (Array.isArray(schema)) return schema.map(closed);
  if (schema === null || typeof schema !== "object") return schema;
  const out = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  return schema.type === "object" && schema.properties ? { ...out, additionalProperties: false } : out;
}

const read = (name) => JSON.parse(readFileSync(`schema/${name}.schema.json`, "utf8"));

async function validators() {
  const { default: Ajv } = await import("ajv/dist/2020.js");
  const ajv = new Ajv({ allErrors: true, strict: true, strictRequired: false, strictTypes: false });
  const made = {};
  for (const name of kNames) {
    const validate = ajv.compile(name === "plan-request" ? read(name) : closed(read(name)));
    made[name] = (value) => (validate(value) ? "" : ajv.errorsText(validate.errors, { separator: "\n" }));
  }
  return made;
}

const kBroken = [
  ["plan-answer", (a) => delete a.turnout],
  ["plan-answer", (a) => (a.outcome = "best")],
  ["plan-answer", (a) => (a.version = 2)],
  ["plan-answer", (a) => (a.items[0].takes_seconds = 1.5)],
  ["plan-answer", (a) => (a.items[0].player = "Q01")],
  ["plan-answer", (a) => (a.infeasible = { conflict: ["x"], way_out: "y" })],
  ["plan-answer", (a) => (a.time.finish = "25:00")],
  ["plan-answer", (a) => delete a.objective.changes],
];

export async function schemaResults(program, door) {
  const results = [];
  const add = (name, detail) => results.push({ name, passed: detail === "", detail });
  const fits = await validators();
  const json = async (words) => JSON.parse((await runProgram(program, words)).answer);
  const folder = mkdtempSync(join(tmpdir(), "lanework-schema-"));
  const ask = async (request) => {
    const path = join(folder, "asked.json");
    writeFileSync(path, typeof request === "string" ? request : JSON.stringify(request));
    await runProgram(door, [path]);
    return JSON.parse(readFileSync(`${path}.answer`, "utf8"));
  };
  try {
    let usual;
    const outcomes = new Set();
    for (const { name, flags } of [...eveningsOfAllSquads(), { name: "nothing fits", flags: ["--squad", kSquads[1], "--minutes", "5", "--pin", "easy-laps", "--pin", "strides", "--pin", "squat", "--pin", "side-plank", "--pin", "high-skip", "--pin", "plant-and-cut", "--pin", "single-leg-bridge"] }]) {
      const answer = await json(["plan", ...flags, "--json"]);
      usual ??= answer;
      outcomes.add(answer.outcome);
      add(`schema: plan of ${name}`, fits["plan-answer"](answer));
    }
    add("schema: both outcomes were met", outcomes.size === 2 ? "" : [...outcomes].join());
    for (const squad of kSquads) {
      const saved = join(folder, "request.json");
      await runProgram(program, ["plan", "--squad", squad, "--save-request", saved]);
      const request = JSON.parse(readFileSync(saved, "utf8"));
      add(`schema: request of ${squad}`, fits["plan-request"](request));
      add(`schema: slip of ${squad}`, fits["slip-answer"](await ask({ ...request, request: "slip" })));
      add(`schema: faults of ${squad}`, fits.faults(await ask({ ...request, strip: { lanes: 0 }, squad: {} })));
    }
    add("schema: faults of no JSON", fits.faults(await ask("{")));
    add("schema: clock", fits["clock-answer"](await json(["clock", "--routine", "long-practice", "--json"])));
    add("schema: pairs", fits["pairs-answer"](await json(["pairs", "--roster", "demo/quillmere/roster.csv", "--date", "2026-11-26", "--json"])));
    for (const words of kEvidenceAnswers) add(`schema: ${words.slice(0, 6).join(" ")}`, fits["evidence-answer"](await json(words)));
    for (const words of kWeatherAnswers) add(`schema: ${words.slice(0, 6).join(" ")}`, fits["weather-answer"](await json(words)));
    for (const words of kCareAnswers) add(`schema: ${words.slice(0, 6).join(" ")}`, fits["care-players-answer"](await json(words)));
    for (const words of kCareMeasuresAnswers) add(`schema: ${words.slice(0, 3).join(" ")}`, fits["care-measures-answer"](await json(words)));
    add("schema: club check", fits["club-check-answer"](await json(["club", "check", "--club", "demo/quillmere", "--json"])));
    add("schema: club check of no club", fits["club-check-answer"](await json(["club", "check", "--club", folder, "--json"])));
    add("schema: block", fits["block-answer"](await json(["block", "--club", "demo/quillmere", "--squad", "u13-kestrels", "--squad", "u12-dunnocks", "--json"])));
    const plan = join(folder, "plan.json");
    writeFileSync(plan, JSON.stringify(await json(["plan", "--squad", kSquads[1], "--json"])));
    add("schema: plan check", fits["plan-check-answer"](await json(["plan", "check", "--squad", kSquads[1], "--plan", plan, "--json"])));
    const block = join(folder, "block.json");
    const answer = await json(["block", "--club", "demo/quillmere", "--squad", "u13-kestrels", "--json"]);
    const begun = { standing: join(folder, "standing.json"), told: join(folder, "sessions.csv") };
    writeFileSync(begun.standing, JSON.stringify(answer));
    writeFileSync(begun.told, "squad,date,happened,minutes\nu13-kestrels,2026-11-24,cut short,9\nu13-kestrels,2026-11-26,held,\n");
    answer.squads[0].value += 1;
    writeFileSync(block, JSON.stringify(answer));
    const checked = await json(["block", "check", "--club", "demo/quillmere", "--answer", block, "--json"]);
    add("schema: block check", fits["block-check-answer"](checked));
    const words = ["--standing", begun.standing, "--sessions", begun.told, "--today", "2026-12-02"];
    add("schema: a block that has begun", fits["block-answer"](await json(["block", "--club", "demo/quillmere", "--squad", "u13-kestrels", "--json", ...words])));
    add("schema: block check finds the point that was added", checked.violations.some(({ rule }) => rule === "value") ? "" : JSON.stringify(checked));
    for (const [index, [name, breakIt]] of kBroken.entries()) {
      const broken = structuredClone(usual);
      breakIt(broken);
      add(`schema: ${name} refuses mistake ${index + 1}`, fits[name](broken) === "" ? `${breakIt}` : "");
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return results;
}
