// What was kept aside: the lead looks at it and takes it in, as its sender's, or lets it go; once, and nobody else does.
import { all, entry, is, kDay, kSession, that, wrapUp } from "./expect.mjs";
import { People } from "./people.mjs";

const send = (caller, ...entries) => caller.post("/api/sync", { client: 1, most: 0, entries });
const verdicts = (answer) => answer.json.verdicts.map(({ verdict }) => verdict).join();
const kept = async (lead) => (await lead.get("/api/quarantine")).json;

async function numberOf(lead, id) {
  return (await kept(lead)).kept_aside.find(({ content }) => content.includes(id))?.number;
}

async function takenIn({ people }) {
  const [coach, desk, lead] = [people.device("coach"), people.device("lead"), await people.signIn("lead")];
  const out = [];
  const old = { ...entry("hurt", { player: "Q09", place: "ankle" }), device_time: new Date(Date.now() - 40 * 86400e3).toISOString() };
  out.push(that(verdicts(await send(coach, old)) === "kept-aside", "not kept aside"));
  const number = await numberOf(lead, old.id);
  const keyOf = async (id) => (await kept(lead)).kept_aside.find(({ content }) => content.includes(id))?.key;
  out.push(that((await keyOf(old.id)) === "too-old", "no key of why"));
  const where = `/api/quarantine/${number}/take-in`;
  const many = await Promise.all(Array.from({ length: 6 }, () => lead.post(where)));
  out.push(that(many.map(({ status }) => status).sort().join() === "200,404,404,404,404,404", many.map(({ status }) => status).join()));
  const done = many.find(({ status }) => status === 200);
  const row = (await lead.get("/api/players/Q09/timeline")).json.entries.find(({ id }) => id === old.id);
  const me = (await (await people.signIn("coach")).get("/api/me")).json.account;
  out.push(that(row?.receipt === done?.json.receipt && row?.author === me && row?.author_role === "coach", JSON.stringify(row)));
  const after = await kept(lead);
  const note = after.looked_at.find((one) => one.number === number);
  const lee = (await lead.get("/api/me")).json.account;
  out.push(that(note?.what === "taken-in" && note.by === lee && note.receipt === done?.json.receipt && note.when.startsWith(kDay), JSON.stringify(note)));
  out.push(that(!after.kept_aside.some((one) => one.number === number), "it is still kept aside"), that(verdicts(await send(coach, old)) === "known", "sent again it is another"));
  const reads = (await lead.get("/api/players/Q09/reads")).json.reads;
  out.push(that(reads.some(({ what }) => what === "take-in-kept"), "not in the book of reads"));
  // One id, other content: told, and kept once.
  const first = wrapUp();
  await send(coach, first);
  const other = await send(coach, { ...first, note: "said later" });
  out.push(that(verdicts(other) === "other-content" && /says something else/.test(other.json.verdicts[0].why), other.text));
  await send(coach, { ...first, note: "said later still" });
  const others = (await kept(lead)).kept_aside.filter(({ content }) => content.includes(first.id));
  out.push(that(others.length === 1 && others[0].content.includes("said later\""), JSON.stringify(others)));
  const stays = await lead.post(`/api/quarantine/${others[0]?.number}/take-in`);
  out.push(is(stays, 409, "cannot-be-taken-in"), that(stays.json.key === "other-content" && others[0].key === "other-content", stays.text));
  // What cannot be read, what is of a newer kind, what is not the sender's to say.
  const newer = { ...entry("mood-told", { player: "Q09" }), device_time: old.device_time };
  const lifted = entry("lifted", { player: "Q09", names: [old.id] });
  const unread = { ...wrapUp(), sequence: 0 };
  for (const [one, why, key] of [[newer, "too-old", "newer-kind"], [lifted, "not-their-role", "not-their-role"], [unread, "not-an-entry", "not-an-entry"]]) {
    out.push(that(verdicts(await send(coach, one)) === "kept-aside", JSON.stringify(one)), that((await keyOf(one.id)) === why, `${why}: ${await keyOf(one.id)}`));
    const answer = await lead.post(`/api/quarantine/${await numberOf(lead, one.id)}/take-in`);
    out.push(is(answer, 409, "cannot-be-taken-in"), that(answer.json.key === key, answer.text));
  }
  // Consent is asked when it is taken in, not when it came.
  const say = (answer) => send(desk, entry("consent", { player: "Q09", purpose: "injury-record", by: "guardian", answer, day: kDay }));
  const record = entry("injury-opened", { player: "Q09", squad: "u13-kestrels", day: "2099-01-01" });
  await say("given");
  out.push(that(verdicts(await send(desk, record)) === "kept-aside", "a day that has not come"));
  const its = await numberOf(lead, record.id);
  await say("withdrawn");
  out.push(is(await lead.post(`/api/quarantine/${its}/take-in`), 409, "cannot-be-taken-in"), that(await numberOf(lead, record.id) === undefined, "it is shown without consent"));
  await say("given");
  out.push(is(await lead.post(`/api/quarantine/${its}/take-in`), 200));
  return all(out);
}

