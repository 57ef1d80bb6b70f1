// A season's records as a lead meets them: imported, questioned, reported. Three invented clubs whose truth is known say the
// right thing of warm-ups: none, a strong effect, too few to tell.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { season } from "../../tools/generate/season.mjs";

const kDemo = "demo/quillmere/season";
const kPeriod = ["--from", "2025-08-25", "--to", "2026-05-31"];
const first = (...details) => details.find((detail) => detail !== "") ?? "";

class Records {
  constructor(program) {
    this.program = program;
    this.folder = mkdtempSync(join(tmpdir(), "lanework-season-"));
    this.out = join(this.folder, "out");
  }
  // Writes the four files of a season, some of them changed.
  write(files, change = {}) {
    for (const [name, text] of Object.entries(files)) writeFileSync(join(this.folder, name), change[name] ? change[name](text) : text);
  }
  run(command, ...words) {
    const said = spawnSync(this.program, ["evidence", command, "--records", this.folder, ...(words.includes("--from") ? [] : kPeriod), ...words], { encoding: "utf8", maxBuffer: 1 << 26 });
    return { status: said.status, out: said.stdout, err: said.stderr.replaceAll(`${this.folder}/`, "") };
  }
}

const withRecords = (name, check) => ({
  name: `season: ${name}`,
  async run(program) {
    const records = new Records(program);
    try {
      return check(records);
    } finally {
      rmSync(records.folder, { recursive: true });
    }
  },
});

const demo = () => Object.fromEntries(readdirSync(kDemo).map((name) => [name, readFileSync(join(kDemo, name), "utf8")]));

// What a report says of warm-ups.
function saidOf(records, asked, weeks) {
  records.write(season({ ...asked, weeks }));
  const to = new Date(Date.UTC(2025, 7, 25 + 7 * weeks - 1)).toISOString().slice(0, 10);
  return records.run("report", "--from", "2025-08-25", "--to", to, "--out", records.out);
}

const stories = [
  withRecords("a club whose warm-ups do nothing is told no effect", (r) => {
    const said = saidOf(r, { effect: 1, rate: 5, seed: 41, squads: 24 }, 40);
    return first(said.status === 0 ? "" : said.err, /had fewer injuries/.test(said.out) || /had more injuries/.test(said.out) ? said.out : "",
      /Too early to tell|No difference that matters/.test(said.out) ? "" : said.out, /spared/.test(said.out) ? said.out : "");
  }),
  withRecords("a strong effect is seen, and never called cause", (r) => {
    const said = saidOf(r, { effect: 0.55, rate: 9, seed: 42, squads: 24 }, 40);
    return first(said.status === 0 ? "" : said.err, /had fewer injuries in weeks after more warm-ups/.test(said.out) ? "" : said.out,
      /does not show that the one makes the other/.test(said.out) ? "" : said.out, /would have spared about \d+ injuries \(\d+ to \d+\)/.test(said.out) ? "" : said.out,
      /a week lately had fewer injuries: 0\.\d+ times/.test(said.out) ? "" : said.out);
  }),
  withRecords("a small club is told how much more it takes", (r) => {
    const said = saidOf(r, { effect: 0.8, rate: 6, seed: 43, squads: 5 }, 16);
    return first(said.status === 0 ? "" : said.err, /Too early to tell|cannot be estimated/.test(said.out) ? "" : said.out, /about [\d\s]+ more hours are needed/.test(said.out) ? "" : said.out);
  }),
];

// The same club a year later: the dates of the one year become those of the next.
const aYearLater = (files) => Object.fromEntries(Object.entries(files).map(([name, text]) => [name, text.replaceAll("2026-", "2027-").replaceAll("2025-", "2026-")]));

