// The log and the counters: each line parses and has the keys that are meant to be there; nothing that is somebody's, and
// no secret, stands in any of it; refusals are told with their reason; counters are for this machine only.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { networkInterfaces } from "node:os";
import { join } from "node:path";
import { matrixRoutes } from "../../tools/openapi.mjs";
import { Caller, cookieOf } from "./caller.mjs";
import { all, entry, is, that, wrapUp } from "./expect.mjs";
import { readMetrics } from "./metrics_format.mjs";
import { pair } from "./every_route.mjs";
import { People } from "./people.mjs";
import { exchange } from "./raw.mjs";
import { certificate } from "./tls.mjs";

const kCanary = "Canaria-Quetzalcoatl";
const kGrownUp = "Volunteera Xylander";  // an account's name, which lies in the database in the clear, and in no log
const kNote = "Notabene-Quince";  // so does the note of an evening
const kHere = { "x-forwarded-for": undefined, "x-forwarded-proto": undefined };
const kKeys = {
  time: /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/, event: /^[a-z-]+$/, route: /^[a-z-]+$/, method: /^(GET|POST|other)$/, status: /^\d{3}$/, microseconds: /^\d+$/,
  account: /^a-[0-9a-f]{16}$/, device: /^d-[0-9a-f]{16}$/, why: /^[a-z-]+$/,
};

function faultsOfLine(line, routes) {
  let row;
  try {
    row = JSON.parse(line);
  } catch {
    return `no JSON: ${line}`;
  }
  for (const [key, value] of Object.entries(row)) {
    if (!kKeys[key]?.test(String(value))) return `${key} in ${line}`;
  }
  // What the server does by itself has no route and no status.
  if (/^(not-)?forgotten$/.test(row.event)) return row.time && Object.keys(row).length === 2 ? "" : `more than is known of it: ${line}`;
  if (!routes.has(row.route)) return `no route of the matrix: ${line}`;
  return row.time && row.event && row.status ? "" : `something is missing: ${line}`;
}

// Everything that a club would not want to read in a log, sent everywhere that anything can be sent.
async function everywhere({ demo, server, people, contract }) {
  const secrets = [];
  const keep = (...some) => secrets.push(...some.filter((one) => typeof one === "string" && one.length >= 6));
  const lead = await people.signIn("lead");
  keep(lead.cookie, ...Object.values(demo.secrets), people.authenticators.lead.last.toString());
  const nobody = people.nobody();
  const sign_in = "volunteera.xylander";
  const added = await lead.post("/api/accounts", { sign_in, name: kGrownUp, role: "coach", charges: [{ squad: "u13-kestrels" }] });
  keep(added.json.link);
  const password = `${kCanary} password`;
  keep(password, password.toLowerCase());
  await nobody.post("/api/activate", { link: added.json.link, password });
  const begun = await nobody.post("/api/sign-in", { sign_in, password });
  const coach = nobody.as({ cookie: cookieOf(begun) });
  keep(coach.cookie);
  const { opened, claimed, caller } = await pair(lead, people, added.json.account);
  keep(opened.json.link, claimed.json.secret, ...[claimed.json.code].map((code) => `"${code}"`));
  const factor = await coach.post("/api/second-factor/begin");
  keep(factor.json.secret, factor.json.link);
  await nobody.post("/api/sign-in", { sign_in: kCanary, password: kCanary, code: kCanary });
  await nobody.post("/api/sign-in", { sign_in: password, password: kCanary });
  await nobody.post("/api/sign-in", `{"sign_in": "${kCanary}", "password": ${kCanary}`);
  await caller.post("/api/sync", { client: 1, entries: [wrapUp({ note: kNote }), entry("hurt", { player: kCanary }), wrapUp({ happened: kCanary }), entry("hurt", { player: "Q09", place: kCanary })] });
  await caller.post("/api/sync", { client: kCanary, [kCanary]: kCanary });
  await lead.post("/api/players/Q09/export", { verified: kCanary });
  for (const where of [`/api/squads/${kCanary}`, `/${kCanary}`, `/api/players/${kCanary}/timeline`, `/api/me?q=${kCanary}`, `/api/week/${kCanary}`, `/api/players/Q09/timeline`]) await lead.get(where);
  await lead.get("/api/me", { "user-agent": kCanary, referer: `https://${kCanary}/`, cookie: `lanework=${kCanary}`, authorization: `Bearer ${kCanary}`, "x-request-id": kCanary });
  await lead.call(kCanary.toUpperCase().slice(0, 7), "/api/me").catch(() => {});
  await exchange(server, contract, `${kCanary} / HTTP/1.1\r\nHost: ${kCanary} x\r\n\r\n`);
  await lead.post("/api/players/Q09/erase", { player: "Q09" });
  return secrets;
}

