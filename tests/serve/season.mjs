// The season as files to take away, and as a report: who may, what stands in it, what a bad period is told.
import { all, entryId, is, kDay, kSession, that } from "./expect.mjs";
import { withLead } from "./planning.mjs";
import { unzipped } from "./zip.mjs";

const kPlayer = "Q13";
const kFormula = "=HYPERLINK(1)";
const kCells = { integer: /^\d+$/, date: /^\d{4}-\d{2}-\d{2}$/, time: /^\d{2}:\d{2}$/, string: /^[^]*$/ };
const consent = (purpose, answer) => ({ id: entryId(), kind: "consent", player: kPlayer, purpose, by: "guardian", answer, day: kDay });
const opened = (fields) => ({ id: entryId(), kind: "injury-opened", player: kPlayer, squad: kSession.squad, day: kDay, what: ["region thigh", "onset acute"], ...fields });

// RFC 4180, every cell in quotes.
const rowsOf = (text) => text.split("\r\n").slice(0, -1).map((line) => [...line.matchAll(/"((?:[^"]|"")*)"(?:,|$)/g)].map(([, cell]) => cell.replaceAll('""', '"')));

async function takenAway({ people, lead }) {
  const put = await lead.post("/api/entries", { entries: [consent("injury-record", "given"), consent("statistics", "given"), opened({ note: kFormula })] });
  const answer = await lead.get(`/api/season/2026-08-01/${kDay}/export`);
  const files = unzipped(answer.bytes);
  const described = JSON.parse(files.get("datapackage.json") ?? "{}");
  const out = [is(put, 200), is(answer, 200), that(answer.headers["content-disposition"] === `attachment; filename="season-2026-08-01-${kDay}.zip"`, answer.headers["content-disposition"])];
  out.push(that([...files.keys()].sort().join() === "datapackage.json,hours.csv,injuries.csv,sessions.csv,squads.csv", [...files.keys()].join()));
  for (const { path, schema, profile } of described.resources) {
    const [heading, ...rows] = rowsOf(files.get(path));
    out.push(that(profile === "tabular-data-resource" && heading.join() === schema.fields.map(({ name }) => name).join(), `${path}: ${heading}`), that(rows.length > 0, `${path} is empty`));
    for (const row of rows) {
      const odd = schema.fields.find(({ type, constraints }, i) => (row[i] === "" ? constraints?.required : !kCells[type].test(row[i])));
      out.push(that(row.length === heading.length && !odd, `${path}: ${JSON.stringify(row)} ${odd?.name}`));
      out.push(that(!row.some((cell) => /^[=+@-]/.test(cell)), `${path}: a formula: ${row}`));
    }
  }
  out.push(that(files.get("injuries.csv").includes(`"'${kFormula}"`), files.get("injuries.csv").slice(0, 300)));
  const note = (await lead.get("/api/reads")).json.reads[0];
  out.push(that(note.what === "export-season" && note.people > 0, JSON.stringify(note)));
  await lead.post("/api/entries", { entries: [consent("statistics", "withdrawn")] });
  const after = unzipped((await lead.get(`/api/season/2026-08-01/${kDay}/export`)).bytes);
  out.push(that(!after.get("injuries.csv").includes(kFormula) && /1 injury|consent|agree/.test(JSON.parse(after.get("datapackage.json")).description), after.get("datapackage.json").slice(0, 600)));
  for (const role of ["coach", "recorder", "board", "operator"]) out.push(is(await (await people.signIn(role)).get(`/api/season/2026-08-01/${kDay}/export`), 403, "not-your-role"));
  return all(out);
}

async function periods({ lead }) {
  const out = [];
  for (const more of ["", "/export"]) {
    for (const [period, fields] of [["2026-11-30/2026-09-01", "to"], ["2026-13-01/2026-11-30", "from"], ["x/y", "from,to"], ["2020-01-01/2026-01-01", "to"]]) {
      const answer = await lead.get(`/api/season/${period}${more}`);
      out.push(is(answer, 400, "not-understood"), that(answer.json.faults.map(({ field }) => field).join() === fields, answer.text));
    }
  }
  const empty = await lead.get("/api/season/2019-08-01/2019-12-31");
  const full = await lead.get(`/api/season/2026-08-01/${kDay}`);
  return all(out, is(empty, 200), that(empty.json.nothing === true, "nothing is on record, and nothing says so"), is(full, 200), that(full.json.nothing === undefined, "there is something"));
}

// A question names squad and day: nobody at the desk has a file with lines.
async function questions({ lead }) {
  await lead.post("/api/entries", { entries: [consent("injury-record", "given"), consent("statistics", "given"), opened({}), opened({}), opened({ day: "2026-08-02", what: ["region knee", "onset acute"] })] });
  const { sections } = (await lead.get(`/api/season/2026-08-01/${kDay}`)).json;
  const { blocks } = sections.find(({ heading }) => heading === "What somebody should look at");
  const said = blocks.filter(({ kind }) => kind === "list").flatMap(({ items }) => items).join("\n");
  return all(that(said.includes(`${kSession.squad} on ${kDay}: the same player, day and region stand there twice`), said), that(!/\.csv|line \d/.test(said), said));
}

// Each language is kept for itself: asked for in turn, each is what it was.
async function languages({ lead }) {
  const where = `/api/season/2026-08-01/${kDay}`;
  const said = [];
  for (const query of ["", "?language=es", "?language=en", "?language=es"]) said.push(await lead.get(where + query));
  const [plain, spanish, english, again] = said.map(({ json }) => json);
  const refused = await lead.get(`${where}?language=fr`);
  return all(...said.map((one) => is(one, 200)), is(refused, 400, "not-understood"), that(refused.json.faults[0].field === "language", refused.text),
    that(plain.language === "en" && JSON.stringify(plain) === JSON.stringify(english), "English is not what is said unasked"),
    that(spanish.language === "es" && spanish.sections[0].heading === "En breve" && JSON.stringify(spanish) === JSON.stringify(again), JSON.stringify(spanish).slice(0, 400)));
}

export const season = [
  { name: "routes: the season to take away", run: withLead(takenAway) },
  { name: "routes: the season's period", run: withLead(periods) },
  { name: "routes: what somebody should look at", run: withLead(questions) },
  { name: "routes: the season's report in both languages", run: withLead(languages) },
];
