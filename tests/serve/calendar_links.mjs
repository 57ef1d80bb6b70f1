// The address by which a coach's calendar follows a squad: what it gives and to whom, how it follows the club's folder, and
// everything that somebody may try who has it no more, or never had it.
import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { all, is, kDay, kSession, that } from "./expect.mjs";
import { People } from "./people.mjs";
import { pause } from "./server.mjs";

const kSquad = kSession.squad;
const kOther = "u12-dunnocks";
const kLink = `/api/squads/${kSquad}/calendar-link`;
const kPath = /^\/calendar\/[A-Za-z0-9_-]{43}\.ics$/;

// Of every VEVENT its lines by name, unfolded.
const eventsOf = ({ text }) =>
  text.replaceAll("\r\n ", "").split("BEGIN:VEVENT").slice(1).map((part) => Object.fromEntries(part.split("\r\n").filter((line) => line.includes(":")).map((line) => line.split(/:(.*)/s).slice(0, 2))));
const wholeFolder = (folder) => readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).map((one) => readFileSync(join(one.parentPath ?? one.path, one.name), "latin1")).join("\n");
const later = (day, days) => new Date(Date.parse(`${day}T12:00:00Z`) + days * 86400000).toISOString().slice(0, 10);

async function atAClub({ demo, contract }, work) {
  const club = demo.file("club-that-is-followed");
  cpSync("demo/quillmere", club, { recursive: true });
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", club] });
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const change = (name, edit) => writeFileSync(join(club, name), edit(readFileSync(join(club, name), "utf8")));
  const out = await work({ server, people, lead, change, make: async () => (await lead.post(kLink)).json.path });
  await server.stop();
  return all(out);
}

async function whatItGives({ server, people, lead, make }) {
  const before = await lead.get("/api/calendar-links");
  const made = await lead.post(kLink);
  const path = made.json.path;
  const out = [is(before, 200), that(before.json.links.length === 0, before.text), is(made, 201), that(kPath.test(path), made.text)];
  const phone = people.nobody();
  const answer = await phone.get(path);
  const { roster } = (await lead.get(`/api/squads/${kSquad}`)).json;
  const { evenings } = (await lead.get(`/api/squads/${kSquad}/evenings`)).json;
  const events = eventsOf(answer);
  out.push(is(answer, 200), that(evenings.length > 3 && evenings.every(({ day, start }) => events.some(({ DTSTART }) => DTSTART === `${day.replaceAll("-", "")}T${start.replace(":", "")}00`)), answer.text.slice(0, 900)));
  const due = ["UID", "DTSTAMP", "LAST-MODIFIED", "SEQUENCE", "STATUS", "DTSTART", "DTEND", "SUMMARY", "LOCATION", "END"];
  out.push(that(events.every((one) => Object.keys(one).every((name) => due.includes(name))), JSON.stringify(events[0])));
  out.push(that(new Set(events.map(({ UID }) => UID)).size === events.length && events.every(({ SEQUENCE }) => SEQUENCE === "0"), "UIDs that come twice, or were changed already"));
  out.push(that(events.every(({ SUMMARY }) => /^Under-13 Kestrels: warm-up( before the match)?$/.test(SUMMARY)), JSON.stringify(events.map(({ SUMMARY }) => SUMMARY))));
  out.push(that(roster.length > 5 && roster.every(({ name, player }) => !new RegExp(`\\b(${name}|${player})\\b`).test(answer.text)), "somebody stands in the calendar"));
  out.push(that(/REFRESH-INTERVAL;VALUE=DURATION:PT1H\r\nX-PUBLISHED-TTL:PT1H\r\n/.test(answer.text), answer.text.slice(0, 400)));

  // What a calendar that was told so much asks the next time; and what nobody's cache keeps.
  const { etag } = answer.headers;
  const head = await phone.call("HEAD", path);
  const again = await phone.get(path, { "if-none-match": etag });
  const other = await phone.get(path, { "if-none-match": `"${"0".repeat(64)}"` });
  out.push(is(head, 200), that(head.headers.etag === etag && head.bytes.length === 0, "HEAD is not as GET"), is(again, 304), that(again.bytes.length === 0 && again.headers.etag === etag, "a body after 304"), is(other, 200));
  out.push(that(answer.headers["set-cookie"] === undefined && answer.headers["content-disposition"] === 'inline; filename="evenings.ics"', JSON.stringify(answer.headers)));

  // The lead is told everything but the secret, and so is whoever has the database or the log.
  const listed = (await lead.get("/api/calendar-links")).json.links;
  out.push(that(listed.length === 1 && listed[0].squad === kSquad && listed[0].state === "open" && listed[0].made_by !== "" && listed[0].asked === kDay && listed[0].left.length === 0, JSON.stringify(listed)));
  const secret = path.slice("/calendar/".length, -".ics".length);
  out.push(that(!JSON.stringify(listed).includes(secret), "the secret is told twice"));
  out.push(that(!wholeFolder(server.folder).includes(secret), "the secret lies in the ledger's folder"), that(!server.log.includes(secret) && server.log.includes("followed-calendar"), "the secret is in the log"));
  out.push(that(server.lines().filter((line) => line.includes("make-calendar-link")).every((line) => /"account":"a-[0-9a-f]{16}"/.test(line)), "nobody made it"));
  await server.restart();
  out.push(is(await phone.get(path), 200), that((await phone.get(path)).headers.etag === etag, "another text after a restart"));
  const second = await make();
  out.push(that(second !== path, "the same twice"), is(await phone.get(path), 404, "not-found"), is(await phone.get(second), 200));
  return out;
}