// Two seasons of records, in two folders, and what is said of them.
function seasonsOf(records, before, after, beforeTo = "2026-05-31") {
  const folders = { before: join(records.folder, "before"), after: join(records.folder, "after") };
  for (const [which, files] of Object.entries({ before: season(before), after: aYearLater(season(after)) })) {
    mkdirSync(folders[which]);
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folders[which], name), text);
  }
  const said = spawnSync(records.program, ["evidence", "seasons", "--before", folders.before, "--before-from", "2025-08-25", "--before-to", beforeTo,
    "--after", folders.after, "--after-from", "2026-08-25", "--after-to", "2027-05-31"], { encoding: "utf8", maxBuffer: 1 << 26 });
  return { status: said.status, out: said.stdout, err: said.stderr };
}

const twoSeasons = [
  withRecords("two seasons that differ: fewer, and no cause", (r) => {
    const said = seasonsOf(r, { rate: 9, seed: 51 }, { rate: 5, seed: 51 });
    return first(said.status === 0 ? "" : said.err, /Like with like, fewer injuries were written down in the second season/.test(said.out) ? "" : said.out,
      /shows no cause/.test(said.out) ? "" : said.out, /24 squads in both seasons, each against itself: 0\.\d+ times/.test(said.out) ? "" : said.out, kQuiet.test(said.out) ? said.out : "");
  }),
  withRecords("two seasons of the same rate: no difference is claimed", (r) => {
    const said = seasonsOf(r, { rate: 5, seed: 52 }, { rate: 5, seed: 53 });
    return first(said.status === 0 ? "" : said.err, /Too early to tell|No difference that matters/.test(said.out) ? "" : said.out, /Like with like, (fewer|more)/.test(said.out) ? said.out : "");
  }),
  withRecords("a season before that does not come before", (r) => {
    const said = seasonsOf(r, { seed: 54, squads: 4, weeks: 8 }, { seed: 54, squads: 4, weeks: 8 }, "2026-12-31");
    return first(said.status === 2 ? "" : `status ${said.status}`, said.err.split("\n").filter(Boolean).length === 1 && /--after-from/.test(said.err) ? "" : said.err);
  }),
  withRecords("two seasons without an injury cannot be compared", (r) => {
    const said = seasonsOf(r, { rate: 0, seed: 55, squads: 4 }, { rate: 0, seed: 55, squads: 4 });
    return first(said.status === 1 ? "" : `status ${said.status}\n${said.err}`, /Cannot be estimated: no injury is on record in either season/.test(said.out) ? "" : said.out);
  }),
];

const kQuiet = /\b(nan|inf|undefined|null)\b/i;