const namesOfPlayers = (demo) => demo.players ??= readdirSync("demo/quillmere", { recursive: true }).filter((name) => /roster.*\.csv$/.test(name))
  .flatMap((name) => readFileSync(join("demo/quillmere", name), "utf8").split("\n").slice(1).map((line) => line.split(",")[1]?.replaceAll('"', "").trim()).filter((one) => one?.includes(" ")));

async function nothingPrivate({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy"] });
  const people = new People(demo, server, contract);
  const secrets = await everywhere({ demo, server, people, contract });
  const metrics = await people.nobody().get("/metrics", kHere);
  await server.stop();
  const routes = new Set([...matrixRoutes().map(({ name }) => name), "file", "none"]);
  const out = server.lines().map((line) => faultsOfLine(line, routes));
  const text = `${server.log}\n${server.said}\n${metrics.text}`;
  const names = namesOfPlayers(demo);
  const leaked = [kCanary, "quetzalcoatl", "xylander", "quince", "Q09", "u13-kestrels", "198.18.", ...names, ...secrets].filter((one) => text.toLowerCase().includes(one.toLowerCase()));
  out.push(that(leaked.length === 0, `in the log or the counters: ${leaked}`), that(secrets.length > 15 && names.length > 50, `${secrets.length} secrets, ${names.length} names looked for`), that(server.lines().length > 20, `${server.lines().length} lines`));
  // Nor in the database as it lies on the disk, nor where a crash or a temporary file would be.
  const files = readdirSync(server.folder).filter((name) => name !== "demo.env");
  for (const name of files.filter((one) => statSync(join(server.folder, one)).isFile())) {
    const bytes = readFileSync(join(server.folder, name), "latin1");
    const lying = [kCanary, kCanary.toLowerCase(), ...secrets].filter((one) => bytes.includes(Buffer.from(one).toString("latin1")));
    out.push(that(lying.length === 0, `in ${name}: ${lying.map((one) => `...${bytes.slice(Math.max(0, bytes.indexOf(one) - 120), bytes.indexOf(one) + 60).replace(/[^ -~]/g, ".")}`)}`));
  }
  return all(out);
}

// What is refused is told, with the reason and by whom.
async function refusalsAreTold({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy"] });
  const people = new People(demo, server, contract);
  const coach = await people.signIn("coach");
  await people.nobody().post("/api/sign-in", { sign_in: "coach", password: "wrong" });
  await coach.get("/api/accounts");
  await coach.get("/api/squads/u12-dunnocks");
  await people.nobody().get("/api/me");
  await people.nobody().post("/api/sign-in", {}, { origin: "https://elsewhere.example" });
  await people.nobody().post("/api/pairings/claim", { link: "none", label: "x" });
  await server.stop();
  const me = server.lines().map((line) => JSON.parse(line)).find(({ account }) => account)?.account;
  const rows = server.lines().map((line) => JSON.parse(line)).map(({ route, status, why, account }) => `${route} ${status} ${why ?? ""} ${account === me ? "coach" : account ?? ""}`.trim());
  const wanted = ["sign-in 401 sign-in-failed", "accounts 403 not-your-role coach", "squad 404 not-found coach", "me 401 sign-in-needed", "sign-in 403 not-from-here", "claim-pairing 410 link-unknown"];
  return all(that(me !== undefined, server.log), wanted.map((line) => that(rows.includes(line), `no '${line}' in\n${rows.join("\n")}`)));
}

async function counters({ demo, contract }) {
  const server = await demo.serve();
  const people = new People(demo, server, contract);
  const nobody = people.nobody();
  const read = async () => readMetrics((await nobody.get("/metrics")).text);
  const value = (samples, name, labels = {}) => samples.find((one) => one.name === name && Object.entries(labels).every(([key, text]) => one.labels[key] === text))?.value ?? 0;
  const before = await read();
  for (let i = 0; i < 7; i++) await nobody.get("/health");
  for (let i = 0; i < 3; i++) await nobody.get("/api/me");
  await nobody.get(`/${kCanary}`);
  const one = wrapUp();
  for (let i = 0; i < 2; i++) await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: [one, { id: "none" }] });
  await exchange(server, contract, "GET\r\n\r\n");
  const after = await read();
  const routes = new Set([...matrixRoutes().map(({ name }) => name), "file", "none"]);
  const labels = { route: (text) => routes.has(text), class: (text) => /^[1-5]xx$/.test(text), le: () => true, verdict: (text) => ["stored", "known", "other-content", "kept-aside", "dropped", "unreadable"].includes(text) };
  const strange = after.filter((sample) => Object.entries(sample.labels).some(([key, text]) => !labels[key]?.(text)));
  const grown = (name, of) => value(after, name, of) - value(before, name, of);
  const wanted = [["lanework_requests_total", { route: "health", class: "2xx" }, 7], ["lanework_requests_total", { route: "me", class: "4xx" }, 3], ["lanework_requests_total", { route: "none", class: "4xx" }, 1], ["lanework_request_seconds_count", { route: "health" }, 7],
    ["lanework_entries_total", { verdict: "stored" }, 1], ["lanework_entries_total", { verdict: "known" }, 1], ["lanework_entries_total", { verdict: "unreadable" }, 2], ["lanework_requests_refused_total", {}, 1]];
  const series = new Set(after.map(({ name, labels: some }) => `${name}${JSON.stringify(some)}`)).size;
  await server.stop();
  return all(that(strange.length === 0, JSON.stringify(strange[0])), wanted.map(([name, of, by]) => that(grown(name, of) === by, `${name} ${JSON.stringify(of)} grew by ${grown(name, of)}, not ${by}`)), that(series < 40 * 18, `${series} series`));
}

