// A club's first day: a new ledger has nobody in it; the first account is made on the machine itself, by a link that is
// good once; until its second factor is set up nothing else is open to it.
import { spawnSync } from "node:child_process";
import { matrixRoutes } from "../../tools/openapi.mjs";
import { Caller, cookieOf } from "./caller.mjs";
import { all, is, that } from "./expect.mjs";
import { Authenticator } from "../../tools/authenticator.mjs";

const kGuesses = ["admin", "root", "lead", "operator", "lanework", "test"];
const kPassword = "seventeen grey gulls";
const kPlaces = { squad: "u13-kestrels", player: "Q05", account: "a-none", device: "d-none", pairing: "p-none", release: "1", injury: "018f3f6e-0000-7000-8000-000000000001", monday: "2026-11-23", from: "2026-09-01", to: "2026-11-30" };

async function firstDay({ demo, contract }) {
  const folder = demo.file("club");
  const run = (...words) => spawnSync(demo.program, [...words, "--ledger", folder], { encoding: "utf8" });
  const made = [run("ledger", "new"), run("import", "demo/quillmere")];
  const out = made.map((said) => that(said.status === 0, said.stderr));
  const server = await demo.serve({ folder, flags: ["--behind-proxy"] });
  const nobody = () => new Caller(server, contract);
  for (const sign_in of kGuesses) {
    for (const password of [sign_in, "admin", "password", ""]) out.push(that([400, 401].includes((await nobody().post("/api/sign-in", { sign_in, password })).status), `${sign_in} got in`));
  }
  const added = run("account", "add", "--sign-in", "lee", "--role", "lead");
  const link = /^ {2}([A-Za-z0-9_-]{43})$/m.exec(added.stdout)?.[1];
  out.push(that(link !== undefined, added.stdout + added.stderr), is(await nobody().post("/api/sign-in", { sign_in: "lee", password: link }), 401, "sign-in-failed"));
  out.push(is(await nobody().post("/api/activate", { link, password: kPassword }), 200), is(await nobody().post("/api/activate", { link, password: kPassword }), 410, "link-used"));
  const begun = await nobody().post("/api/sign-in", { sign_in: "lee", password: kPassword });
  out.push(that(begun.json.next === "set-up-second-factor", begun.text));
  const half = nobody().as({ cookie: cookieOf(begun) });
  for (const route of matrixRoutes().filter((one) => one.by === "browser" && !one.before_second_factor)) {
    const path = route.path.replace(/\{(\w+)\}/g, (_, name) => kPlaces[name]);
    out.push(is(route.method === "GET" ? await half.get(path) : await half.post(path), 403, "second-factor-needed"));
  }
  const { json: factor } = await half.post("/api/second-factor/begin");
  const kept = await half.post("/api/second-factor", { secret: factor.secret, code: await new Authenticator(factor.secret).next() });
  const lee = half.as({ cookie: cookieOf(kept) });
  const squads = await lee.get("/api/squads");
  out.push(is(kept, 200), is(squads, 200), that(squads.json.squads.length === 24, `${squads.json.squads?.length} squads`), is(await lee.get("/api/squads/u13-kestrels"), 200));
  await server.stop();
  return all(out);
}

export const firstDays = [{ name: "start: a club's first day", run: firstDay }];
