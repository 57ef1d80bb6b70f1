// The same requests through the native door and the WebAssembly door: the same bytes, request by request.
// Requests are those of the demo squads on many evenings, as the program saves them, and those in requests/.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { loadDoor } from "../../wasm/load.mjs";
import { runProgram } from "../../tools/suite/programs.mjs";
import { eveningsOfAllSquads, kSquads } from "../../tools/suite/evenings.mjs";

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

// Floating point is where a compiler might differ: the moving figure of every drill, on its last rung.
function askForFigures(folder) {
  const { catalogue } = JSON.parse(readFileSync(`${folder}/${kSquads[0].replace(/.*\/|\.toml/g, "")}-usual.json`, "utf8"));
  for (const drill of catalogue.drills) {
    writeFileSync(`${folder}/figure-${drill.id}.json`, JSON.stringify({ request: "figure", drill, rung: drill.rung.at(-1).key, frames: 24 }));
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
  async run({ build, wasm }) {
    const folder = `${build}/parity`;
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    cpSync("tests/parity/requests", folder, { recursive: true });
    const results = await saveRequests(`${build}/lanework`, folder);
    if (results.length > 0) return results;
    askForTheSlip(folder);
    askForFigures(folder);
    const files = readdirSync(folder).filter((file) => file.endsWith(".json")).sort();
    const native = await runProgram(`${build}/tests/parity/native_door`, files.map((file) => `${folder}/${file}`));
    if (native.status !== 0) return [{ name: "parity: native door", passed: false, detail: native.output }];
    const door = await loadDoor(readFileSync(wasm));
    let plans = 0;
    let figures = 0;
    for (const file of files) {
      const answer = readFileSync(`${folder}/${file}.answer`);
      if (/^\{"answer":"plan"/.test(answer.toString("utf8"))) plans++;
      if (/^\{"answer":"figure"/.test(answer.toString("utf8"))) figures++;
      results.push(compare(file, answer, door(readFileSync(`${folder}/${file}`, "utf8"))));
    }
    // Requests that all fail alike would prove little.
    results.push({ name: "parity: most requests are answered with a plan", passed: plans * 2 > files.length - figures,
      detail: `${plans} of ${files.length - figures}` });
    results.push({ name: "parity: the figures are shown", passed: figures > 40, detail: `${figures}` });
    return results;
  },
};
