// The built program as a user meets it: the shipped catalogue is sound, the demo squad's card is made, and the
// same evening gives the same bytes twice.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { kSquads } from "./evenings.mjs";
import { runProgram } from "./programs.mjs";

async function catalogueIsSound(program) {
  const said = await runProgram(program, ["catalogue", "check"]);
  return { name: "the shipped catalogue is sound", passed: said.status === 0, detail: said.output };
}

async function cardsRepeat(program, squad) {
  const folders = [1, 2].map(() => mkdtempSync(join(tmpdir(), "lanework-card-")));
  try {
    for (const folder of folders) {
      const said = await runProgram(program, ["card", "--squad", squad, "--out", folder]);
      if (said.status !== 0) return said.output;
    }
    const [first, second] = folders.map((folder) => readdirSync(folder, { recursive: true }).sort());
    if (first.length === 0) return "no file was written";
    if (first.join() !== second.join()) return `one time ${first}, the other ${second}`;
    const differing = first.filter((file) => file.includes(".") &&
      !readFileSync(join(folders[0], file)).equals(readFileSync(join(folders[1], file))));
    return differing.length === 0 ? "" : `not the same bytes twice: ${differing}`;
  } finally {
    folders.forEach((folder) => rmSync(folder, { recursive: true, force: true }));
  }
}

export const theProgram = {
  name: "program",
  async run({ build }) {
    const program = `${build}/lanework`;
    const results = [await catalogueIsSound(program)];
    for (const squad of kSquads) {
      const detail = await cardsRepeat(program, squad);
      results.push({ name: `the card of ${squad}, twice the same bytes`, passed: detail === "", detail });
    }
    return results;
  },
};