// What people read of a page, the charts' own words among it, and the numbers in such a text as English writes them.
function textsOf(page) {
  const charts = [];
  const visit = (node) => (typeof node === "string" ? charts.push(node) : node !== null && typeof node === "object" ? Object.entries(node).forEach(([key, value]) => (["id", "kind"].includes(key) ? undefined : visit(value))) : undefined);
  visit(JSON.parse(/id="report-charts">([^<]*)</.exec(page)[1]));
  const body = page.replace(/<script[\s\S]*?<\/script>|<style[\s\S]*?<\/style>/g, "");
  const attributes = [...body.matchAll(/aria-label="([^"]*)"/g)].map(([, text]) => text);
  return [...body.split(/<[^>]*>/), ...attributes, ...charts].map((text) => text.trim().replaceAll("&#39;", "'").replaceAll("&amp;", "&")).filter((text) => text !== "");
}
const numbersIn = (text, language) => (language === "es" ? text.replace(/(\d),(?=\d)/g, "$1.") : text).replace(/(\d)[\u00A0 ](?=\d{3}\b)/g, "$1").match(/\d+(\.\d+)*/g)?.join(" ") ?? "";
// None of them is a Spanish word. Names of squads, files and commands are theirs who gave them.
const kEnglishWord = /(?<![\p{L}'/.-])(the|of|and|in|is|are|was|were|to|with|by|or|not|than|that|this|which|who|had|have|at|on|from|weeks?|seasons?|hours?|injury|injuries|squads?|warm|limits|rates?|match|matches|training|players?|days?|known|none|one|fewer|more|most|half|few|told|too|early|each|as|all|left|out|done|drills?|first|second|expected|times|nothing|numbers|contents)(?![\p{L}/.-])/iu;

const whole = [
  withRecords("the demo's report: one file, no network, no nonsense", (r) => {
    r.write(demo());
    const said = r.run("report", "--usual", "4", "--out", r.out);
    const page = existsSync(join(r.out, "report.html")) ? readFileSync(join(r.out, "report.html"), "utf8") : "";
    const words = page.replace(/<script[\s\S]*?<\/script>|<style[\s\S]*?<\/style>/g, "").replace(/<[^>]*>/g, " ");
    return first(said.status === 0 ? "" : said.err, kQuiet.test(said.out) ? said.out : "", kQuiet.test(words) ? words.match(new RegExp(`.{60}${kQuiet.source}.{60}`, "i"))?.[0] ?? "nonsense" : "",
      /<(?:script|link|img|iframe)[^>]*(?:src|href)=/.test(page) ? "fetches something" : "", (page.match(/data-chart=/g) ?? []).length >= 8 ? "" : "charts are missing",
      readdirSync(r.out).join() === "report.html" ? "" : readdirSync(r.out).join());
  }),
  ...["lead", "board"].map((reader) => withRecords(`the ${reader}'s report in Spanish: the same page, the same numbers, and no English`, (r) => {
    r.write(demo());
    const [english, spanish] = ["en", "es"].map((language) => {
      const said = r.run("report", "--usual", "4", "--reader", reader, "--language", language, "--out", r.out);
      return { said, page: readFileSync(join(r.out, "report.html"), "utf8") };
    });
    const [texts, textos] = [english.page, spanish.page].map(textsOf);
    const other = texts.findIndex((text, at) => numbersIn(text, "en") !== numbersIn(textos[at] ?? "", "es"));
    return first(spanish.said.status === 0 ? "" : spanish.said.err, /<html lang="es">/.test(spanish.page) ? "" : "its language is not said",
      texts.length === textos.length && texts.length > 300 ? "" : `${texts.length} texts, ${textos.length} in Spanish`,
      other < 0 ? "" : `${texts[other]}\n${textos[other]}`, textos.find((text) => kEnglishWord.test(text)) ?? "",
      spanish.said.out.split("\n").find((line) => kEnglishWord.test(line) && !/^Escrito: /.test(line)) ?? "", kQuiet.test(spanish.said.out) ? spanish.said.out : "");
  })),
  withRecords("the board's version names no squad beside injuries and withholds fewer than five", (r) => {
    r.write(demo());
    const said = r.run("report", "--reader", "board", "--out", r.out);
    const page = readFileSync(join(r.out, "report.html"), "utf8");
    const tables = [...page.matchAll(/<table[\s\S]*?<\/table>/g)].map(([text]) => text);
    const counted = tables.filter((text) => /in 1000 hours/.test(text));
    const cells = counted.flatMap((text) => [...text.matchAll(/<tr>\s*<th[^>]*scope="row"[^>]*>[\s\S]*?<\/th>\s*<td[^>]*>([\s\S]*?)<\/td>/g)].map(([, cell]) => cell.trim()));
    return first(said.status === 0 ? "" : said.err, cells.length > 20 ? "" : `${cells.length} counts read`, cells.find((cell) => /^[1-4]\b/.test(cell)) ?? "",
      cells.some((cell) => cell === "fewer than 5") ? "" : "nothing is withheld", (page.match(/\d open\)/g) ?? []).length === 1 ? "" : "open injuries by kind",
      /of them open/.test(page) ? "open injuries by days" : "", /squads-drawn-in|squads-funnel/.test(page) ? "squads are shown" : "");
  }),
  withRecords("import writes what it reads, and reads what it writes", (r) => {
    r.write(demo());
    const said = r.run("import", "--out", r.folder);
    const after = Object.fromEntries(Object.keys(demo()).map((name) => [name, readFileSync(join(r.folder, name), "utf8")]));
    const again = r.run("import", "--out", r.folder);
    const twice = Object.fromEntries(Object.keys(demo()).map((name) => [name, readFileSync(join(r.folder, name), "utf8")]));
    return first(said.status === 0 ? "" : said.err, again.status === 0 ? "" : again.err, JSON.stringify(after) === JSON.stringify(twice) ? "" : "the second time differs");
  }),
  withRecords("a dry run writes nothing and tells the questions", (r) => {
    r.write(demo());
    const before = readdirSync(r.folder).join();
    const said = r.run("import", "--dry-run");
    const json = JSON.parse(r.run("import", "--dry-run", "--json").out);
    return first(said.status === 0 ? "" : said.err, readdirSync(r.folder).join() === before ? "" : "something was written", said.out.length > 200 ? "" : said.out, json.answer === "import" ? "" : "json");
  }),
];

const line = (text) => (file) => file.replace(/\n/, `\n${text}\n`);
// [what, changed file, how, what is said, status].
const kMistakes = [
  ["hours that are minutes", "hours.csv", line("u10-wrens,2025-09-01,training,,,1000000,,,,,,"), /hours\.csv:2.*1000000/],
  ["a date to come", "injuries.csv", line("u10-wrens,x,,2027-01-01,training,,,,,,,,,,,"), /injuries\.csv:2.*2027-01-01/],
  ["a squad that is not there", "hours.csv", line("u10-eagles,2025-09-01,training,60,10,,,,,,,"), /hours\.csv:2.*u10-eagles/],
  ["a return before the injury", "injuries.csv", line("u10-wrens,x,,2025-10-10,training,,,,,,,,,2025-10-01,,"), /injuries\.csv:2/],
];

const mistakes = kMistakes.map(([name, file, change, said]) =>
  withRecords(`bad input: ${name}`, (r) => {
    r.write(demo(), { [file]: change });
    const result = r.run("report", "--out", r.out);
    return first(result.status === 2 ? "" : `status ${result.status}\n${result.err}`, said.test(result.err) ? "" : result.err, existsSync(r.out) ? "something was written" : "", result.out === "" ? "" : result.out);
  }));

const odd = [
  withRecords("no injury at all", (r) => {
    r.write(demo(), { "injuries.csv": (text) => `${text.split("\n")[0]}\n` });
    const said = r.run("report", "--out", r.out);
    return first(said.status === 0 ? "" : said.err, /No injury was written down/.test(said.out) ? "" : said.out, /cannot be estimated: no event at all/.test(said.out) ? "" : said.out, kQuiet.test(said.out) ? said.out : "");
  }),
  withRecords("no hours at all", (r) => {
    r.write(demo(), { "hours.csv": (text) => `${text.split("\n")[0]}\n` });
    const said = r.run("report", "--out", r.out);
    return first(said.status === 0 || said.status === 2 ? "" : said.err, kQuiet.test(said.out) ? said.out : "", said.status === 2 || /No hours are on record/.test(said.out) ? "" : said.out);
  }),
  withRecords("one squad", (r) => {
    r.write(season({ squads: 1, seed: 7 }));
    const said = r.run("report", "--out", r.out);
    return first(said.status === 0 ? "" : said.err, /cannot be estimated: one squad only/.test(said.out) ? "" : said.out, kQuiet.test(said.out) ? said.out : "");
  }),
  withRecords("no period", (r) => {
    r.write(demo());
    const said = spawnSync(r.program, ["evidence", "report", "--records", r.folder, "--out", r.out], { encoding: "utf8" });
    return first(said.status === 2 ? "" : `status ${said.status}`, said.stderr.split("\n").filter(Boolean).length === 1 ? "" : said.stderr);
  }),
  withRecords("a period that ends before it begins", (r) => {
    r.write(demo());
    const said = r.run("report", "--from", "2026-05-31", "--to", "2025-08-25", "--out", r.out);
    return first(said.status === 2 ? "" : `status ${said.status}`, existsSync(r.out) ? "something was written" : "");
  }),
];

export const seasons = [...stories, ...twoSeasons, ...whole, ...mistakes, ...odd];
