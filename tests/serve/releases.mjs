// What the board is given: drawn, made, read; frozen; nothing of anybody in it; and what can be worked out of it, against
// HiGHS, which gets nothing but the answers themselves.
import { appendFileSync, cpSync } from "node:fs";
import { all, entry, is, kDay, that } from "./expect.mjs";
import { People } from "./people.mjs";

const kDayMilliseconds = 86400000;
const daysAgo = (days) => new Date(Date.parse(kDay) - days * kDayMilliseconds).toISOString().slice(0, 10);
const kHalf = { from: daysAgo(299), until: daysAgo(150) };
const kSeason = { from: daysAgo(299), until: daysAgo(1) };
const kTables = ["squads", "settings", "regions"];

// So many injuries of a squad's players on one day, opened by the lead; another child each.
function opened(players, squad, day, many, setting, region) {
  return Array.from({ length: many }, (_, index) => entry("injury-opened", { player: players[index % players.length], squad, day, what: [`setting ${setting}`, `region ${region}`] }));
}

const kHurt = [
  ["u13-kestrels", 200, 9, "training", "knee"], ["u16-merlins", 200, 8, "match", "ankle"], ["u10-wrens", 200, 3, "match", "thigh"], ["u12-dunnocks", 220, 6, "training", "knee"],
  ["u13-kestrels", 40, 2, "training", "knee"], ["u16-merlins", 40, 7, "match", "ankle"], ["u12-dunnocks", 40, 8, "match", "thigh"],
];

async function enterInjuries(lead, device) {
  const players = new Map();
  for (const squad of new Set(kHurt.map(([one]) => one))) players.set(squad, (await lead.get(`/api/squads/${squad}`)).json.roster.map(({ player }) => player));
  const entries = kHurt.flatMap(([squad, ago, many, setting, region]) => opened(players.get(squad), squad, daysAgo(ago), many, setting, region));
  const agreed = [...new Set(entries.map(({ player }) => player))].flatMap((player) =>
    ["injury-record", "statistics"].map((purpose) => entry("consent", { player, purpose, by: "guardian", answer: "given", day: daysAgo(250) })));
  const asked = await device.post("/api/sync", { client: 1, most: 0, entries: agreed });
  if (!asked.json.verdicts.every(({ verdict }) => verdict === "stored")) return asked.text.slice(0, 300);
  const sent = await device.post("/api/sync", { client: 1, most: 0, entries });
  return that(sent.json.verdicts.every(({ verdict }) => verdict === "stored"), sent.text.slice(0, 300));
}

// Everything that was released as an integer program: what each part has of each row, and the sums that were given.
// 'rest' is what of the last release no other has.
function programOf(releases) {
  const whole = releases.at(-1);
  const parts = [...releases.slice(0, -1).map(({ release }) => `p${release}`), "rest"];
  const column = (part, table, index) => `${part}_${table}_${index}`;
  const rows = [];
  const columns = new Set();
  const within = (release) => (release === whole ? parts : [`p${release.release}`]);
  for (const table of kTables) {
    const keys = whole.injuries[table].map(({ key }) => key);
    for (const part of parts) keys.forEach((_, index) => columns.add(column(part, table, index)));
    for (const release of releases) {
      const sum = keys.flatMap((_, index) => within(release).map((part) => column(part, table, index)));
      rows.push(`${sum.join(" + ")} = ${release.injuries.all}`);
      for (const { key, count } of release.injuries[table].filter((row) => row.count !== undefined)) rows.push(`${within(release).map((part) => column(part, table, keys.indexOf(key))).join(" + ")} = ${count}`);
    }
  }
  const of = ({ from, until, days, table, key }) => {
    const release = releases.find((one) => one.from === from && one.until === until);
    const index = whole.injuries[table].findIndex((row) => row.key === key);
    return (days === "all" ? within(release) : ["rest"]).map((part) => column(part, table, index)).join(" + ");
  };
  const text = (sense, goal) => `${sense}\n goal: ${goal}\nSubject To\n${rows.map((row, index) => ` r${index}: ${row}`).join("\n")}\nGeneral\n ${[...columns].join("\n ")}\nEnd\n`;
  return { of, text };
}

