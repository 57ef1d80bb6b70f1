// The evening on the phone as one check of the suite: its logic, its questions to the
// door, its engine and its screens; and beside them the rules of the desk's Week and Squad, which need no server.
// Each file is a test of Node's own runner, and runs alone: node tests/pitchside/screens.mjs --pictures FOLDER.
import { execFile } from "node:child_process";
import { join } from "node:path";
import { root } from "./places.mjs";

const kFiles = ["evening", "request", "renderings", "reasons", "engine", "screens", "partner_screen", "../desk/week", "../desk/squad", "../desk/injuries", "../desk/set_up_pure", "../desk/hatching"];

// Results of the runner's lines, 'not ok 3 - what it says'; what stands between two of them tells about the first.
function resultsOf(file, said) {
  const results = [];
  for (const line of said.split("\n")) {
    const [, not, name] = /^(not )?ok \d+ - (.*)$/.exec(line) ?? [];
    if (name !== undefined) results.push({ name: `pitch: ${file}: ${name}`, passed: !not, detail: "" });
    else if (results.length > 0) results.at(-1).detail += `${line}\n`;
  }
  return results;
}

function runFile(file, places) {
  return new Promise((told) => {
    const script = join(root, "tests/pitchside", `${file}.mjs`);
    execFile(process.execPath, ["--test-reporter=tap", script, ...places], { maxBuffer: 1 << 26 }, (failure, out, err) => {
      const results = resultsOf(file, out);
      const lost = failure && results.every((each) => each.passed);
      told(lost || results.length === 0 ? [{ name: `pitch: ${file}`, passed: false, detail: `${out}${err}` }] : results);
    });
  });
}

export const pitch = {
  name: "pitch",
  async run({ build, wasm, mode }) {
    const places = ["--program", join(root, build, "lanework"), "--module", join(root, wasm), ...(mode === "long" ? ["--long"] : [])];
    const results = [];
    for (const file of kFiles) results.push(...(await runFile(file, places)));
    return results;
  },
};
