// The calculators of 'lanework evidence': what they say of published examples, what cannot be estimated, and bad input.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";

const kSmallClub = "tests/evidence/r/squad_weeks_small.csv";
const near = (found, wanted, tolerance) => (Math.abs(found - wanted) <= tolerance ? "" : `${found}, not ${wanted}`);
const first = (...details) => details.find((detail) => detail !== "") ?? "";

// A folder for tables, and the program run on them.
function bench(program) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-evidence-"));
  const run = (words) => spawnSync(program, ["evidence", ...words], { encoding: "utf8", maxBuffer: 1 << 26 });
  return {
    table(text) {
      const path = join(folder, "table.csv");
      writeFileSync(path, text);
      return path;
    },
    run,
    json: (...words) => JSON.parse(run([...words, "--json"]).stdout),
    close: () => rmSync(folder, { recursive: true }),
  };
}

const withBench = (name, check) => ({
  name: `evidence: ${name}`,
  async run(program) {
    const b = bench(program);
    try {
      return check(b);
    } finally {
      b.close();
    }
  },
});

// Values printed in the sources named beside them; more in tests/published/.
const published = [
  withBench("Boice and Monson's two rates (Rothman KJ, Greenland S, Modern Epidemiology)", (b) => {
    const found = b.json("ratio", "--events", "41", "--hours", "28010", "--other-events", "15", "--other-hours", "19017");
    return first(near(found.ratio, 1.855759, 5e-7), near(found.exact.limits.low, 1.005684, 5e-7), near(found.exact.limits.high, 3.6093, 5e-5),
      near(found.mid_p.p, 0.0355, 5e-5), near(found.difference.per_1000_h, 0.675, 5e-4));
  }),
  withBench("the ten trials of Lemes 2021 (doi 10.1136/bjsports-2020-103683)", (b) => {
    const found = b.json("pool", "--data", "tests/cli/tables/trials.csv");
    return first(near(found.random_effects.estimate, 0.77, 0.005), near(found.random_effects.limits.low, 0.61, 0.005),
      near(found.random_effects.limits.high, 0.97, 0.005), near(found.mantel_haenszel.estimate, 0.82097, 5e-6));
  }),
  withBench("Shrout and Fleiss' judges (doi 10.1037/0033-2909.86.2.420)", (b) => {
    const found = b.json("agree", "--data", "tests/cli/tables/judges.csv", "--scores", "first,second,third,fourth").correlations;
    return first(...[["one_random_way", 0.17], ["one_agreement", 0.29], ["one_consistency", 0.71], ["mean_random_way", 0.44], ["mean_agreement", 0.62],
      ["mean_consistency", 0.91]].map(([kind, value]) => near(found[kind].estimate, value, 0.005)));
  }),
  withBench("an invented club's model as glmmTMB 1.1.5 has it", (b) => {
    const found = b.json("fit", "--data", kSmallClub, "--outcome", "y", "--hours", "hours", "--fixed", "adh,sexF,match_share,s1,s2,s3,s4", "--category", "age=U11",
      "--random", "squad", "--effects");
    const adh = found.coefficients.find((one) => one.name === "adh");
    return first(near(adh.estimate, -0.319384145, 1e-6), near(adh.error, 0.0944965, 1e-6), near(found.log_likelihood, -426.69086858, 1e-6),
      found.judged.sound ? "" : "not sound", found.squad_effects.length === 24 ? "" : "effects");
  }),
];

