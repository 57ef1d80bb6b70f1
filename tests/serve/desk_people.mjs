// The lead's lists of people: coaches, players, consents; and a plan that is not wanted any more.
import { all, entryId, is, kDay, kSession, that } from "./expect.mjs";
import { withLead } from "./planning.mjs";

const kPlayer = "Q13";

const after_id = (answer, coach) => answer.json.coaches.find(({ account }) => account === coach).taught.find(({ what }) => what === "cutting drills").entry;

async function coaches({ people, lead }) {
  const accounts = (await lead.get("/api/accounts")).json.accounts;
  const coach = accounts.find(({ role, charges }) => role === "coach" && charges.some(({ squad }) => squad === kSession.squad));
  const lesson = { id: entryId(), kind: "coach-taught", coach: coach.account, day: kDay, what: "landing drills" };
  const visit = { id: entryId(), kind: "visit", ...kSession, form: "landing" };
  const evening = { id: entryId(), kind: "visit", ...kSession, squad: "u12-dunnocks", form: "landing" };
  await lead.post("/api/entries", { entries: [lesson, visit, evening] });
  const answer = await lead.get("/api/coaches");
  const mine = answer.json.coaches.find(({ account }) => account === coach.account);
  const out = [is(answer, 200), that(mine?.taught.some(({ entry, what, day, by }) => entry === lesson.id && what === "landing drills" && day === kDay && by !== undefined), JSON.stringify(mine))];
  out.push(that(mine.visits.some(({ squad, day }) => squad === kSession.squad && day === kDay) && mine.visits.every(({ squad }) => squad !== "u12-dunnocks"), JSON.stringify(mine.visits)));
  out.push(that(answer.json.coaches.every(({ account }) => accounts.find((one) => one.account === account).role === "coach"), "somebody who is no coach"));
  // Corrected: what it was is not told any more.
  await lead.post("/api/entries", { entries: [{ ...lesson, id: entryId(), what: "cutting drills", corrects: lesson.id }] });
  const after = (await lead.get("/api/coaches")).json.coaches.find(({ account }) => account === coach.account).taught.map(({ what }) => what);
  out.push(that(after.includes("cutting drills") && !after.includes("landing drills"), after.join()));
  // At the season's end; and what was entered of the wrong coach.
  const asked = { id: entryId(), kind: "coach-asked", coach: coach.account, day: kDay, form: "season", answers: ["too-long no"], note: "shorter in spring" };
  const wrong = { id: entryId(), kind: "coach-entry-never-was", coach: coach.account, entry: after_id(await lead.get("/api/coaches"), coach.account) };
  await lead.post("/api/entries", { entries: [asked, wrong] });
  const last = (await lead.get("/api/coaches")).json.coaches.find(({ account }) => account === coach.account);
  out.push(that(last.asked.some(({ entry, form, note }) => entry === asked.id && form === "season" && note === "shorter in spring"), JSON.stringify(last)));
  out.push(that(!last.taught.some(({ entry }) => entry === wrong.entry), JSON.stringify(last.taught)));
  out.push(is(await (await people.signIn("coach")).get("/api/coaches"), 403, "not-your-role"));
  return all(out);
}

async function players({ people, lead }) {
  const answer = await lead.get("/api/players");
  const one = answer.json.players.find(({ player }) => player === kPlayer);
  const out = [is(answer, 200), that(one?.name.length > 0 && one.squads.includes(kSession.squad), JSON.stringify(one))];
  out.push(that((await lead.get("/api/reads")).json.reads.some(({ what, people: count }) => what === "players" && count === answer.json.players.length), "the book of reads has nothing of it"));
  out.push(is(await (await people.signIn("coach")).get("/api/players"), 403, "not-your-role"));
  return all(out);
}

async function consents({ people, lead }) {
  const say = (fields) => lead.post("/api/entries", { entries: [{ id: entryId(), kind: "consent", player: kPlayer, purpose: "statistics", day: kDay, ...fields }] });
  const of = async () => (await lead.get("/api/consents")).json.players.find(({ player }) => player === kPlayer);
  await say({ by: "guardian", answer: "given" });
  const given = await of();
  await say({ by: "player", answer: "refused" });
  const refused = await of();
  const words = refused.consents.filter(({ purpose }) => purpose === "statistics").map(({ by, answer, day }) => `${by} ${answer} ${day}`).sort().join("; ");
  return all(that(given.stands.statistics === "given", JSON.stringify(given)), that(refused.stands.statistics === "withheld" && words === `guardian given ${kDay}; player refused ${kDay}`, JSON.stringify(refused)),
    is(await (await people.signIn("coach")).get("/api/consents"), 403, "not-your-role"));
}

async function withdrawn({ people, lead }) {
  const [job] = (await lead.post("/api/plans", { squads: ["u12-dunnocks"] })).json.jobs;
  const where = `/api/planning/${job.number}/withdraw`;
  const out = [is(await (await people.signIn("coach")).post(where, {}), 403, "not-your-role"), is(await lead.post(where, { because: 1 }), 400, "not-understood"), is(await lead.post(where, {}), 200)];
  const [after] = (await lead.get("/api/planning")).json.jobs;
  out.push(that(after.number === job.number && after.state === "failed" && /withdrawn/.test(after.why), JSON.stringify(after)));
  out.push(is(await lead.post(where, {}), 409, "under-way"));
  for (const number of ["99999999", "0", "x", "1e3", "-1", "9".repeat(30)]) out.push(is(await lead.post(`/api/planning/${number}/withdraw`, {}), 404, "not-found"));
  const again = (await lead.post("/api/plans", { squads: ["u12-dunnocks"] })).json.jobs[0];
  out.push(that(again.number > job.number, "what was withdrawn still waits"), is(await lead.post(`/api/planning/${again.number}/withdraw`, {}), 200));
  return all(out);
}

export const deskPeople = [
  { name: "routes: coaches for the lead", run: withLead(coaches) },
  { name: "routes: players by name", run: withLead(players) },
  { name: "routes: consents by player", run: withLead(consents) },
  { name: "routes: a plan that is withdrawn", run: withLead(withdrawn) },
];