async function boundsFault(releases, notGiven) {
  const { default: load } = await import("highs");
  const highs = await load();
  const { of, text } = programOf(releases);
  const faults = [];
  for (const one of notGiven) {
    const [low, high] = ["Minimize", "Maximize"].map((sense) => {
      const said = highs.solve(text(sense, of(one)), { mip_rel_gap: 0 });
      return said.Status === "Optimal" ? Math.round(said.ObjectiveValue) : said.Status;
    });
    if (low !== one.least || high !== one.most) faults.push(`${one.table} ${one.key} ${one.days} ${one.from}: ours ${one.least} to ${one.most}, HiGHS ${low} to ${high}`);
  }
  return that(notGiven.length > 20 && faults.length === 0, `${notGiven.length} numbers; ${faults.join("; ")}`);
}

function shownFault(release, text) {
  const rows = kTables.flatMap((table) => release.injuries[table]);
  const small = rows.filter((row) => row.count !== undefined && row.count < 5);
  const both = rows.filter((row) => (row.count === undefined) !== (row.hidden === true));
  const ids = text.match(/"Q\d+"|Q\d\d/g);
  return all(that(small.length === 0 && both.length === 0, JSON.stringify([small, both])), that(ids === null, `ids: ${ids}`), that(rows.some(({ count }) => count >= 5), "nothing is shown"), that(rows.some(({ hidden }) => hidden), "nothing is hidden"));
}

async function madeAndRead({ people, lead }) {
  const out = [await enterInjuries(lead, people.device("lead"))];
  const board = await people.signIn("board");
  const drawn = await lead.post("/api/release-preview", kHalf);
  out.push(is(drawn, 200), that((await board.get("/api/releases")).json.releases.length === 0, "a preview is no release"));
  const half = await lead.post("/api/releases", kHalf);
  const season = await lead.post("/api/releases", kSeason);
  out.push(is(half, 201), is(season, 201), that(JSON.stringify(half.json.release.injuries) === JSON.stringify(drawn.json.release.injuries), "another than was drawn"));
  const listed = await board.get("/api/releases");
  out.push(is(listed, 200), that(listed.json.releases.map(({ from, until }) => `${from} ${until}`).join() === [kHalf, kSeason].map(({ from, until }) => `${from} ${until}`).join(), listed.text));
  for (const [number, made] of [[1, half], [2, season]]) {
    const read = await board.get(`/api/releases/${number}`);
    out.push(is(read, 200), that(JSON.stringify(read.json) === JSON.stringify(made.json.release), "the board reads something else than was made"), that(read.text === (await lead.get(`/api/releases/${number}`)).text, "the lead reads something else"), shownFault(read.json, read.text));
  }
  out.push(is(await board.get("/api/releases/3"), 404, "not-found"), is(await board.get("/api/squads"), 403, "not-your-role"));
  const counts = new Map(half.json.release.injuries.squads.map((row) => [row.key, row.count]));
  out.push(that(half.json.release.injuries.all === 26 && [undefined, 8, 9].includes(counts.get("u16-merlins")) && counts.get("u10-wrens") === undefined, JSON.stringify([...counts])));
  out.push(that(season.json.release.injuries.squads.find(({ key }) => key === "u13-kestrels").count === undefined || counts.get("u13-kestrels") === undefined, "the season without the half gives 2 away"));
  out.push(await boundsFault([half.json.release], half.json.not_given), await boundsFault([half.json.release, season.json.release], season.json.not_given));
  return all(out);
}

