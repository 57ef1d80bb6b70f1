// What is sent and is not as it should be, everywhere something can be sent: refused, or without effect; and text that
// means something to a database, a page or a log comes back as it was.
import { matrixRoutes, operations, readOpenapi, resolved } from "../../tools/openapi.mjs";
import { all, entryId, is, that, wrapUp } from "./expect.mjs";
import { People } from "./people.mjs";
import { stateOf } from "./sync.mjs";

const kPlaces = { squad: "u13-kestrels", player: "Q05", account: "a-none", device: "d-none", pairing: "p-none", release: "1", injury: "018f3f6e-0000-7000-8000-000000000001", monday: "2026-11-23", from: "2026-09-01", to: "2026-11-30" };
const filled = (path) => path.replace(/\{(\w+)\}/g, (_, name) => kPlaces[name]);

const withServer = (name, work) => ({
  name: `input: ${name}`,
  async run({ demo, contract }) {
    const server = await demo.serve({ flags: ["--behind-proxy"], mayRestart: true });
    const people = new People(demo, server, contract);
    const lead = await people.signIn("lead");
    const right = (route) => (route.by === "device" ? people.device("coach") : route.by === "browser" ? lead : people.nobody());
    const said = await work({ demo, contract, server, people, lead, right });
    await server.stop();
    return said;
  },
});

const kNoJson = [
  "{", "}", "{}}", '{"a":1}{"b":2}', "{'a':1}", '{"a":1,}', '{"a"}', '{a:1}', "null", "1", '"text"', "true", "[{}]", "NaN", '{"a":NaN}', '{"a":1e999}', '{"a":-}', '{"a":01}', '{"a":"\n"}', '{"a":"\\x"}', '{"a":"\\ud800"}', '{"a":1,"a":2}',
  "{\"a\":\"\0\"}", "\ufeff{}", "/* */{}", "{}//", '{"a":null}', `{"a":${"9".repeat(400)}}`, `{"a":${"[".repeat(100000)}${"]".repeat(100000)}}`, `${'{"a":'.repeat(50000)}1${"}".repeat(50000)}`, "[".repeat(500000),
  Buffer.from([0x7b, 0x22, 0x61, 0x22, 0x3a, 0x22, 0xff, 0xfe, 0x22, 0x7d]), Buffer.from([0x7b, 0x22, 0xc0, 0xaf, 0x22, 0x3a, 0x31, 0x7d]), Buffer.from('{"a":"\ud83d"}', "utf16le"), Buffer.from("7b2261223a22eda08022 7d".replace(" ", ""), "hex"),
];

async function noJson({ people, right }) {
  const out = [];
  const slow = [];
  for (const route of matrixRoutes().filter(({ method, by }) => method === "POST" && by !== "browser")) {
    for (const body of kNoJson) {
      const from = Date.now();
      const answer = await right(route).post(filled(route.path), body);
      out.push(that(answer.status === 400, `${route.name}: ${String(body).slice(0, 60)}: ${answer.status} ${answer.text.slice(0, 200)}`));
      if (Date.now() - from > 5000) slow.push(`${route.name}: ${String(body).slice(0, 40)} took ${Date.now() - from} ms`);
    }
  }
  const lead = right({ by: "browser" });
  for (const body of kNoJson) {
    const answer = await lead.post("/api/accounts", body);
    out.push(that(answer.status === 400, `accounts: ${String(body).slice(0, 60)}: ${answer.status}`));
  }
  return all(out, that(slow.length === 0, slow.join("; ")), is(await people.nobody().get("/ready"), 200));
}

const kOtherTypes = { string: [7, true, [], {}, ["x"], 1.5], integer: ["7", true, [], {}, 1.5, -1, 1e30], boolean: ["true", 1, [], {}], array: ["x", 7, {}, true] };
const kSound = { string: "x", integer: 1, boolean: true, array: [], object: {} };

