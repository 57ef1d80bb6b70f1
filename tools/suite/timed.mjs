// How long each test takes, for whoever looks for time that is wasted: LANEWORK_TIMES=1 prints for each the seconds by the wall
// and those of processors, its own and of the programs that it ran and that have ended. Beside others the latter are of all.
import { readFileSync } from "node:fs";

const kTicksPerSecond = 100;

// utime, stime, cutime, cstime; the name before them may have spaces in it.
function processorSeconds() {
  const stat = readFileSync("/proc/self/stat", "utf8");
  const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ").slice(11, 15).map(Number);
  return fields.reduce((sum, ticks) => sum + ticks, 0) / kTicksPerSecond;
}

export async function timed(name, work) {
  if (!process.env.LANEWORK_TIMES) return work();
  const [from, before] = [Date.now(), processorSeconds()];
  const result = await work();
  console.log(`    ${((Date.now() - from) / 1000).toFixed(1)} s, ${(processorSeconds() - before).toFixed(1)} s of processors: ${name}`);
  return result;
}
