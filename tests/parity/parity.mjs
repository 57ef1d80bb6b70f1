// The same requests through the native door and the WebAssembly door, in Node and in Chromium: the same bytes, request by request.
// Requests are those of the demo squads on many evenings, as the program saves them, many like them by a seed, and those in requests/.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { loadDoor } from "../../wasm/load.mjs";
import { runProgram } from "../../tools/suite/programs.mjs";
import { eveningsOfAllSquads, kSquads } from "../../tools/suite/evenings.mjs";
import { compareInChromium } from "./in_chromium.mjs";
import { variations } from "./variations.mjs";

const kSeed = 20261127;
const kVaried = 240;
const kShare = 20; // the plain run has a twentieth of them

async function saveRequests(program, folder) {
  const faults = [];
  for (const { name, flags } of eveningsOfAllSquads()) {
    const said = await runProgram(program, ["plan", ...flags, "--save-request", `${folder}/${name}.json`, "--json"]);
    // 2 is a fault of input; an evening that cannot hold still has a request.
    if (said.status > 1) faults.push({ name: `parity: ${name}`, passed: false, detail: said.output });
  }
  return faults;
}

function askForTheSlip(folder) {
  for (const squad of kSquads) {
    const name = squad.replace(/.*\/|\.toml/g, "");
    const request = JSON.parse(readFileSync(`${folder}/${name}-usual.json`, "utf8"));
    writeFileSync(`${folder}/${name}-slip.json`, JSON.stringify({ ...request, request: "slip" }));
  }
}

// Floating point is where a compiler might differ: the moving figure of every drill, on its last rung, with its partner and its things.
function askForFigures(folder) {
  const { catalogue } = JSON.parse(readFileSync(`${folder}/${kSquads[0].replace(/.*\/|\.toml/g, "")}-usual.json`, "utf8"));
  for (const drill of catalogue.drills) {
    writeFileSync(`${folder}/figure-${drill.id}.json`, JSON.stringify({ request: "figure", drill, rung: drill.rung.at(-1).key, frames: 24, props: true }));
  }
}

function vary(folder, count) {
  const saved = eveningsOfAllSquads().map(({ name }) => [name, JSON.parse(readFileSync(`${folder}/${name}.json`, "utf8"))]);
  for (const { name, request } of variations(Object.fromEntries(saved), count, kSeed)) writeFileSync(`${folder}/${name}.json`, JSON.stringify(request));
}

// What was answered, by what was asked: 'plan, changed by a seed'.
class Table {
  constructor() {
    this.rows = new Map();
  }

  add(file, answer, inNode, inChromium) {
    const asked = /^figure-|-figure\.json$/.test(file) ? "a figure" : /-check\.json$/.test(file) ? "a drill's check" : /"slip"/.test(answer.slice(0, 20)) ? "a slip" : "a plan";
    const from = file.startsWith("varied-") ? "changed by the seed" : "as it is";
    const said = /^\{"answer":"plan"/.test(answer) && /"outcome":"(?!optimal)/.test(answer) ? "no plan, a way out" : /^\{"answer":"([\w-]+)"/.exec(answer)?.[1] ?? "?";
    const key = `${asked}, ${from}`.padEnd(30) + said.padEnd(20);
    const row = this.rows.get(key) ?? { count: 0, inNode: 0, inChromium: 0 };
    this.rows.set(key, { count: row.count + 1, inNode: row.inNode + inNode, inChromium: row.inChromium + inChromium });
  }

  print(version) {
    const line = (key, ...numbers) => console.log(`    ${key}${numbers.map((number) => String(number).padStart(9)).join("")}`);
    line("asked".padEnd(30) + "answered".padEnd(20), "requests", "Node", "Chromium");
    const sum = { count: 0, inNode: 0, inChromium: 0 };
    for (const [key, row] of [...this.rows].sort()) {
      line(key, row.count, row.inNode, row.inChromium);
      for (const name of Object.keys(sum)) sum[name] += row[name];
    }
    line("the same bytes as natively".padEnd(50), sum.count, sum.inNode, sum.inChromium);
    console.log(`    Node ${process.version}, Chromium ${version}`);
  }
}

function compare(name, native, wasm) {
  const expected = native.toString("utf8");
  if (expected === wasm) return { name: `parity: ${name}`, passed: true, detail: "" };
  let at = 0;
  while (at < expected.length && expected[at] === wasm[at]) at++;
  const around = (text) => text.slice(Math.max(0, at - 60), at + 60);
  return { name: `parity: ${name}`, passed: false, detail: `byte ${at}\nnative ${around(expected)}\nwasm   ${around(wasm)}` };
}

export const parity = {
  name: "parity",
  async run({ build, wasm, mode }) {
    const folder = `${build}/parity`;
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    cpSync("tests/parity/requests", folder, { recursive: true });
    const results = await saveRequests(`${build}/lanework`, folder);
    if (results.length > 0) return results;
    askForTheSlip(folder);
    askForFigures(folder);
    vary(folder, mode === "long" ? kVaried : kVaried / kShare);
    const files = readdirSync(folder).filter((file) => file.endsWith(".json")).sort();
    const native = await runProgram(`${build}/tests/parity/native_door`, files.map((file) => `${folder}/${file}`));
    if (native.status !== 0) return [{ name: "parity: native door", passed: false, detail: native.output }];
    const door = await loadDoor(readFileSync(wasm));
    const { differ, version } = await compareInChromium(folder, files, wasm);
    const table = new Table();
    let plans = 0;
    let figures = 0;
    for (const file of files) {
      const answer = readFileSync(`${folder}/${file}.answer`);
      if (/^\{"answer":"plan"/.test(answer.toString("utf8"))) plans++;
      if (/^\{"answer":"figure"/.test(answer.toString("utf8"))) figures++;
      const inNode = compare(file, answer, door(readFileSync(`${folder}/${file}`, "utf8")));
      results.push(inNode, { name: `parity in Chromium: ${file}`, passed: !differ.has(file), detail: differ.get(file) ?? "" });
      table.add(file, answer.toString("utf8"), inNode.passed ? 1 : 0, differ.has(file) ? 0 : 1);
    }
    table.print(version);
    // Requests that all fail alike would prove little.
    results.push({ name: "parity: most requests are answered with a plan", passed: plans * 2 > files.length - figures,
      detail: `${plans} of ${files.length - figures}` });
    results.push({ name: "parity: the figures are shown", passed: figures > 40, detail: `${figures}` });
    return results;
  },
};
