// What may be kept and shown of a child goes by what the guardians and the child said; what the coach must know tonight
// goes by nothing of it.
import { all, entry, is, kDay, kSession, that } from "./expect.mjs";
import { People } from "./people.mjs";

const kPlayer = "Q12";
const consent = (answer, fields = {}) => entry("consent", { player: kPlayer, purpose: "injury-record", by: "guardian", answer, day: kDay, ...fields });
const injury = (fields = {}) => entry("injury-opened", { player: kPlayer, squad: "u13-kestrels", day: kDay, note: "a canary of a note", ...fields });
const send = (caller, ...entries) => caller.post("/api/sync", { client: 1, most: 0, entries });
const verdicts = (answer) => answer.json.verdicts.map(({ verdict }) => verdict).join();

// Everything that a device is given.
async function pulled(caller) {
  let out = "";
  let after = 0;
  for (let more = true; more;) {
    const answer = await caller.post("/api/sync", { client: 1, after });
    out += answer.text;
    ({ after, more } = answer.json);
  }
  return out;
}

async function withdrawn({ people }) {
  const desk = people.device("lead");
  const lead = await people.signIn("lead");
  const timeline = async () => (await lead.get(`/api/players/${kPlayer}/timeline`)).json;
  const kept = async () => (await lead.get("/api/quarantine")).text;
  const out = [];
  // The demo's guardians gave it before the season.
  const first = injury();
  out.push(that(verdicts(await send(desk, first)) === "stored", "not with consent"));
  const aside = injury({ day: "2099-01-01", note: "another canary" });
  out.push(that(verdicts(await send(desk, aside)) === "kept-aside", "a day that has not come"));
  const before = await timeline();
  out.push(that(before.consents["injury-record"] === "given" && before.closed === 0 && before.entries.some(({ id }) => id === first.id), JSON.stringify(before.consents)));
  out.push(that((await pulled(desk)).includes(first.id), "not given to the lead's device"), that((await kept()).includes(aside.id), "not shown among what is kept aside"));
  // Withdrawn in the middle of a batch: what is of the evening is taken in all the same.
  const mixed = [entry("attendance", { ...kSession, there: 2, players: [kPlayer, "Q03"] }), consent("withdrawn"), injury({ note: "a third canary" }),
    { ...injury({ note: "a fourth canary" }), sequence: 0 }, entry("hurt", { player: kPlayer, place: "knee" }), entry("screening", { player: kPlayer, day: kDay, test: "hop", thousandths: 1 })];
  const answer = await send(desk, ...mixed);
  out.push(is(answer, 200), that(verdicts(answer) === "stored,stored,no-consent,no-consent,stored,no-consent", verdicts(answer)));
  out.push(that(/no consent/.test(answer.json.verdicts[2].why) && !answer.text.includes("canary"), answer.text));
  const after = await timeline();
  const ids = after.entries.map(({ id }) => id);
  out.push(that(after.consents["injury-record"] === "withheld" && after.closed >= 1, JSON.stringify([after.consents, after.closed])));
  out.push(that(!ids.includes(first.id) && ids.includes(mixed[4].id) && ids.includes(mixed[1].id), ids.join()));
  const given = await pulled(desk);
  out.push(that(!/canary/.test(given), "a device is given a closed record"), that(given.includes(mixed[4].id), "a device is not given who is hurt"));
  out.push(that(!/canary/.test(await kept()), "what is kept aside shows a closed record"));
  const card = await people.device("coach").get("/api/device/squads/u13-kestrels");
  out.push(that(/knee|sits|not today/i.test(card.text) && card.text.includes(kPlayer), "the coach does not know of the knee"));
  // The family's own copy has all of it.
  const copy = await lead.post(`/api/players/${kPlayer}/export`, { verified: "seen in person" });
  out.push(is(copy, 200), that(copy.json.entries.some(({ id }) => id === first.id) && copy.json.closed === 0, "the family's own copy is cut"));
  // Two guardians who disagree: still no. Both and the child: yes, and it is there again.
  await send(desk, consent("given", { guardian: "first" }));
  out.push(that((await timeline()).consents["injury-record"] === "withheld", "one guardian overrides the other"));
  await send(desk, consent("given"));
  const open = await timeline();
  out.push(that(open.consents["injury-record"] === "given" && open.entries.some(({ id }) => id === first.id), JSON.stringify(open.consents)));
  await send(desk, consent("refused", { by: "player" }));
  out.push(that((await timeline()).consents["injury-record"] === "withheld", "the child's own no does not count"));
  return all(out);
}

// Only the lead enters consents, and nobody takes one back from an evening.
async function forged({ people }) {
  const coach = people.device("coach");
  const desk = people.device("lead");
  const lead = await people.signIn("lead");
  const no = consent("refused", { purpose: "statistics", player: "Q14" });
  const out = [that(verdicts(await send(desk, no)) === "stored", "the lead enters no consent")];
  out.push(that(verdicts(await send(coach, consent("given", { purpose: "statistics", player: "Q14" }))) === "kept-aside", "a coach enters consents"));
  await send(coach, entry("taken-back", { ...kSession, corrects: no.id }));
  out.push(that((await lead.get("/api/players/Q14/timeline")).json.consents.statistics === "withheld", "a consent was taken back by a tap on an evening"));
  out.push(that(!/"purpose"|"consent"/.test(await pulled(coach)), "a coach is given consents"));
  return all(out);
}

const withServer = (name, work) => ({
  name: `consent: ${name}`,
  async run({ demo, contract }) {
    const server = await demo.serve({ flags: ["--behind-proxy"] });
    const said = await work({ people: new People(demo, server, contract) });
    await server.stop();
    return said;
  },
});

export const consents = [
  withServer("withdrawn in mid-season: records are refused and closed at once, the evening is not", withdrawn),
  withServer("nobody gives or takes it back but by the lead", forged),
];
