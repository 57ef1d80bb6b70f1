// A club of three squads from the demo's, in the second week of its block and with nothing entered yet: what a story begins
// with. Nobody is held back, and no match or holiday is near, whatever day it is.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { spawnSync } from "node:child_process";
import { clubOfTheWeek } from "../../tools/club_of_today.mjs";
import { Authenticator } from "../../tools/authenticator.mjs";
import { cookieOf } from "../serve/caller.mjs";

const kSquads = ["u10-wrens", "u13-kestrels", "u16-merlins"];
const kPassword = "seventeen grey gulls";
const kWeek = 7 * 86_400_000;

function edit(file, edits) {
  let text = readFileSync(file, "utf8");
  for (const [pattern, by] of edits) text = text.replace(pattern, by);
  writeFileSync(file, text);
}

// day: '2026-11-27', of the second week.
export function smallClub(folder, day) {
  mkdirSync(dirname(folder), { recursive: true });
  clubOfTheWeek("demo/quillmere", folder, new Date(Date.parse(day) - kWeek).toISOString().slice(0, 10));
  const others = readdirSync(join(folder, "squads")).filter((name) => !kSquads.includes(name.replace(".toml", "")));
  for (const name of [...others.map((one) => `squads/${one}`), "coaches.toml", "emergency.csv", "entries.toml"]) rmSync(join(folder, name));
  edit(join(folder, "club.toml"), [[/(\[\[holiday\]\]\nname = "[^"]*"\nfrom = \S+\nto = \S+\n+)+/, ""]]);
  edit(join(folder, "roster.csv"), [[/U13\/U14 Girls/g, "U13"]]);
  for (const squad of kSquads) edit(join(folder, `squads/${squad}.toml`), [[/(\[\[match\]\]\n(?:\w+ = .*\n)+\n*)+/, ""], [/restrictions = .*\n/, ""], [/away = \[.*\n/, ""], [/late = .*\n/, ""]]);
}

// Its ledger, with its lists; and its first lead, signed in. nobody: a caller (../serve/people.mjs).
export function newLedger(program, ledger, club) {
  for (const words of [["ledger", "new"], ["import", club]]) {
    const { status, stderr } = spawnSync(program, [...words, "--ledger", ledger], { encoding: "utf8" });
    if (status !== 0) throw new Error(`${words.join(" ")}: ${stderr}`);
  }
}

export async function firstLead(program, ledger, nobody) {
  const { stdout } = spawnSync(program, ["account", "add", "--sign-in", "lee", "--role", "lead", "--ledger", ledger], { encoding: "utf8" });
  const link = /^ {2}([A-Za-z0-9_-]{43})$/m.exec(stdout)[1];
  await nobody.post("/api/activate", { link, password: kPassword });
  const half = nobody.as({ cookie: cookieOf(await nobody.post("/api/sign-in", { sign_in: "lee", password: kPassword })) });
  const { secret } = (await half.post("/api/second-factor/begin")).json;
  return half.as({ cookie: cookieOf(await half.post("/api/second-factor", { secret, code: await new Authenticator(secret).next() })) });
}
