// The report of an incident and the letter to a clinician from the desk: what stands in them, who may, and what is told of
// a body that is not as it should be. poppler reads the PDF's text back.
import { spawnSync } from "node:child_process";
import { all, entryId, is, kDay, kSession, that } from "./expect.mjs";
import { People } from "./people.mjs";
import { withLead } from "./planning.mjs";

const kPlayer = "Q13";
const kBody = {
  time: "18:12:00", place: "north end, second lane", what_happened: "Slipped on wet grass while turning.", signs: ["holds the wrist still"], done: ["ice in a towel"],
  told: [{ who: "the mother, by phone", by: "the coach", at: "18:25:00" }], reported_by: "coach of the squad", reported_on: kDay,
};
const consent = (answer) => ({ id: entryId(), kind: "consent", player: kPlayer, purpose: "injury-record", by: "guardian", answer, day: kDay });
const textOf = (answer) => spawnSync("pdftotext", ["-layout", "-", "-"], { input: answer.bytes, encoding: "utf8" }).stdout.replace(/\s+/g, " ");

async function openInjury(lead, fields = {}) {
  const opened = { id: entryId(), kind: "injury-opened", player: kPlayer, squad: kSession.squad, day: kDay, what: ["region wrist"], note: "canary-note", ...fields };
  const put = await lead.post("/api/entries", { entries: [consent("given"), opened] });
  return [opened.id, is(put, 200)];
}

async function papers({ people, lead }) {
  const [injury, put] = await openInjury(lead);
  const of = (paper, body, who = lead) => who.post(`/api/injuries/${injury}/${paper}`, body);
  const name = (await lead.get(`/api/squads/${kSession.squad}`)).json.roster.find(({ player }) => player === kPlayer).name;
  const [report, letter, empty] = [await of("incident", kBody), await of("referral", { ...kBody, paper: "letter" }), await of("incident", { known_before: false })];
  const out = [put, is(report, 200), is(letter, 200), is(empty, 200)];
  for (const [what, text] of [["report", textOf(report)], ["letter", textOf(letter)]]) {
    for (const told of [name, "Under-13 Kestrels", "Quillmere Juniors", kBody.what_happened, "holds the wrist still", "18:12", "Known before"]) out.push(that(text.includes(told), `${what}: no '${told}': ${text.slice(0, 900)}`));
    out.push(that(!text.includes("canary-note"), `${what}: what a record says stands in it`));
  }
  out.push(that(!textOf(empty).includes("Known before") && textOf(empty).includes(name), textOf(empty).slice(0, 500)));
  const reads = (await lead.get(`/api/players/${kPlayer}/reads`)).json.reads.map(({ what }) => what);
  out.push(that(reads.filter((what) => what === "incident-report").length === 2 && reads.includes("referral-letter"), reads.join()));
  for (const role of ["coach", "recorder", "board", "operator"]) out.push(is(await of("incident", kBody, await people.signIn(role)), 403, "not-your-role"));
  out.push(is(await lead.post(`/api/injuries/${entryId()}/incident`, kBody), 404, "not-found"), is(await lead.post("/api/injuries/Q13/referral", {}), 404, "not-found"));
  await lead.post("/api/entries", { entries: [consent("withdrawn")] });
  for (const paper of ["incident", "referral"]) out.push(is(await of(paper, kBody), 404, "not-found"));
  return all(out);
}

async function oddBodies({ lead }) {
  const [injury, put] = await openInjury(lead);
  const out = [put];
  for (const [body, field] of [
    [{ player: "Q05" }, "player"], [{ date: kDay }, "date"], [{ diagnosis: "x" }, "diagnosis"], [{ time: "25:00" }, "time"], [{ what_happened: "x".repeat(1501) }, "what_happened"],
    [{ signs: Array(13).fill("x") }, "signs"], [{ told: [{ by: "x" }] }, "told.1.who"], [{ reported_on: "2020-01-01" }, "reported_on"], [{ reported_on: "2099-01-01" }, "reported_on"], [{ paper: "a5" }, "paper"], [{ known_before: "no" }, "known_before"],
  ]) {
    const answer = await lead.post(`/api/injuries/${injury}/incident`, body);
    out.push(is(answer, 400, "not-understood"), that(answer.json.faults.some((one) => one.field === field), `${field}: ${answer.text}`));
  }
  return all(out);
}

// With the club's folder the venue stands in it; without, a line to write on.
async function withTheFolder({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", "demo/quillmere"] });
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const [injury, put] = await openInjury(lead);
  const report = await lead.post(`/api/injuries/${injury}/incident`, kBody);
  await server.stop();
  return all(put, is(report, 200), that(/Millrace/.test(textOf(report)), textOf(report).slice(0, 600)));
}

export const injuryPapers = [
  { name: "routes: the report and the letter of an injury", run: withLead(papers) },
  { name: "routes: what a report is not made of", run: withLead(oddBodies) },
  { name: "routes: a report with the club's folder", run: withTheFolder },
];
