// Cards and slips as the desk prints them: made by the server, from the folder, the ledger and the plan that stands.
import { spawnSync } from "node:child_process";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { all, entry, is, kSession, that } from "./expect.mjs";
import { People } from "./people.mjs";

const kSquad = kSession.squad;
const textOf = (answer) => spawnSync("pdftotext", ["-layout", "-", "-"], { input: answer.bytes, encoding: "utf8" }).stdout;
const inOneLine = (text) => text.replace(/\s+/g, " ");
const nameOf = ({ day, start }) => `${day}-${start.replace(":", "")}`;
const mondayOf = (day) => {
  const at = new Date(`${day}T12:00:00Z`);
  return new Date(at - ((at.getUTCDay() + 6) % 7) * 86400000).toISOString().slice(0, 10);
};

async function paper({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", "demo/quillmere"] });
  const people = new People(demo, server, contract);
  const [lead, coach] = [await people.signIn("lead"), await people.signIn("coach")];
  const { evenings } = (await lead.get(`/api/squads/${kSquad}/evenings`)).json;
  const [next] = evenings;
  const of = (kind, which = nameOf(next)) => `/api/squads/${kSquad}/${kind}/${which}`;
  const { roster } = (await lead.get(`/api/squads/${kSquad}`)).json;
  const readsOf = async (what) => (await lead.get("/api/reads")).json.reads.filter((one) => one.what === what).length;

  const card = await lead.get(of("card"));
  const words = inOneLine(textOf(card));
  const out = [is(card, 200), that(words.includes("Under-13 Kestrels") && words.includes("Local rules and licensed practice come first"), words.slice(0, 500))];
  out.push(that(card.headers["content-disposition"] === `inline; filename="${kSquad}-${nameOf(next)}-card.pdf"`, card.headers["content-disposition"]));
  out.push(that(roster.length > 5 && roster.every(({ name }) => !new RegExp(`\\b${name}\\b`).test(words)), "a name stands on the card"));
  out.push(that(await readsOf("card") === 0, "a card is nothing about anybody"));

  // Who is held back is told on the next slip, and the card still names nobody.
  const held = roster.find(({ player }) => player === "Q07");
  const restricted = await people.device("lead").post("/api/sync", { client: 1, most: 0, entries: [entry("restriction", { player: held.player, sits_out: true, instruction: "sits out until Sunday" })] });
  const slip = await lead.get(of("slip"));
  out.push(is(restricted, 200), is(slip, 200), that(inOneLine(textOf(slip)).includes(held.name) && /sits out until Sunday/i.test(inOneLine(textOf(slip))), textOf(slip)));
  out.push(that(!inOneLine(textOf(await lead.get(of("card")))).includes(held.name), "a name stands on the card"), that(await readsOf("slip") === 1, "the slip was read and nobody wrote it down"));

  const monday = mondayOf(next.day);
  const thatWeek = evenings.filter(({ day }) => mondayOf(day) === monday);
  const week = await lead.get(of("cards", monday));
  const sides = textOf(week).split("\f").length - 1;
  out.push(is(week, 200), that(sides >= thatWeek.length && sides % 2 === 0, `${sides} sides for ${thatWeek.length} evenings`));
  out.push(is(await coach.get(of("card")), 200), is(await coach.get(of("slip")), 200), is(await coach.get(of("cards", monday)), 200), is(await coach.get(`/api/squads/u12-dunnocks/card/${nameOf(next)}`), 404, "not-found"));
  for (const which of ["2026-12-01", "2026-13-01-1800", "2026-12-01-1861", "2026-12-01-18:00", nameOf({ ...next, start: "03:07" }), "1999-01-01-1800"]) out.push(is(await lead.get(of("card", which)), 404, "not-found"), is(await lead.get(of("slip", which)), 404, "not-found"));
  out.push(is(await lead.get(of("cards", next.day === monday ? "2026-11-24" : next.day)), 404, "not-found"), is(await lead.get(of("cards", "1999-01-04")), 404, "not-found"));
  const pack = await lead.get(`/api/squads/${kSquad}/clinic-pack`);
  out.push(is(pack, 200), that(textOf(pack).split("\f").length - 1 === 2 && inOneLine(textOf(pack)).includes("Under-13 Kestrels"), textOf(pack)));
  const calendar = await coach.get(`/api/squads/${kSquad}/calendar`);
  const begins = evenings.map(({ day, start }) => `DTSTART:${day.replaceAll("-", "")}T${start.replace(":", "")}00`);
  out.push(is(calendar, 200), that(begins.every((line) => calendar.text.includes(`${line}\r\n`)), calendar.text.slice(0, 600)), that(roster.every(({ name }) => !new RegExp(`\\b${name}\\b`).test(calendar.text)), "a name stands in the calendar"));
  for (const what of ["clinic-pack", "calendar"]) out.push(is(await coach.get(`/api/squads/u12-dunnocks/${what}`), 404, "not-found"));
  await server.stop();
  return all(out);
}

// Nine drills that must be, in the shortest evening that there is.
async function nothingFits({ demo, contract }) {
  const club = demo.file("club-where-nothing-fits");
  cpSync("demo/quillmere", club, { recursive: true });
  const file = `${club}/squads/${kSquad}.toml`;
  const pins = ["easy-laps", "strides", "squat", "side-plank", "high-skip", "plant-and-cut", "single-leg-bridge", "jump-and-stick", "reach-on-one-leg"].map((drill) => `{ drill = "${drill}" }`).join(", ");
  writeFileSync(file, `${readFileSync(file, "utf8").replaceAll("minutes = 20", "minutes = 5")}\n[locks]\npins = [${pins}]\n`);
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", club] });
  const lead = await new People(demo, server, contract).signIn("lead");
  const evenings = await lead.get(`/api/squads/${kSquad}/evenings`);
  const next = evenings.json.evenings?.find(({ match_day }) => !match_day);
  const out = [is(evenings, 200), that(next !== undefined, evenings.text.slice(0, 300))];
  for (const where of [`card/${nameOf(next)}`, `slip/${nameOf(next)}`]) {
    const answer = await lead.get(`/api/squads/${kSquad}/${where}`);
    out.push(is(answer, 409, "nothing-fits"), that(/nothing fits; .+/.test(answer.json?.what), answer.text));
  }
  // Among the cards of a week a page says it, so that none is missing without a word.
  const week = await lead.get(`/api/squads/${kSquad}/cards/${mondayOf(next.day)}`);
  out.push(is(week, 200), that(/No card for this evening.*Nothing fits; .*the slot of 5 min/.test(inOneLine(textOf(week))), textOf(week)));
  await server.stop();
  return all(out);
}

export const deskPaper = [
  { name: "routes: cards and slips for the desk", run: paper },
  { name: "routes: a card where nothing fits", run: nothingFits },
];