// The parser is no rubber stamp.
async function parserBites() {
  const sound = '# HELP a A.\n# TYPE a counter\na{b="c"} 1\n';
  const broken = [sound.trimEnd(), sound.replace("\n", "\r\n"), sound.replace("# TYPE a counter\n", ""), sound.replace('a{b="c"} 1', 'a{b="c"}1'), sound.replace("} 1", "} one"), `${sound}a{b="c"} 2\n`, sound.replace('"c"', "c"), sound.replace("counter", "count"), sound.replace('a{b="c"}', "d"), sound.replace("# HELP a A.\n", ""), `${sound}${sound}`,
    '# HELP h H.\n# TYPE h histogram\nh_bucket{le="1"} 2\nh_bucket{le="+Inf"} 1\nh_sum 1\nh_count 1\n', '# HELP h H.\n# TYPE h histogram\nh_bucket{le="1"} 1\nh_sum 1\nh_count 1\n'];
  readMetrics(sound);
  const taken = broken.filter((text) => {
    try {
      readMetrics(text);
      return true;
    } catch {
      return false;
    }
  });
  return that(taken.length === 0, `taken: ${taken[0]}`);
}

// From another address than this machine's own: nobody's business.
async function fromElsewhere({ demo, contract }) {
  const address = Object.values(networkInterfaces()).flat().find((one) => one.family === "IPv4" && !one.internal)?.address;
  if (!address) return { detail: "", note: "only by a proxy's word: this machine has no other address" };
  const { key, file } = certificate(demo);
  const server = await demo.serve({ flags: ["--tls-key", key, "--tls-certificate", file, "--address", "0.0.0.0"] });
  const near = await new Caller(server, contract).get("/metrics");
  const far = new Caller(server, contract);
  far.host = address;
  const refused = await far.get("/metrics");
  const forwarded = await far.get("/metrics", { "x-forwarded-for": "127.0.0.1" });
  await server.stop();
  return all(is(near, 200), is(refused, 404, "not-found"), is(forwarded, 404, "not-found"));
}

export const logs = [
  { name: "logs: nothing that is somebody's, and no secret", run: nothingPrivate },
  { name: "logs: refusals are told", run: refusalsAreTold },
  { name: "metrics: they parse, and count what happened", run: counters },
  { name: "metrics: the parser finds mistakes", run: parserBites },
  { name: "metrics: from this machine only", run: fromElsewhere },
];
