// The calculators of evidence against R: both are given the same rows, and the largest difference of each fit is printed.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { runProgram } from "./programs.mjs";

// [case in fits.R, its rows, what 'fit' is asked].
const club = ["--outcome", "injuries", "--hours", "hours", "--fixed", "warm_ups", "--category", "age=U11", "--random", "squad"];
const ticks = ["--outcome", "TICKS", "--hours", "one", "--category", "YEAR=95", "--fixed", "height", "--random", "BROOD"];
const herds = ["--outcome", "incidence", "--hours", "size", "--category", "period=1", "--random", "herd"];
const seizures = ["--outcome", "y", "--hours", "one", "--fixed", "lbase,lage,V4,both", "--category", "trt=placebo", "--random", "subject"];
const absence = ["--outcome", "Days", "--hours", "one", "--category", "Eth=A,Sex=F,Age=F0,Lrn=AL"];
const nb2 = ["--family", "nb2"];
const points = ["--quadrature", "25"];
const kFits = [
  ...[1, 2, 3].flatMap((n) => [[`club_${n}_poisson`, `club_${n}`, club], [`club_${n}_points`, `club_${n}`, [...club, ...points]]]),
  ...[4, 5].map((n) => [`union_${n}_nested`, `union_${n}`, [...club, "--club", "club"]]),
  ...[6, 7].map((n) => [`uneven_${n}_nb2`, `uneven_${n}`, [...club, ...nb2]]),
  ["ticks_poisson", "ticks", ticks], ["ticks_nested", "ticks", [...ticks, "--club", "LOCATION"]], ["ticks_nb2", "ticks", [...ticks, ...nb2]],
  ["ticks_points", "ticks", [...ticks, ...points]],
  ["herds_poisson", "herds", herds], ["herds_points", "herds", [...herds, ...points]],
  ["seizures_poisson", "seizures", seizures], ["seizures_nb2", "seizures", [...seizures, ...nb2]], ["seizures_points", "seizures", [...seizures, ...points]],
  ["absence_nb2", "absence", [...absence, ...nb2]], ["absence_flat", "absence", absence],
];

// How close ours must be: coefficients, deviations and errors as they are, the log likelihood relatively.
const kTolerance = { coefficient: 1e-5, error: 1e-5, likelihood: 1e-8 };
// glmer's own optimiser stops where these are known to about this much.
const kOfPoints = { coefficient: 2e-5, error: 5e-5, likelihood: 1e-8 };

// A deviation that ours has as 0 must be this small in R.
const kAtEdge = 5e-3;

function rowsOf(text) {
  const [heading, ...lines] = text.trim().split("\n").map((line) => line.split(",").map((cell) => cell.replace(/^"|"$/g, "")));
  return lines.map((cells) => Object.fromEntries(heading.map((name, index) => [name, cells[index]])));
}

function ours(answer, term) {
  if (term === "log_likelihood") return { estimate: answer.log_likelihood };
  const logOf = (spread) => ({ estimate: Math.log(spread.estimate), error: spread.limits ? Math.log(spread.limits.high / spread.estimate) / 1.959963984540054 : NaN });
  if (term === "log squad deviation") return logOf(answer.squad_deviation);
  if (term === "log club deviation") return logOf(answer.club_deviation);
  if (term === "log size") return logOf(answer.size);
  return answer.coefficients.find((one) => one.name === term);
}

// The largest difference of each kind, and which of them are too large.
function compare(answer, rows, tolerance) {
  const largest = { coefficient: 0, error: 0, likelihood: 0 };
  const wrong = [];
  const note = (kind, term, difference) => {
    largest[kind] = Math.max(largest[kind], difference);
    if (!(difference <= tolerance[kind])) wrong.push(`${term}: ${kind} ${difference.toExponential(1)} apart`);
  };
  for (const { term, estimate, error } of rows) {
    const found = ours(answer, term);
    if (!found) {
      wrong.push(`${term} is not in the answer`);
    } else if (term === "log_likelihood") {
      note("likelihood", term, Math.abs(found.estimate / Number(estimate) - 1));
    } else if (term.endsWith("deviation")) {
      // At the edge R stops at some small deviation, and its error says nothing.
      const apart = Math.abs(Math.exp(found.estimate) - Math.exp(Number(estimate)));
      const atEdge = !Number.isFinite(found.estimate);
      note("coefficient", term, atEdge && apart < kAtEdge ? 0 : apart);
      if (error !== "" && !atEdge) note("error", term, Math.abs(found.error - Number(error)));
    } else {
      note("coefficient", term, Math.abs(found.estimate - Number(estimate)));
      if (error !== "") note("error", term, Math.abs(found.error - Number(error)));
    }
  }
  return { largest, wrong };
}

async function fitsAgainstR(program, folder) {
  const made = await runProgram("Rscript", ["--vanilla", "tests/reference/fits.R", folder]);
  if (made.status !== 0) return [{ name: "R makes the fits", passed: false, detail: made.output.slice(-2000) }];
  console.log(`    ${made.output.trim().split("\n").pop()}; largest differences of coefficients, errors, log likelihood (relative):`);
  const all = rowsOf(readFileSync(join(folder, "fits.csv"), "utf8"));
  const results = [];
  for (const [name, rows, words] of kFits) {
    const said = await runProgram(program, ["evidence", "fit", "--data", join(folder, `${rows}.csv`), ...words, "--json"]);
    if (said.status !== 0) {
      results.push({ name: `R: ${name}`, passed: false, detail: said.output });
      continue;
    }
    const { largest, wrong } = compare(JSON.parse(said.answer), all.filter((row) => row.case === name), name.endsWith("_points") ? kOfPoints : kTolerance);
    console.log(`      ${name.padEnd(20)} ${Object.values(largest).map((value) => value.toExponential(1)).join("  ")}`);
    results.push({ name: `R: ${name}`, passed: wrong.length === 0, detail: wrong.join("\n") });
  }
  return results;
}

async function ratesAgainstR(program) {
  const made = await runProgram("Rscript", ["--vanilla", "tests/reference/rates.R"]);
  if (made.status !== 0) return [{ name: "R makes the rates", passed: false, detail: made.output.slice(-2000) }];
  const results = [];
  const answers = new Map();
  for (const { words, place, value, relative } of rowsOf(made.answer)) {
    if (!answers.has(words)) answers.set(words, JSON.parse((await runProgram(program, ["evidence", ...words.replaceAll("first_second_third_fourth", "first,second,third,fourth").split(" "), "--json"])).answer));
    const found = place.split(".").reduce((node, key) => node?.[key], answers.get(words));
    const difference = Number(value) === 0 ? Math.abs(found) : Math.abs(found / Number(value) - 1);
    results.push({ name: `R: ${words}: ${place}`, passed: difference <= Number(relative), detail: `ours ${found}, R's ${value}` });
  }
  return results;
}

export const evidenceInR = {
  name: "evidence-in-r",
  async run({ build }) {
    const folder = mkdtempSync(join(tmpdir(), "lanework-r-"));
    const program = `${process.cwd()}/${build}/lanework`;
    try {
      return [...(await fitsAgainstR(program, folder)), ...(await ratesAgainstR(program))];
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
};
