// What the desk enters and reads: entries of a browser, injuries with the days lost, the week by squads, evenings to plan anew.
import { cpSync } from "node:fs";
import { all, entry, entryId, is, kDay, kSession, that } from "./expect.mjs";
import { People } from "./people.mjs";
import { withLead } from "./planning.mjs";

const kPlayer = "Q13";
const dayBefore = (days) => new Date(Date.parse(`${kDay}T12:00:00Z`) - days * 86400000).toISOString().slice(0, 10);
const mondayOf = (day) => dayBefore((new Date(`${day}T12:00:00Z`).getUTCDay() + 6) % 7);
const visit = (fields = {}) => ({ id: entryId(), kind: "visit", ...kSession, form: "landing", note: "knees over toes", ...fields });
const verdicts = (answer) => answer.json.verdicts.map(({ verdict }) => verdict).join();

async function entered({ people, lead }) {
  const seen = visit();
  const first = await lead.post("/api/entries", { entries: [seen] });
  await new Promise((resolve) => setTimeout(resolve, 1100));  // the clock's second is another
  const again = await lead.post("/api/entries", { entries: [seen] });
  const out = [is(first, 200), that(verdicts(first) === "stored" && verdicts(again) === "known", `${first.text} ${again.text}`)];
  const batch = [visit(), { id: entryId(), kind: "coach-taught", coach: "Tolly", day: kDay, what: "landing drills" }, { ...visit(), form: 7 }];
  const several = await lead.post("/api/entries", { entries: batch });
  out.push(is(several, 200), that(verdicts(several) === "stored,stored,kept-aside", several.text));
  const recorder = await people.signIn("recorder");
  const hours = { id: entryId(), kind: "exposure-confirmed", ...kSession, setting: "training", minutes: 60, players: 14 };
  out.push(that(verdicts(await recorder.post("/api/entries", { entries: [hours] })) === "stored", "a recorder's hours"));
  out.push(that(verdicts(await recorder.post("/api/entries", { entries: [visit()] })) === "kept-aside", "a recorder enters no visit"));
  out.push(is(await (await people.signIn("coach")).post("/api/entries", { entries: [visit()] }), 403, "not-your-role"));
  for (const body of [{}, { entries: [] }, { entries: 7 }, { entries: Array(51).fill(seen) }]) out.push(is(await lead.post("/api/entries", body), 400, "not-understood"));
  out.push(is(await lead.post("/api/club/documents", { changes: [{ path: "club.toml", text: "x" }] }), 404, "not-found"), is(await lead.get("/api/club/documents"), 404, "not-found"));
  const evenings = (await lead.get(`/api/week/${mondayOf(kDay)}`)).json.evenings.filter(({ squad, start }) => squad === kSession.squad && start === kSession.start);
  out.push(that(evenings.some(({ day, visits }) => day === kDay && visits === 2), JSON.stringify(evenings)));
  return all(out);
}

// One sending is a sender of its own: none of them leaves a gap in another's count.
async function noGaps({ lead }) {
  for (let sending = 0; sending < 5; sending++) await lead.post("/api/entries", { entries: [visit(), visit()] });
  const kept = (await lead.get("/api/quarantine")).json.kept_aside;
  return that(!kept.some(({ why }) => /sequence|number/.test(why)), JSON.stringify(kept));
}