// Each described key in every wrong type, and keys that would be the server's own.
async function wrongTypes({ right, lead }) {
  const somebody = (await lead.get("/api/accounts")).json.accounts.find(({ sign_in }) => sign_in === "recorder").account;
  const page = readOpenapi();
  const out = [];
  const byName = new Map(matrixRoutes().map((route) => [route.name, route]));
  for (const { name, path, operation } of operations(page).filter(({ method }) => method === "POST")) {
    const route = byName.get(name);
    const schema = resolved(page, operation.requestBody.content["application/json"].schema);
    if (!schema.properties && schema.additionalProperties !== false) continue;
    const properties = Object.fromEntries(Object.entries(schema.properties ?? {}).map(([key, one]) => [key, resolved(page, one)]));
    const sound = Object.fromEntries((schema.required ?? []).map((key) => [key, properties[key].enum?.[0] ?? kSound[properties[key].type]]));
    const ask = (body) => right(route).post(filled(path.replace("{account}", somebody)), body);
    for (const [key, one] of Object.entries(properties)) {
      for (const value of kOtherTypes[one.type]) out.push(is(await ask({ ...sound, [key]: value }), 400, "not-understood").replace(/^./, `${name}.${key} = ${JSON.stringify(value)}: $&`));
    }
    for (const key of schema.required ?? []) {
      const { [key]: _, ...rest } = sound;
      out.push(is(await ask(rest), 400, "not-understood"));
    }
    if (schema.additionalProperties !== false) continue;
    for (const key of ["role", "author", "receipt", "account", "ended", "squad_id", "__proto__", "has_second_factor", ""].filter((one) => !(one in properties))) {
      const answer = await ask(`{${Object.entries(sound).map(([k, v]) => `${JSON.stringify(k)}:${JSON.stringify(v)},`).join("")}${JSON.stringify(key)}:"lead"}`);
      out.push(is(answer, 400, "not-understood").replace(/^./, `${name} with ${key}: $&`));
    }
  }
  return all(out);
}

async function tooMuch({ people, demo, server }) {
  const coach = people.device("coach");
  const before = stateOf(demo, server.folder);
  const out = [];
  try {
    const answer = await coach.post("/api/sync", { client: 1, entries: [wrapUp({ note: "x".repeat(1e7) })] });
    out.push(is(answer, 413));
  } catch (error) {
    out.push(that(["ECONNRESET", "EPIPE"].includes(error.code), `${error}`));
  }
  const large = await coach.as({ device: coach.device }).post("/api/sync", { client: 1, most: 0, entries: [wrapUp({ note: "x".repeat(1e6) })] });
  out.push(is(large, 200), that(large.json?.verdicts[0].verdict === "kept-aside", large.text.slice(0, 200)), that(stateOf(demo, server.folder) === before, "the state is another"));
  return all(out);
}

const kNoPaths = [
  "/../etc/passwd", "/..", "/../../../../etc/passwd", "/page.css/..", "/./page.css", "/%2e%2e/%2e%2e/etc/passwd", "/%2e%2e%2fetc%2fpasswd", "/..%2f", "/..%5c..%5c", "/..\\..\\", "/%252e%252e/", "/%c0%ae%c0%ae/", "//etc/passwd", "//page.css", "/page.css/", "/page.css%00", "/page.css%00.html", "/index.html/", "/page%2ecss",
  "/.git/config", "/.env", "/demo.env", "/ledger.sqlite", "/ledger.key", "/debug", "/admin", "/server-status", "/openapi.yaml", "/api", "/api/", "/api//me", "//api/me", "/api/me/", "/api/../api/me", "/api/%6de", "/API/ME", "/api/me%00", "/api/me%20", "/api/me;x=1", "/api/me.json",
  "/api/squads/", "/api/squads/..", "/api/squads/../me", "/api/squads/%2e%2e", "/api/squads/u13-kestrels/", "/api/squads/u13-kestrels%00", "/api/squads/u13%2dkestrels", "/api/squads/u13-kestrels'", "/api/squads/'%20OR%201=1--", "/api/squads/*", "/api/squads/%25", `/api/squads/${"a".repeat(65)}`, `/api/squads/${"a".repeat(8000)}`, `/${"a/".repeat(4000)}`, `/${"%2e%2e/".repeat(1000)}`,
  "/api/players/Q05/timeline/..", "/api/players/../Q05/timeline", "/api/players//timeline", "/api/players/.Q05/timeline", "/api/week/2026-13-01", "/api/week/2026-02-30", "/api/week/2026-11-23T00:00", "/api/week/last", "/api/week/0000-00-00",
];