// [what, words, table or none, what is said]
const kNotEstimable = [
  ["no event in either", ["ratio", "--events", "0", "--hours", "10", "--other-events", "0", "--other-hours", "10"], "", /neither of the two has any event/],
  ["an arm of one squad", ["arms"], "arm,squad,events,hours\nx,a,1,10\ny,b,2,10\ny,c,1,10\n", /'x' is one squad/],
  ["an arm without events", ["arms"], "arm,squad,events,hours\nx,a,0,10\nx,d,0,10\ny,b,2,10\ny,c,1,10\n", /'x' has no event/],
  ["no events in any stratum of one side", ["pool"], "stratum,events,hours,other_events,other_hours\na,0,10,2,10\nb,0,10,1,10\n", /no event in any stratum/],
  ["one squad in a funnel", ["funnel"], "squad,events,hours\na,3,100\n", /one squad only/],
  ["no events to shrink", ["shrink"], "squad,events,hours\na,0,100\nb,0,50\n", /no squad has any event/],
  ["scores that are all alike", ["agree", "--scores", "a,b"], "a,b\n3,3\n3,3\n", /all scores are alike/],
  ["classes that are all one", ["agree", "--classes", "a,b"], "a,b\nmost,most\nmost,most\n", /everything is in one class/],
  ["no event to fit", ["fit", "--outcome", "n", "--hours", "h", "--fixed", "x"], "n,h,x\n0,10,1\n0,10,2\n0,5,3\n", /no event at all was counted/],
  ["one squad with an effect of its own", ["fit", "--outcome", "n", "--hours", "h", "--random", "s"], "n,h,s\n0,10,a\n1,10,a\n0,5,a\n", /one squad only/],
  ["columns that say the same", ["fit", "--outcome", "n", "--hours", "h", "--fixed", "x,y"], "n,h,x,y\n0,10,1,2\n1,10,2,4\n0,5,3,6\n2,9,4,8\n", /'y' says nothing that 'x' do/],
  ["an age without events", ["fit", "--outcome", "n", "--hours", "h", "--category", "age=U9"], "n,h,age\n0,10,U9\n1,10,U11\n0,5,U9\n2,9,U11\n0,4,U9\n", /every event lies on one side of 'age: U11'/],
];

const notEstimable = kNotEstimable.map(([name, words, text, said]) =>
  withBench(`cannot be estimated: ${name}`, (b) => {
    const all = text === "" ? words : [words[0], "--data", b.table(text), ...words.slice(1)];
    const plain = b.run(all);
    const json = b.json(...all);
    return first(plain.status === 1 ? "" : `status ${plain.status}\n${plain.stderr}`, said.test(plain.stdout) && plain.stdout.startsWith("Cannot be estimated: ") ? "" : plain.stdout,
      json.estimated === false && said.test(json.because) ? "" : JSON.stringify(json), /nan|inf\b/i.test(plain.stdout) ? plain.stdout : "");
  }));