async function injuries({ lead }) {
  const consent = (answer) => ({ id: entryId(), kind: "consent", player: kPlayer, purpose: "injury-record", by: "guardian", answer, day: kDay });
  await lead.post("/api/entries", { entries: [consent("given")] });
  const opened = { id: entryId(), kind: "injury-opened", player: kPlayer, squad: kSession.squad, day: dayBefore(10), what: ["region thigh"], note: "sprinting" };
  const out = [that(verdicts(await lead.post("/api/entries", { entries: [opened] })) === "stored", "not opened")];
  const of = async () => (await lead.get("/api/injuries")).json.injuries.find(({ injury }) => injury === opened.id);
  const open = await of();
  // Ten days ago, not counting that day, today counting: docs of the 2020 consensus (core/evidence/time_loss.h).
  out.push(that(open?.open === true && open.days_lost === 10 && open.player === kPlayer, JSON.stringify(open)));
  await lead.post("/api/entries", { entries: [{ id: entryId(), kind: "injury-closed", player: kPlayer, injury: opened.id, returned: dayBefore(3) }] });
  const closed = await of();
  out.push(that(closed?.open === false && closed.days_lost === 6 && closed.returned === dayBefore(3), JSON.stringify(closed)));
  const say = (kind) => lead.post("/api/entries", { entries: [{ id: entryId(), kind, player: kPlayer, injury: opened.id }] });
  out.push(that(verdicts(await say("injury-reopened")) === "stored", "not reopened"));
  const again = await of();
  out.push(that(again?.open === true && again.days_lost === 10 && again.returned === undefined, JSON.stringify(again)));
  await lead.post("/api/entries", { entries: [{ id: entryId(), kind: "restriction", player: kPlayer, areas: ["thigh"], kinds: ["impact"], review: dayBefore(-5) }, { id: entryId(), kind: "restriction", player: kPlayer, areas: ["knee"], kinds: ["impact"], review: dayBefore(-3) }] });
  out.push(that((await of()).review === dayBefore(-3), JSON.stringify(await of())));
  out.push(that(verdicts(await say("injury-never-was")) === "stored" && (await of()) === undefined, "it is still on the list"));
  const page = await lead.get(`/api/players/${kPlayer}/timeline`);
  out.push(that(/injury-never-was/.test(page.text) && page.text.includes(opened.id), "the child's page has not all of it"));
  out.push(that(verdicts(await say("injury-reopened")) === "stored" && (await of())?.open === true, "it does not come back"));
  await lead.post("/api/entries", { entries: [consent("withdrawn")] });
  const after = await lead.get("/api/injuries");
  out.push(that(!after.text.includes(opened.id) && after.json.without_consent > 0, after.text.slice(0, 300)));
  await lead.post("/api/entries", { entries: [consent("given")] });
  out.push(that((await lead.get("/api/reads")).text.includes("injuries"), "the book of reads has nothing of it"));
  return all(out);
}

async function theWeek({ people, lead }) {
  const answer = await lead.get(`/api/week/${mondayOf(kDay)}/squads`);
  const { squads, visits } = answer.json;
  const out = [is(answer, 200), that(squads.length === 24 && visits.length > 0 && visits.length <= 3, `${squads.length} squads, ${visits.length} visits`)];
  const kestrels = squads.find(({ squad }) => squad === kSession.squad);
  const { joins_in, with_swaps, sits_out } = kestrels.tonight;
  const roster = (await lead.get(`/api/squads/${kSession.squad}`)).json;
  const words = (word) => roster.standing.filter((one) => one.word.startsWith(word)).length;
  out.push(that(joins_in + with_swaps + sits_out === roster.roster.length && sits_out === words("sits out") && with_swaps === words("joins in with"), JSON.stringify(kestrels)));
  for (const name of roster.roster.map((one) => one.name)) out.push(that(!answer.text.includes(name), "a name stands in the week"));
  out.push(is(await lead.get("/api/week/2026-11-24/squads"), 404, "not-found"), is(await (await people.signIn("coach")).get(`/api/week/${mondayOf(kDay)}/squads`), 403, "not-your-role"));
  return all(out);
}