async function dropped({ people }) {
  const [coach, lead] = [people.device("coach"), await people.signIn("lead")];
  const out = [];
  const one = { ...wrapUp(), day: "2099-01-01" };
  await send(coach, one);
  const number = await numberOf(lead, one.id);
  const where = `/api/quarantine/${number}/drop`;
  for (const body of [{}, { why: "free text about a child" }, { why: "mistake", more: 1 }]) out.push(is(await lead.post(where, body), 400, "not-understood"));
  out.push(is(await lead.post(`/api/quarantine/${number}/take-in`, { more: 1 }), 400, "not-understood"));
  // Nobody else; with a form of another site, nobody at all.
  for (const role of ["coach", "recorder", "board", "operator"]) {
    const caller = await people.signIn(role);
    out.push(is(await caller.post(where, { why: "mistake" }), 403), is(await caller.post(`/api/quarantine/${number}/take-in`), 403));
  }
  for (const [path, body] of [[where, { why: "mistake" }], [`/api/quarantine/${number}/take-in`, {}]]) {
    out.push(is(await people.nobody().post(path, body), 401), is(await lead.post(path, JSON.stringify(body), { "content-type": "text/plain" }), 415));
  }
  for (const none of ["999999", "0", "abc", "99999999999999999999"]) out.push(is(await lead.post(`/api/quarantine/${none}/drop`, { why: "mistake" }), 404, "not-found"), is(await lead.post(`/api/quarantine/${none}/take-in`), 404, "not-found"));
  out.push(that(await numberOf(lead, one.id) === number, "it went all the same"));
  out.push(is(await lead.post(where, { why: "mistake" }), 200), is(await lead.post(where, { why: "mistake" }), 404), that(await numberOf(lead, one.id) === undefined, "it is still there"));
  out.push(that((await kept(lead)).looked_at.some((note) => note.number === number && note.what === "mistake" && note.receipt === undefined), "nothing is written down"));
  return all(out);
}

// Who is erased goes from there, too.
async function erased({ people }) {
  const [coach, lead] = [people.device("coach"), await people.signIn("lead")];
  const one = { ...entry("hurt", { player: "Q15", place: "wrist" }), device_time: new Date(Date.now() - 40 * 86400e3).toISOString() };
  await send(coach, one);
  const number = await numberOf(lead, one.id);
  const gone = await lead.post("/api/players/Q15/erase", { player: "Q15" });
  const again = await send(coach, one);
  return all(that(number !== undefined, "not kept aside"), is(gone, 200), that(await numberOf(lead, one.id) === undefined, "it can still be read"), is(await lead.post(`/api/quarantine/${number}/take-in`), 404),
    that(["dropped", "kept-aside"].includes(verdicts(again)) && await numberOf(lead, one.id) === undefined, again.text));
}

const withServer = (name, work) => ({
  name: `kept aside: ${name}`,
  async run({ demo, contract }) {
    const server = await demo.serve({ flags: ["--behind-proxy"] });
    const said = await work({ people: new People(demo, server, contract) });
    await server.stop();
    return said;
  },
});

export const keptAside = [
  withServer("taken in once, as its sender's, and never what must not be kept", takenIn),
  withServer("let go by the lead alone", dropped),
  withServer("gone with whom it is about", erased),
];