const kTable = "n,h,x,s\n0,10,1,a\n1,12,2,b\n2,9,3,a\n0,7,4,b\n";
const kFit = ["fit", "--outcome", "n", "--hours", "h"];
const kMistakes = [
  ["no hours", ["rate", "--events", "5", "--hours", "0"], "", /--hours/],
  ["hours below 0", ["rate", "--events", "5", "--hours", "-3"], "", /--hours/],
  ["half an event", ["rate", "--events", "2.5", "--hours", "10"], "", /--events/],
  ["days of other than all events", ["rate", "--events", "2", "--hours", "10", "--days", "3"], "", /^--days: found 1 numbers, expected as many as events: 2/],
  ["a table that is not there", ["funnel", "--data", "nowhere.csv"], "", /nowhere\.csv/],
  ["an empty table", ["funnel"], "", /table\.csv: found an empty file/],
  ["headings only", ["funnel"], "squad,events,hours\n", /found headings only/],
  ["a heading twice", ["funnel"], "squad,squad,hours\na,b,1\n", /table\.csv:1: squad: found 'squad' twice/],
  ["a heading that is empty", ["funnel"], "squad,,hours\na,b,1\n", /found an empty heading/],
  ["more cells than headings", ["funnel"], "squad,events,hours\na,1,2,3\n", /table\.csv:2: found 4 cells, expected at most 3/],
  ["no such column", ["funnel", "--hours", "minutes"], "squad,events,hours\na,1,2\nb,2,3\n", /found 'minutes', expected a column of the table: 'squad', 'events', 'hours'/],
  ["words for hours", ["funnel"], "squad,events,hours\na,1,many\nb,2,3\n", /table\.csv:2: hours: found 'many', expected hours, 0 or more/],
  ["more events in a row than a model takes", ["fit", "--outcome", "events", "--hours", "hours", "--random", "squad"], "squad,events,hours\na,2000000,2\nb,2,3\n",
    /table\.csv:2: events: found .2000000., expected a whole number, 0 to 1000000/],
  ["events and no hours", ["funnel"], "squad,events,hours\na,4,0\nb,2,3\n", /found 4 events of 'a' in 0 hours/],
  ["no hours at all", ["shrink"], "squad,events,hours\na,0,0\nb,0,0\n", /found no hours at all/],
  ["three arms", ["arms"], "arm,squad,events,hours\nx,a,1,10\ny,b,2,10\nz,c,1,10\n", /found 3 different names, expected two arms/],
  ["an arm that is not there", ["arms", "--against", "z"], "arm,squad,events,hours\nx,a,1,10\ny,b,2,10\n", /--against: found 'z', expected 'x' or 'y'/],
  ["no change to watch for", ["watch", "--usual", "3", "--times", "1"], "week,events,hours\n1,1,10\n", /--times: found 1/],
  ["the same rate twice", ["power", "--rate", "3", "--other-rate", "3", "--hours-a-squad", "100"], "", /an effect of no size is never seen/],
  ["neither scores nor classes", ["agree"], "a,b\n1,2\n", /--scores or --classes/],
  ["weights without an order", ["agree", "--classes", "a,b", "--weights", "linear"], "a,b\nfew,most\nmost,few\n", /--order: found nothing/],
  ["a class that the order has not", ["agree", "--classes", "a,b", "--order", "few,most"], "a,b\nfew,most\nhalf,few\n", /table\.csv:3: a: found 'half', expected a class of --order/],
  ["a score that is none", ["agree", "--scores", "a,b"], "a,b\n1,2\n3,good\n", /table\.csv:3: b: found 'good', expected a score/],
  ["names as numbers", [...kFit, "--fixed", "x"], "n,h,x\n0,10,1\n1,12,two\n2,9,3\n0,7,4\n", /a column of names is given as --category/],
  ["a reference that is not there", [...kFit, "--category", "s=c"], kTable, /'c' as the reference/],
  ["a curve of one degree", [...kFit, "--curve", "x=1"], kTable, /--curve: found '1', expected degrees of freedom from 2 to 10/],
  ["a curve of too few values", [...kFit, "--curve", "x=4"], "n,h,x\n0,10,1\n1,12,1\n2,9,2\n0,7,1\n", /too few different values for 4 degrees/],
  ["a column for two purposes", [...kFit, "--fixed", "h"], kTable, /'h' for two purposes/],
  ["clubs without squads", [...kFit, "--club", "s"], kTable, /clubs without squads/],
  ["points with clubs", [...kFit, "--random", "x", "--club", "s", "--quadrature", "9"], kTable, /--quadrature: found with --club/],
  ["clubs with nb2", [...kFit, "--random", "x", "--club", "s", "--family", "nb2"], kTable, /--club: found with --family nb2/],
  ["an unknown family", [...kFit, "--family", "normal"], kTable, /--family/],
  ["two seasons without the first's end", ["seasons", "--before", "x", "--before-from", "2025-01-01", "--after", "y", "--after-from", "2026-01-01", "--after-to", "2026-05-31"], "", /--before-to/],
  ["a day of the season after that is none", ["seasons", "--before", "demo/quillmere/season", "--before-from", "2025-08-25", "--before-to", "2026-05-31",
    "--after", "demo/quillmere/season", "--after-from", "2026-06-31", "--after-to", "2027-05-31"], "", /^--after-from: found '2026-06-31', expected a day such as/],
  ["events in no hours", kFit, "n,h\n2,0\n1,5\n", /table\.csv:2: h: found 2 events in 0 hours/],
];