async function frozen({ people, lead }) {
  const out = [is(await lead.post("/api/releases", kHalf), 201)];
  const again = await lead.post("/api/releases", kHalf);
  out.push(is(again, 409, "not-released"), that(/frozen/.test(again.json.what) && again.json.key === "released-already", again.text), is(await lead.post("/api/release-preview", kHalf), 409, "not-released"));
  for (const period of [{ from: daysAgo(200), until: daysAgo(100) }, { from: daysAgo(30), until: daysAgo(1) }, { from: daysAgo(140), until: kDay }, { from: daysAgo(1), until: daysAgo(140) }]) out.push(is(await lead.post("/api/releases", period), 409, "not-released"));
  for (const body of [{}, { from: kHalf.from }, { ...kHalf, squad: "u13-kestrels" }, { from: "autumn", until: kHalf.until }]) out.push(is(await lead.post("/api/releases", body), 400, "not-understood"));
  const [late] = (await lead.get("/api/squads/u13-kestrels")).json.roster;
  await people.device("lead").post("/api/sync", { client: 1, most: 0, entries: opened([late.player], "u13-kestrels", daysAgo(200), 1, "match", "knee") });
  const next = await lead.post("/api/releases", kSeason);
  out.push(is(next, 201), that(next.json.release.remarks.length === 1 && next.json.release.remarks[0].includes(kHalf.from), next.text.slice(-300)));
  // Two at once: one is made.
  const year = { from: daysAgo(700), until: daysAgo(400) };
  const both = await Promise.all([1, 2, 3, 4].map(() => lead.as({ cookie: lead.cookie }).post("/api/releases", year)));
  out.push(that(both.filter(({ status }) => status === 201).length === 1 && both.filter(({ json }) => json.error === "not-released").length === 3, both.map(({ status }) => status).join()));
  return all(out);
}

// The demo's club with an evening a week of which nobody tells.
function clubWithMore(demo) {
  const club = demo.file("club-with-more");
  cpSync("demo/quillmere", club, { recursive: true });
  appendFileSync(`${club}/squads/u13-kestrels.toml`, '\n[[week]]\nweekday = "wednesday"\nstart = 17:00:00\nminutes = 20\n');
  return club;
}

// What is asked, and of how many planned evenings nobody told: given out with the rest; and beside it the next year's rate.
async function asked({ people, lead }) {
  const board = await people.signIn("board");
  const { roster } = (await lead.get("/api/squads/u13-kestrels")).json;
  const year = { from: daysAgo(700), until: daysAgo(400) };
  const words = 'Two evenings of teaching; "120 euros" <b>and a hall</b>. Shall we?';
  const out = [];
  for (const text of [`Thanks to ${roster[0].name}!`, `${roster[1].player} was hurt`, `(${roster[2].name})`]) {
    const answer = await lead.post("/api/releases", { ...year, asked: text });
    out.push(is(answer, 409, "not-released"), that(answer.json.key === "names-a-player", answer.text));
  }
  out.push(is(await lead.post("/api/releases", { ...year, asked: "x".repeat(2401) }), 400, "not-understood"), is(await lead.post("/api/releases", { ...year, asked: "two\nlines" }), 400, "not-understood"), that((await lead.get("/api/releases")).json.releases.length === 0, "something was given out"));
  const first = await lead.post("/api/releases", { ...year, asked: words });
  out.push(is(first, 201), that((await board.get("/api/releases/1")).json.asked === words, "not as it was asked"));
  const { all: told } = first.json.release.sessions;
  out.push(that(told.planned === undefined && told.untold === undefined, "of a season that the calendar does not have"), that(first.json.release.injuries.compared === undefined, "beside nothing"));

  const second = await lead.post("/api/releases", { from: daysAgo(95), until: daysAgo(1) });
  const { all: then, squads } = second.json.release.sessions;
  out.push(is(second, 201), that(second.json.release.asked === undefined, "asked again"), that(then.planned > then.untold && then.untold > 9 && then.planned - then.untold === then.held + then.cut_short + then.missed, JSON.stringify(then)));
  out.push(that(squads.filter(({ untold }) => untold > 0).map(({ key }) => key).join() === "u13-kestrels", "untold of another squad"));
  out.push(that(squads.reduce((sum, one) => sum + one.planned, 0) === then.planned && squads.every(({ planned, untold }) => untold <= planned), "squads and club differ"));
  return all(out);
}

const kSteps = { madeAndRead, frozen, asked };
const kNames = { asked: "what is asked of the board, and what nobody told of", madeAndRead: "the board's releases, and what HiGHS works out of them", frozen: "what was released is frozen" };

export const releases = Object.entries(kSteps).map(([step, work]) => ({
  name: `routes: ${kNames[step]}`,
  async run({ demo, contract }) {
    const server = await demo.serve({ flags: ["--behind-proxy", ...(step === "asked" ? ["--plan-from", clubWithMore(demo)] : [])], mayRestart: true });
    const people = new People(demo, server, contract);
    const said = await work({ demo, contract, server, people, lead: await people.signIn("lead") });
    await server.stop();
    return said;
  },
}));
