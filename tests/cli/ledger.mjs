// The ledger from the command line: made, added to, told, checked, a player erased, and what bad input gets.
import { existsSync, readFileSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { withClub } from "./club.mjs";
import { all, entry, id, kEvening, kSession, says, silent, status, withLedger } from "./ledger_folder.mjs";

export const ledger = [
  withLedger("an evening is taken in, once however often it is sent", (l) => {
    const first = l.add(kEvening);
    const again = l.add(kEvening);
    const told = l.ledger("state");
    return all(status(first, 0), says(first.stdout, /stored, number 5/), status(again, 0), says(again.stdout, /known already, number 1/), status(told, 0),
      says(told.stdout, /5 is the latest number; 1 sessions, 1 entries for care/), says(told.stdout, /u13-kestrels 2026-11-26 18:00: held, 14 there/));
  }),
  withLedger("what was hurt reaches care, and so the next card", (l) => {
    l.add(kEvening);
    const file = join(l.root, "entries.toml");
    const told = l.ledger("state", "--care", file);
    const standing = l.run("care", "standing", file, "--on", "2026-11-27");
    const out = join(l.root, "out");
    const card = l.run("card", "--squad", "demo/quillmere/squads/u13-kestrels.toml", "--entries", file, "--out", out);
    return all(status(told, 0), says(standing.stdout, /Sits out\n\s+Q07/), status(card, 0), existsSync(join(out, "slip.pdf")) ? "" : "no slip");
  }),
  withLedger("what a coach may not enter, and another content, are told and change nothing", (l) => {
    l.add(kEvening);
    const before = JSON.stringify(l.state());
    const lifted = l.add([entry(6, "lifted", { player: "Q07", names: [id(4)] })]);
    const other = l.add([{ ...kEvening[2], there: 3 }]);
    const books = l.ledger("check");
    return all(status(lifted, 1), says(lifted.stdout, /kept aside: a coach does not enter lifted/), status(other, 1), says(other.stdout, /other content than before: the first stands, number 3/),
      JSON.stringify(l.state()) === before ? "" : "the state is another", status(books, 0), says(books.stdout, /5 entries, 0 of erased people, 1 kept aside/));
  }),
  withLedger("an erased player is gone, and stays gone", (l) => {
    l.add(kEvening);
    const erased = l.ledger("erase", "Q07");
    const twice = l.ledger("erase", "Q07");
    const again = l.add([kEvening[3]]);
    const books = l.ledger("check");
    return all(status(erased, 0), status(twice, 1), status(again, 1), says(again.stdout, /about somebody who was erased: dropped/), says(books.stdout, /5 entries, 1 of erased people/),
      silent(JSON.stringify(l.state()), /Q07|knee/), silent(readFileSync(join(l.folder, "ledger.sqlite"), "latin1"), /Q07|knee/));
  }),
  withLedger("the key is its owner's alone, and without it nothing opens", (l) => {
    const mode = (statSync(join(l.folder, "ledger.key")).mode & 0o777).toString(8);
    const twice = l.ledger("new");
    rmSync(join(l.folder, "ledger.key"));
    const without = l.ledger("check");
    return all(mode === "400" ? "" : `mode ${mode}`, status(twice, 2), status(without, 2), says(without.stderr, /ledger\.key: found .*, expected a key file of 32 bytes, mode 0400/));
  }),
  ...[
    ["a batch that is no JSON", "{", /batch\.json:1:\d+: /],
    ["a batch without entries", "{}", /entries: found no list of 1 to 500/],
    ["one poisoned entry among good ones", [kEvening[0], entry(9, "attendance", { ...kSession, there: "many" })], /batch\.json: entries\.2\.there: found 'many', expected a whole number/],
    ["an id of another version", [{ ...kEvening[0], id: "9b1deb4d-3b7d-4bad-9bdd-2b0d7b3dcb6d" }], /entries\.1\.id: found '9b1deb4d.*', expected a UUID of version 7/],
    ["text of 10 MB", [entry(1, "wrap-up", { ...kSession, happened: "held", note: "x".repeat(1e7) })], /entries\.1\.note: found 'x+\.*.*', expected at most 500 characters/],
    ["SQL for a name", [entry(1, "hurt", { player: "'); DROP TABLE entry;--" })], /entries\.1\.player: found /],
    ["deep nesting", `{"entries":${"[".repeat(5000)}${"]".repeat(5000)}}`, /batch\.json/],
  ].map(([what, batch, line]) => withLedger(`bad input: ${what}`, (l) => {
    const said = l.add(batch);
    return all(status(said, 2), says(said.stderr, line), says(l.ledger("check").stdout, /^0 entries/));
  })),
  withClub("ledger: catalogue check reads the kinds of entries", (club) => {
    const check = () => club.run("catalogue", "--catalogue", club.path("catalogue"), "check");
    const sound = check();
    club.edit("catalogue/ledger/kinds.toml", 'class = "health"', 'class = "secret"');
    const broken = check();
    return all(status({ ...sound, stderr: sound.err }, 0), says(sound.out, /24 kinds of entries/), status({ ...broken, stdout: broken.out, stderr: broken.err }, 2), says(broken.err, /kinds\.toml:\d+:\d+: kind\.8\.class: found 'secret', expected one of club, personal, health/));
  }),
  withLedger("bad input: a clock without an offset, a folder without a ledger", (l) => {
    const clock = l.add(kEvening, "--received", "2026-11-26T18:05:00");
    l.folder += "-nowhere";
    return all(status(clock, 2), status(l.ledger("state"), 2), says(l.ledger("state").stderr, /found no ledger\.sqlite/));
  }),
];