const mistakes = kMistakes.map(([name, words, text, said]) =>
  withBench(`bad input: ${name}`, (b) => {
    const needsTable = !["rate", "ratio", "power", "seasons"].includes(words[0]) && !words.includes("--data");
    const result = b.run(needsTable ? [words[0], "--data", b.table(text), ...words.slice(1)] : words);
    const lines = result.stderr.split("\n").filter((line) => line !== "").map((line) => line.replace(/^\/\S*\/(?=table\.csv)/, ""));
    return first(result.status === 2 ? "" : `status ${result.status}\n${result.stdout}`, lines.length === 1 ? "" : lines.join("\n"), said.test(lines[0]) ? "" : lines[0],
      result.stdout === "" ? "" : result.stdout);
  }));

// The demo's season in two halves, as if they were two seasons.
const kHalves = ["seasons", "--before", "demo/quillmere/season", "--before-from", "2025-08-25", "--before-to", "2025-12-31", "--before-as-of", "2026-05-31",
  "--after", "demo/quillmere/season", "--after-from", "2026-01-01", "--after-to", "2026-05-31"];
export const kSeasonHalves = ["evidence", ...kHalves];

export const evidence = [...published, ...notEstimable, ...mistakes];

// Answers of every kind, to be held against the schema.
export const kEvidenceAnswers = [
  ["rate", "--events", "5", "--hours", "1250", "--days", "3,0,12,40,6"],
  ["rate", "--events", "1", "--hours", "10", "--days", "5"],
  ["ratio", "--events", "9", "--hours", "4200", "--other-events", "17", "--other-hours", "5100", "--hours-a-season", "1500"],
  ["ratio", "--events", "3", "--hours", "10", "--other-events", "0", "--other-hours", "10"],
  ["ratio", "--events", "0", "--hours", "10", "--other-events", "0", "--other-hours", "10"],
  ["arms", "--data", "tests/cli/tables/arms.csv"],
  ["pool", "--data", "tests/cli/tables/trials.csv"],
  ["standardise", "--data", "tests/cli/tables/parts.csv"],
  ["fit", "--data", kSmallClub, "--outcome", "y", "--hours", "hours", "--fixed", "adh", "--random", "squad", "--club", "sexF", "--effects"],
  ["fit", "--data", kSmallClub, "--outcome", "ynb", "--hours", "hours", "--category", "age", "--random", "squad", "--family", "nb2", "--effects"],
  ["fit", "--data", kSmallClub, "--outcome", "y", "--hours", "hours", "--curve", "week"],
  ["watch", "--data", kSmallClub, "--events", "y", "--usual", "4"],
  ["funnel", "--data", kSmallClub, "--events", "y"],
  ["shrink", "--data", kSmallClub, "--events", "y"],
  ["power", "--rate", "4", "--other-rate", "2.6", "--hours-a-squad", "1500", "--hours-a-season", "30000", "--simulate", "200"],
  ["import", "--dry-run", "--records", "demo/quillmere/season", "--from", "2025-08-25", "--to", "2026-05-31"],
  ["emphasis", "--records", "demo/quillmere/season", "--from", "2025-08-25", "--to", "2026-05-31"],
  ["emphasis", "--records", "demo/quillmere/season", "--from", "2025-08-25", "--to", "2025-09-28", "--as-of", "2026-05-31"],
  ["emphasis", "--records", "demo/quillmere/season", "--from", "2026-07-01", "--to", "2026-07-02"],
  kHalves,
  ["agree", "--data", "tests/cli/tables/judges.csv", "--scores", "first,second,third,fourth"],
  ["agree", "--data", "tests/cli/tables/observers.csv", "--classes", "lead,helper"],
].map((words) => ["evidence", ...words, "--json"]);