async function paths({ lead }) {
  const out = [];
  for (const where of kNoPaths) {
    const answer = await lead.get(where);
    out.push(that(answer.status === 404, `${where.slice(0, 60)}: ${answer.status} ${answer.text.slice(0, 80)}`));
  }
  for (const where of ["/api/me?a=1", "/api/me?../..", "/page.css?v=%00"]) out.push(is(await lead.get(where), 200));
  return all(out);
}

// T10 of the threats: names that are code somewhere.
const kTexts = [
  "O'Neil'); DROP TABLE account;--", "\" OR \"\"=\"", "1; ATTACH DATABASE 'x' AS y", "<img src=x onerror=alert(1)>", "</script><script>alert(1)</script>", "&lt;b&gt; &amp;amp; %3Cb%3E %2527", "${7*7} {{7*7}} #{7*7}", "$(reboot) `reboot` | reboot", "=1+1", "@SUM(A1)", "-2+3", "\u202eevil\u202c \u200f\u2066x\u2069", "\u200b\u200d\ufeffx",
  "👩‍👩‍👧‍👦 🏳️‍🌈 ⚽", `a${"\u0301".repeat(50)}`, "ﷺ ﬁ Å Å", "林小雨 نورة Лада", "\u0085\u2028\u2029", "\\u0000 \\n \\\"", "{\"error\":\"x\"}", "a".repeat(56),
];
const kOrRefused = ["x\u007fy", "a\nb", "a\r\nSet-Cookie: x=y", "a\tb", "\u001b[31mred", "a\u0000b", "\ud800", "x\udc00y", "\ufffe"];

async function texts({ people, lead, server }) {
  const out = [];
  const coach = people.device("coach");
  const whole = (text) => Buffer.byteLength(text) <= 60;
  for (const [text, must] of [...kTexts.map((one) => [one, true]), ...kOrRefused.map((one) => [one, false])]) {
    const said = (what, answer) => `${what} ${JSON.stringify(text)}: ${answer.status} ${answer.text.slice(0, 200)}`;
    const body = (value) => JSON.stringify(value);  // a lone surrogate goes as an escape
    const added = await lead.post("/api/accounts", body({ sign_in: `t-${entryId().slice(-12)}`, name: text, role: "coach" }));
    if (added.status === 201) {
      const row = (await lead.get("/api/accounts")).json.accounts.find(({ account }) => account === added.json.account);
      out.push(that(row.name === text && added.json.name === text, said("name", added)));
    } else out.push(that(added.status === 400 && (!must || !whole(text)), said("name", added)));
    const opened = await lead.post("/api/pairings");
    const claimed = await people.nobody().post("/api/pairings/claim", body({ link: opened.json.link, label: text }));
    if (claimed.status === 201) {
      const confirmed = await lead.post(`/api/pairings/${opened.json.pairing}/confirm`, { code: claimed.json.code });
      const row = (await lead.get("/api/devices")).json.devices.find(({ device }) => device === confirmed.json.device);
      out.push(that(row?.label === text, said("label", confirmed)));
    } else out.push(that(claimed.status === 400 && (!must || !whole(text)), said("label", claimed)));
    const one = wrapUp({ note: text, start: "17:00", more: text, [text]: 1 });
    const sent = await coach.post("/api/sync", body({ client: 1, most: 0, entries: [one] }));
    if (sent.status === 200 && sent.json.verdicts[0].verdict === "stored") {
      const got = await people.device("lead").post("/api/sync", { client: 1, after: sent.json.verdicts[0].receipt - 1, most: 1 });
      const [row] = got.json.entries;
      out.push(that(row.id === one.id && row.note === text && row.more === text && row[text] === 1, said("note", got)));
    } else out.push(that(!must && (sent.status === 400 || sent.json?.verdicts[0].verdict === "kept-aside"), said("note", sent)));
    for (const where of [{ sign_in: text, password: text }, { sign_in: "coach", password: "x", code: text }]) {
      const answer = await people.nobody().post("/api/sign-in", body(where));
      out.push(that([400, 401].includes(answer.status), said("sign-in", answer)));
    }
    const answer = await lead.post("/api/players/Q05/export", body({ verified: text }));
    out.push(that(answer.status === 200 || (!must && answer.status === 400), said("verified", answer)));
  }
  const lines = server.lines();
  const unread = lines.filter((line) => {
    try {
      return typeof JSON.parse(line) !== "object";
    } catch {
      return true;
    }
  });
  return all(out, that(unread.length === 0, `lines of the log that are none: ${unread[0]}`), is(await people.nobody().get("/ready"), 200));
}