// A calendar keeps of each UID the one with the highest SEQUENCE.
async function follows({ people, change, make, lead }) {
  const path = await make();
  const phone = people.nobody();
  const first = await phone.get(path);
  const tuesdays = (answer) => eventsOf(answer).filter(({ DTSTART }) => new Date(`${DTSTART.slice(0, 4)}-${DTSTART.slice(4, 6)}-${DTSTART.slice(6, 8)}T12:00:00Z`).getUTCDay() === 2);
  const file = `squads/${kSquad}.toml`;
  change(file, (text) => text.replace('weekday = "tuesday"\nstart = 18:00:00', 'weekday = "tuesday"\nstart = 18:30:00'));
  const moved = await phone.get(path);
  const out = [is(first, 200), is(moved, 200), that(tuesdays(first).length > 3, first.text)];
  out.push(that(tuesdays(moved).every(({ UID, DTSTART, SEQUENCE, STATUS }, i) => UID === tuesdays(first)[i].UID && DTSTART.endsWith("T183000") && SEQUENCE === "1" && STATUS === "CONFIRMED"), moved.text.slice(0, 900)));
  out.push(that(moved.headers.etag !== first.headers.etag && eventsOf(moved).length === eventsOf(first).length, "not the same evenings"), is(await phone.get(path, { "if-none-match": first.headers.etag }), 200));

  // A week without: called off, each with a higher number, and on again when it is taken back.
  const from = later(kDay, 7);
  const holiday = `\n[[holiday]]\nname = "No heating"\nfrom = ${from}\nto = ${later(from, 6)}\n`;
  change("club.toml", (text) => text.replace("\n[[strip]]", `${holiday}\n[[strip]]`));
  const without = await phone.get(path);
  const off = eventsOf(without).filter(({ STATUS }) => STATUS === "CANCELLED");
  const inIt = ({ DTSTART }) => DTSTART.slice(0, 8) >= from.replaceAll("-", "") && DTSTART.slice(0, 8) <= later(from, 6).replaceAll("-", "");
  out.push(that(off.length >= 2 && off.every(inIt) && off.every(({ SEQUENCE }) => Number(SEQUENCE) > 0), without.text.slice(0, 900)), that(!without.text.includes("No heating"), "the reason is not due"));
  change("club.toml", (text) => text.replace(holiday, ""));
  const back = await phone.get(path);
  const same = eventsOf(back).filter(inIt);
  out.push(that(same.length === off.length && same.every(({ UID, STATUS, SEQUENCE }) => STATUS === "CONFIRMED" && Number(SEQUENCE) > Number(off.find((one) => one.UID === UID).SEQUENCE)), back.text.slice(0, 900)));

  // A folder with a fault: come back later, so that the calendar keeps what it has.
  change(file, (text) => `${text}\n[[week]\n`);
  const broken = await phone.get(path);
  out.push(is(broken, 503, "no-calendar-now"), is(await phone.get(path), 503), is(await lead.get("/api/calendar-links"), 200));
  change(file, (text) => text.replace("\n[[week]\n", ""));
  out.push(that((await phone.get(path)).headers.etag === back.headers.etag, "another text after the fault"));
  return out;
}

