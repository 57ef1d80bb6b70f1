// Solves LP files with HiGHS. For each FILE.lp it writes FILE.lp.answer: first 'status objective bound seconds', the
// objective '-' where no solution was found, then a line 'column value' for each column that is not 0; and FILE.lp.bounds:
// a line 'seconds bound' each time the bound rose.
// usage: node highs.mjs LIST SECONDS     LIST names one LP file a line; SECONDS are of processor time, as CBC counts them
import { readFileSync, writeFileSync } from "node:fs";
import loadHighs from "highs";

const highs = await loadHighs();
const kStatus = highs.constants.modelStatus;
const kChannels = highs.constants.callbackType;
const kSeconds = Number(process.argv[3]);
const kWords = new Map([[kStatus.optimal, "optimal"], [kStatus.infeasible, "infeasible"], [kStatus.unboundedOrInfeasible, "infeasible"]]);

for (const file of readFileSync(process.argv[2], "utf8").split("\n").filter(Boolean)) {
  const model = highs.createModel({ format: "lp", data: readFileSync(file, "utf8") });
  model.options.set({ output_flag: true, log_to_console: false, mip_rel_gap: 0, mip_abs_gap: 0.999, mip_min_logging_interval: 0.5 });
  const before = process.cpuUsage();
  const seconds = () => {
    const used = process.cpuUsage(before);
    return (used.user + used.system) / 1e6;
  };
  const stop = (event) => {
    if (seconds() >= kSeconds) event.interrupt();
  };
  const bounds = [];
  let highest = -Infinity;
  const note = (bound) => {
    if (!(bound > highest) || Math.abs(bound) >= 1e20) return;
    highest = bound;
    bounds.push(`${seconds()} ${bound}`);
  };
  const progress = (event) => note(event.data.mip_dual_bound);
  model.run({ [kChannels.mipInterrupt]: stop, [kChannels.simplexInterrupt]: stop, [kChannels.mipLogging]: progress });
  const used = seconds();
  const status = kWords.get(model.getModelStatus()) ?? "stopped";
  const found = model.info.get("primal_solution_status") === highs.constants.solutionStatus.feasible;
  const lines = [`${status} ${found ? model.getObjectiveValue() : "-"} ${model.info.get("mip_dual_bound")} ${used}`];
  const values = found ? model.getSolution().colValue : [];
  values.forEach((value, column) => {
    if (value !== 0) lines.push(`${model.getColName(column)} ${value}`);
  });
  note(model.info.get("mip_dual_bound"));
  writeFileSync(`${file}.bounds`, bounds.map((line) => `${line}\n`).join(""));
  writeFileSync(`${file}.answer`, `${lines.join("\n")}\n`);
  model.dispose();
}