const kAllow = { GET: "GET, HEAD", POST: "POST" };

async function methods({ right }) {
  const out = [];
  const routes = matrixRoutes();
  for (const route of routes) {
    const wanted = [...new Set(routes.filter(({ path }) => path === route.path).map(({ method }) => kAllow[method]))].join(", ");
    for (const method of ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND", "GET", "POST", "HEAD"].filter((one) => !wanted.includes(one))) {
      const answer = await right(route).call(method, filled(route.path), method === "POST" ? {} : undefined);
      out.push(that(answer.status === 405 && answer.headers.allow === wanted, `${method} ${route.path}: ${answer.status}, Allow: ${answer.headers.allow}, not ${wanted}`));
    }
  }
  for (const method of ["PUT", "DELETE", "OPTIONS", "TRACE"]) {
    const answer = await right({ by: "nobody" }).call(method, "/page.css");
    out.push(that(answer.status === 405 && answer.headers.allow === "GET, HEAD", `${method} /page.css: ${answer.status} ${answer.headers.allow}`));
    out.push(is(await right({ by: "nobody" }).call(method, "/nothing"), 404, "not-found"));
  }
  return all(out);
}

// What is read changes nothing of what was entered, who there is, and which devices.
async function readingTwice({ demo, server, people, lead }) {
  const lists = async () => JSON.stringify([(await lead.get("/api/accounts")).json, (await lead.get("/api/devices")).json, (await lead.get("/api/pairings")).json, (await lead.get("/api/quarantine")).json]);
  const before = [stateOf(demo, server.folder), await lists()];
  const coach = people.device("coach");
  const out = [];
  for (const route of matrixRoutes().filter(({ method }) => method === "GET")) {
    const caller = route.by === "device" ? coach : lead;
    const [first, second] = [await caller.get(filled(route.path)), await caller.get(filled(route.path))];
    out.push(that(first.status === second.status, `${route.name}: ${first.status}, then ${second.status}`));
    await caller.call("HEAD", filled(route.path));
    await caller.get(`${filled(route.path)}?entries=[]&role=lead`);
  }
  const after = [stateOf(demo, server.folder), await lists()];
  return all(out, that(before[0] === after[0], "the state is another"), that(before[1] === after[1], "the lists are others"));
}

// The server's own files: as they are, compressed, not modified; only reading.
async function files({ people }) {
  const nobody = people.nobody();
  const out = [];
  for (const where of ["/", "/index.html", "/page.css"]) {
    const plain = await nobody.get(where);
    const small = await nobody.get(where, { "accept-encoding": "gzip" });
    const none = await nobody.get(where, { "accept-encoding": "gzip;q=0" });
    const again = await nobody.get(where, { "if-none-match": plain.headers.etag });
    const { gunzipSync } = await import("node:zlib");
    out.push(is(plain, 200), is(small, 200), is(again, 304), that(again.bytes.length === 0 && none.headers["content-encoding"] === undefined, "bytes"));
    const unpacked = small.headers["content-encoding"] === "gzip" ? gunzipSync(small.bytes) : small.bytes;
    out.push(that(unpacked.equals(plain.bytes), `${where}: compressed it is another`), that(/^text\/(html|css); charset=utf-8$/.test(plain.headers["content-type"]) && plain.headers["cache-control"] === "no-cache" && plain.headers.vary === "Accept-Encoding", JSON.stringify(plain.headers)));
    out.push(that((await nobody.call("HEAD", where)).headers["content-length"] === plain.headers["content-length"], "HEAD"));
  }
  return all(out);
}

export const input = [
  withServer("what is no JSON", noJson),
  withServer("wrong types, keys that are missing, keys of the server's own", wrongTypes),
  withServer("too much", tooMuch),
  withServer("paths that lead elsewhere", paths),
  withServer("text that is code somewhere", texts),
  withServer("methods", methods),
  withServer("what is read changes nothing", readingTwice),
  withServer("files", files),
];