async function strangers({ people, lead, make }) {
  const path = await make();
  const nobody = () => people.nobody();
  const unknown = await nobody().get("/calendar-of-nobody/x.ics");
  const secret = path.slice("/calendar/".length, -".ics".length);
  const wrong = [secret, `${secret}.ICS`, `${secret}.icsx`, `${secret}..ics`, ".ics", `${secret.slice(0, -1)}.ics`, `${secret}A.ics`, `${"A".repeat(43)}.ics`, `${secret.toLowerCase()}.ics`, `${secret}.ics/`, `${secret}.ics%00`, `..%2f${secret}.ics`, `${"x".repeat(9000)}.ics`, `%27%20OR%201=1--.ics`, "null.ics", "undefined.ics"];
  const out = [is(unknown, 404, "not-found")];
  const without = ({ headers }) => JSON.stringify(Object.entries(headers).filter(([name]) => name !== "date"));
  for (const name of wrong.filter((one) => one !== `${secret}.ics`)) {
    const answer = await nobody().get(`/calendar/${name}`);
    out.push(that(answer.status === 404 && answer.text === unknown.text && without(answer) === without(unknown), `${name.slice(0, 60)}: ${answer.status} ${answer.text.slice(0, 100)}`));
  }
  for (const more of [{ cookie: "__Host-lanework=x" }, { authorization: `Bearer ${secret}` }, { range: "bytes=0-10" }]) out.push(is(await nobody().get(path, more), 200));
  out.push(is(await nobody().get(`${path}?squad=${kOther}`), 200), that((await nobody().get(`${path}?squad=${kOther}`)).text.includes("Kestrels"), "the query chose a squad"));
  out.push(is(await nobody().post(path), 405, "no-such-method"), is(await nobody().call("DELETE", path), 405, "no-such-method"));
  // Its secret is good for nothing else, and nothing else's is good for it.
  out.push(is(await nobody().as({ cookie: secret }).get("/api/me"), 401), is(await nobody().as({ device: secret }).get("/api/device/squads"), 401), is(await nobody().post("/api/activate", { link: secret, password: "seventeen grey gulls" }), 410));
  const pairing = await lead.post("/api/pairings");
  out.push(is(await nobody().get(`/calendar/${pairing.json.link}.ics`), 404, "not-found"));

  // One who asks all the time waits; whoever asks from elsewhere does not.
  const eager = nobody();
  const answers = [];
  for (let i = 0; i < 70; i++) answers.push(await eager.get(i % 2 === 0 ? path : `/calendar/${"B".repeat(43)}.ics`));
  const slowed = answers.filter(({ status }) => status === 429);
  out.push(that(slowed.length >= 5 && slowed.every(({ headers, json }) => Number(headers["retry-after"]) >= 1 && json.error === "too-fast"), `${slowed.length} of 70 were slowed`), is(await nobody().get(path), 200), is(await lead.get("/api/me"), 200));
  return out;
}

async function madeAndTakenBack({ people, lead, make }) {
  const [coach, recorder, board] = [await people.signIn("coach"), await people.signIn("recorder"), await people.signIn("board")];
  const out = [];
  out.push(is(await lead.post(`${kLink}/take-back`), 404, "not-found"), is(await lead.post("/api/squads/u99-none/calendar-link"), 404, "not-found"));
  for (const caller of [coach, recorder, board]) out.push(is(await caller.get("/api/calendar-links"), 403, "not-your-role"), is(await caller.post(`${kLink}/take-back`), 404, "not-found"), that([403, 404].includes((await caller.post(kLink)).status), "not the lead"));
  const [path, phone] = [await make(), people.nobody()];
  out.push(is(await phone.get(path), 200), is(await lead.post(`${kLink}/take-back`), 200), is(await phone.get(path), 404, "not-found"), is(await lead.post(`${kLink}/take-back`), 404, "not-found"));
  const after = await make();
  const { links } = (await lead.get("/api/calendar-links")).json;
  out.push(that(links.length === 2 && links[0].state === "open" && links[1].state === "taken-back" && links[1].taken_back_by !== "" && links[1].left === undefined, JSON.stringify(links)));

  // A coach whose charge ends may still have the address: the lead is told, until it is made anew.
  const { accounts } = (await lead.get("/api/accounts")).json;
  const ours = accounts.find(({ role, charges }) => role === "coach" && charges.some(({ squad }) => squad === kSquad));
  await pause(1100); // the server's clock has whole seconds
  out.push(that(ours !== undefined, "no coach of the squad"), is(await lead.post(`/api/accounts/${ours.account}/end`), 200));
  const left = (await lead.get("/api/calendar-links")).json.links[0];
  out.push(that(left.left.includes(ours.name), JSON.stringify(left)), is(await phone.get(after), 200));
  await make();
  out.push(that(!(await lead.get("/api/calendar-links")).json.links[0].left.includes(ours.name), "told for ever"));
  return out;
}

// Another server of the club's may have the folder: it is made all the same, and asked for again.
async function withoutAFolder({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy"] });
  const lead = await new People(demo, server, contract).signIn("lead");
  const made = await lead.post(kLink);
  const out = [is(made, 201), is(await lead.as({}).get(made.json.path), 503, "no-calendar-now")];
  await server.stop();
  return all(out);
}

export const calendarLinks = [
  { name: "routes: a calendar's address gives place and time, and nobody", run: (context) => atAClub(context, whatItGives) },
  { name: "routes: a calendar's address follows what is changed", run: (context) => atAClub(context, follows) },
  { name: "routes: a calendar's address is tried by strangers", run: (context) => atAClub(context, strangers) },
  { name: "routes: a calendar's address is made, made anew and taken back", run: (context) => atAClub(context, madeAndTakenBack) },
  { name: "routes: a calendar's address without a folder", run: withoutAFolder },
];
