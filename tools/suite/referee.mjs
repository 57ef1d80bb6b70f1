// The program's plans against two independent solvers, from outside: the files it exports go to CBC (MPS) and to
// HiGHS (LP), and each level's optimum must be the one that the program's own JSON states.
import { mkdtempSync, rmSync } from "node:fs";
import { readFileSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { eveningsOfAllSquads } from "./evenings.mjs";
import { runProgram } from "./programs.mjs";

const kLevels = ["uncovered", "shortfall", "changes", "preference"];

async function byCbc(file) {
  const said = await runProgram("cbc", [file, "-ratioGap", "0", "-allowableGap", "0.999", "-seconds", "300", "-solve", "-quit"]);
  const value = /Result - Optimal solution found[\s\S]*?Objective value:\s+(-?[\d.e+]+)/.exec(said.output);
  // A heuristic of CBC may call a part of its search infeasible on the way to an optimum.
  if (!value && /infeasible/i.test(said.output)) return "infeasible";
  return value ? Math.round(Number(value[1])) : `no answer: ${said.output.slice(-300)}`;
}

async function highsSolver() {
  const { default: load } = await import("highs");
  const highs = await load();
  return async (file) => {
    const answer = highs.solve(readFileSync(file, "utf8"), { mip_rel_gap: 0, mip_abs_gap: 0.999, time_limit: 300 });
    if (answer.Status === "Infeasible") return "infeasible";
    return answer.Status === "Optimal" ? Math.round(answer.ObjectiveValue ?? 0) : `no answer: ${answer.Status}`;
  };
}

async function compareLevels(solver, ending, folder, answer) {
  const files = readdirSync(folder).filter((file) => file.endsWith(ending)).sort();
  if (files.length === 0) return `no ${ending} file was exported`;
  if (answer.outcome === "infeasible") {
    const found = await solver(join(folder, files[0]));
    return found === "infeasible" ? "" : `ours infeasible, theirs ${found}`;
  }
  if (files.length !== kLevels.length) return `${files.length} files for ${kLevels.length} levels`;
  const differing = [];
  for (const [index, level] of kLevels.entries()) {
    const found = await solver(join(folder, files[index]));
    if (found !== answer.objective[level]) differing.push(`${level}: ours ${answer.objective[level]}, theirs ${found}`);
  }
  return differing.join("; ");
}

export const referee = {
  name: "referee",
  async run({ build }) {
    const solvers = [["CBC", ".mps", byCbc], ["HiGHS", ".lp", await highsSolver()]];
    const results = [];
    for (const { name, flags } of eveningsOfAllSquads()) {
      const folder = mkdtempSync(join(tmpdir(), "lanework-referee-"));
      const said = await runProgram(`${build}/lanework`, ["plan", ...flags, "--json",
        "--export-mps", join(folder, "evening.mps"), "--export-lp", join(folder, "evening.lp")]);
      for (const [who, ending, solver] of solvers) {
        const detail = said.status > 1 ? said.output : await compareLevels(solver, ending, folder, JSON.parse(said.answer));
        results.push({ name: `${who} on ${name}`, passed: detail === "", detail });
      }
      rmSync(folder, { recursive: true, force: true });
    }
    return results;
  },
};