// The desk plans the same evenings as the phone, further ahead, and has the catalogue by itself.
async function toPlanAnew({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", "demo/quillmere"] });
  const people = new People(demo, server, contract);
  const [lead, phone] = [await people.signIn("lead"), people.device("coach")];
  const [desks, phones, catalogue] = [await lead.get(`/api/squads/${kSession.squad}/evenings`), await phone.get(`/api/device/squads/${kSession.squad}/evenings`), await lead.get("/api/catalogue")];
  const out = [is(desks, 200), is(phones, 200), is(catalogue, 200)];
  out.push(that(desks.json.evenings.length >= phones.json.evenings.length && phones.json.evenings.length > 0, "fewer at the desk"));
  out.push(that(JSON.stringify(desks.json.evenings[0]) === JSON.stringify(phones.json.evenings[0]), "another evening at the desk"));
  out.push(that(JSON.stringify(catalogue.json.catalogue) === JSON.stringify(phones.json.catalogue), "another catalogue at the desk"));
  out.push(that(desks.json.emergency === undefined && phones.json.emergency.length > 0 && phones.json.club === "Quillmere Juniors", "emergency contacts are a phone's"));
  out.push(that(phones.json.emergency.every((one) => one.phone && one.guardian) && !phones.json.emergency.some(({ player }) => player === "Q05"), JSON.stringify(phones.json.emergency)));
  const opened = await phone.post("/api/sync", { client: 1, most: 0, entries: [entry("emergency-sheet-opened", { player: phones.json.emergency[0].player })] });
  out.push(that(verdicts(opened) === "stored", opened.text));
  const page = await lead.get(`/api/players/${phones.json.emergency[0].player}/timeline`);
  out.push(that(/emergency.sheet.opened/.test(page.text), "not on the child's page"));
  await server.stop();
  return all(out);
}

// Two leads at one document, a change that would leave the club unsound, and a squad that is new: at once on the lists.
async function theFolder({ demo, contract }) {
  const club = demo.file("folder-of-the-club");
  cpSync("demo/quillmere", club, { recursive: true });
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", club] });
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const where = "/api/club/documents";
  const first = await lead.get(where);
  const of = (answer, path) => answer.json.documents.find((one) => one.path === path);
  const kestrels = of(first, "squads/u13-kestrels.toml");
  const out = [is(first, 200), that(first.json.documents.length > 30 && kestrels.content.name === "Under-13 Kestrels", first.text.slice(0, 200)), that(!/Folake|2013-/.test(first.text), "children stand in it")];
  const renamed = (name, instead_of = kestrels.digest) => lead.post(where, { changes: [{ path: kestrels.path, instead_of, content: { ...kestrels.content, name } }] });
  const one = await renamed("Under-13 Kites");
  const two = await renamed("Under-13 Harriers");
  out.push(is(one, 200), is(two, 409, "changed-meanwhile"), that(of(two, kestrels.path).content.name === "Under-13 Kites", two.text.slice(0, 200)));
  const merged = await renamed("Under-13 Harriers", of(two, kestrels.path).digest);
  out.push(is(merged, 200), that((await lead.get("/api/squads")).text.includes("Under-13 Harriers"), "the lists are as before"));
  const unsound = await lead.post(where, { changes: [{ path: "club.toml", instead_of: of(first, "club.toml").digest, content: { ...of(first, "club.toml").content, block: { first_monday: "2026-11-24", weeks: 60 } } }] });
  out.push(is(unsound, 422, "club-not-sound"), that(unsound.json.faults.some(({ file, field }) => file === "club.toml" && /weeks/.test(field)), unsound.text.slice(0, 400)));
  out.push(that((await lead.get(where)).text.includes('"weeks":6'), "an unsound club was kept"));
  for (const body of [{}, { changes: 7 }, { changes: [7] }, { changes: [{ path: 7 }] }, { changes: [], more: 1 }, { changes: [{ path: "club.toml", content: "x" }] }]) out.push(is(await lead.post(where, body), 400, "not-understood"));
  for (const path of ["../club.toml", "emergency.csv", "season/hours.csv", "squads/../../x.toml"]) out.push(is(await lead.post(where, { changes: [{ path, text: "x" }] }), 422, "club-not-sound"));
  out.push(is(await (await people.signIn("coach")).post(where, { changes: [] }), 403, "not-your-role"));
  // The next season, as changes that are taken as they are; and a roster to amend.
  const turn = await lead.get("/api/club/turn");
  const roster = await lead.get("/api/club/rosters/roster-club.csv");
  const reads = (await lead.get("/api/reads")).json.reads.map(({ what }) => what);
  out.push(is(turn, 200), is(roster, 200), that(turn.json.squads.length > 20 && turn.json.players.length > 200 && roster.json.text.startsWith("Member No,"), turn.text.slice(0, 300)), that(reads.includes("season-turn") && reads.includes("roster"), reads.join()));
  for (const name of ["emergency.csv", "club.toml", "roster-none.csv", "roster"]) out.push(is(await lead.get(`/api/club/rosters/${name}`), 404, "not-found"));
  const turned = await lead.post(where, { changes: turn.json.changes });
  out.push(is(turned, 200), that((await lead.get("/api/club/turn")).json.season.from > turn.json.season.from, "no season further on"));
  await server.stop();
  return all(out);
}

export const desk = [
  { name: "routes: the club's folder at the desk", run: theFolder },
  { name: "routes: what is entered at the desk", run: withLead(entered) },
  { name: "routes: what the desk sends leaves no gap", run: withLead(noGaps) },
  { name: "routes: injuries and the days lost", run: withLead(injuries) },
  { name: "routes: the week by squads", run: withLead(theWeek) },
  { name: "routes: evenings and catalogue for the desk", run: toPlanAnew },
];
