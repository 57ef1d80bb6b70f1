// The ledger from the command line: made, added to, told, checked, a player erased, and what bad input gets.
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { withClub } from "./club.mjs";
import { all, entry, id, kEvening, kSession, says, silent, status, withLedger } from "./ledger_folder.mjs";

const consent = (n, player, purpose, answer) => entry(n, "consent", { player, purpose, by: "guardian", answer, day: "2026-09-01" });

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
    // The same without a file in between; entries of the club's own count besides.
    writeFileSync(l.path("none.toml"), "");
    const plan = (...more) => l.run("plan", "--squad", "demo/quillmere/squads/u13-kestrels.toml", ...more, "--json");
    const [byFile, byLedger, byNeither] = [plan("--entries", file), plan("--entries", l.path("none.toml"), "--ledger", l.folder), plan("--entries", l.path("none.toml"))];
    const nowhere = plan("--ledger", l.path("nowhere"));
    return all(status(told, 0), says(standing.stdout, /Sits out\n\s+Q07/), status(card, 0), existsSync(join(out, "slip.pdf")) ? "" : "no slip",
      status(byLedger, 0), byLedger.stdout === byFile.stdout ? "" : "another plan than by the file", byLedger.stdout === byNeither.stdout ? "the ledger does not count" : "", status(nowhere, 2), says(nowhere.stderr, /nowhere: found no ledger/));
  }),
  withLedger("what was wrapped up reaches the block that goes on, as a sheet by hand would", (l) => {
    const squad = ["--club", "demo/quillmere", "--squad", "u13-kestrels"];
    writeFileSync(l.path("standing.json"), l.run("block", ...squad, "--json").stdout);
    const tuesday = { squad: "u13-kestrels", day: "2026-11-24", start: "18:00" };
    l.add([entry(1, "wrap-up", { ...tuesday, happened: "cut-short", did_it: "half", minutes: 12 })]);
    l.add([entry(2, "wrap-up", { ...kSession, happened: "missed" })]);
    const made = l.ledger("sheets", "--from", "2026-11-23", "--until", "2026-11-30", "--to", l.path("sheets"));
    writeFileSync(l.path("by-hand.csv"), "squad,date,happened,minutes,did it\nu13-kestrels,2026-11-24,cut short,12,half\nu13-kestrels,2026-11-26,missed,,\n");
    const roll = (sessions) => l.run("block", ...squad, "--standing", l.path("standing.json"), "--sessions", sessions, "--today", "2026-12-02", "--json");
    const rolled = roll(l.path("sheets/sessions.csv"));
    const straight = l.run("block", ...squad, "--standing", l.path("standing.json"), "--ledger", l.folder, "--today", "2026-12-02", "--json");
    const both = l.run("block", ...squad, "--standing", l.path("standing.json"), "--ledger", l.folder, "--sessions", l.path("by-hand.csv"), "--json");
    return all(status(made, 0), says(made.stdout, /2 sessions for 'block --sessions', 1 row of hours and 0 injuries/), status(rolled, 0),
      rolled.stdout === roll(l.path("by-hand.csv")).stdout ? "" : "another block than by hand", JSON.parse(rolled.stdout) ? "" : "no answer",
      status(straight, 0), straight.stdout === rolled.stdout ? "" : "another block than by the sheet", status(both, 2), says(both.stderr, /--ledger.*--sessions|--sessions.*--ledger/));
  }),
  withLedger("a season's report is the same from the ledger as from its sheets, and the calendar fills what nobody said", (l) => {
    l.run("import", "--ledger", l.folder, "demo/quillmere");
    l.add(kEvening);
    l.add([consent(8, "Q07", "injury-record", "given"), consent(9, "Q07", "statistics", "given"), entry(7, "injury-opened", { player: "Q07", squad: "u13-kestrels", day: "2026-11-26", what: ["region knee", "setting training"] })], "--role", "lead");
    const days = ["--from", "2026-11-23", "--to", "2026-11-26"];
    const usual = ["--training-minutes", "75", "--match-minutes", "60"];
    l.ledger("sheets", "--from", "2026-11-23", "--until", "2026-11-26", "--to", l.path("sheets"), ...usual);
    const report = (name, ...from) => l.run("evidence", "report", ...from, ...days, "--as-of", "2026-11-26", "--out", l.path(name));
    const [sheets, books, filled] = [report("one", "--records", l.path("sheets")), report("two", "--ledger", l.folder, ...usual), report("three", "--ledger", l.folder, ...usual, "--calendar", "demo/quillmere")];
    const page = (name) => readFileSync(l.path(`${name}/report.html`), "utf8");
    const both = report("four", "--ledger", l.folder, "--records", l.path("sheets"));
    const hours = (said) => Number(/in ([\d \u00a0\u202f]+) player-hours/.exec(said.stdout)?.[1].replace(/\D/g, ""));
    return all(status(sheets, 0), status(books, 0), page("one") === page("two") ? "" : "another report than by the sheets", status(filled, 0), hours(filled) > 10 * hours(books) ? "" : `${hours(books)} hours, with the calendar ${hours(filled)}\n${filled.stdout}`,
      status(both, 2), says(both.stderr, /--ledger: found files of records too/));
  }),
  withLedger("a season's report says how much was left out for want of consent, and to a board nothing that is about a few", (l) => {
    l.run("import", "--ledger", l.folder, "demo/quillmere");
    l.add(kEvening);
    const players = ["Q01", "Q02", "Q03", "Q04", "Q05"];
    const hurt = (n, player) => [consent(n, player, "injury-record", "given"), entry(n + 1, "injury-opened", { player, squad: "u13-kestrels", day: "2026-11-26", what: ["region knee", "setting training"] })];
    const report = (name, reader) => {
      const said = l.run("evidence", "report", "--ledger", l.folder, "--from", "2026-11-23", "--to", "2026-11-26", "--as-of", "2026-11-26", "--training-minutes", "75", "--match-minutes", "60", "--reader", reader, "--out", l.path(name));
      return said.status === 0 ? { text: said.stdout, page: readFileSync(l.path(`${name}/report.html`), "utf8") } : { text: said.stderr, page: "" };
    };
    const none = report("none", "board");
    l.add(players.slice(0, 4).flatMap((player, i) => hurt(20 + 2 * i, player)), "--role", "lead");
    const [four, fourOfBoard] = [report("four", "lead"), report("four-board", "board")];
    l.add(hurt(40, players[4]), "--role", "lead");
    const fiveOfBoard = report("five-board", "board");
    const few = /Injuries of players without consent to statistics are left out: none, or too few to say how many\./;
    return all(says(none.text, few), says(four.text, /^Left out for want of consent to statistics: 4 injuries and 0 places at sessions\.$/m), says(four.page, /Left out for want of consent to statistics: 4 injuries/),
      says(fourOfBoard.text, few), none.page !== "" && none.page === fourOfBoard.page ? "" : "a board sees whether there were four or none", says(fiveOfBoard.text, /^Left out for want of consent to statistics: 5 injuries\.$/m), says(fiveOfBoard.page, /consent to statistics: 5 injuries/));
  }),
  withLedger("hours and injuries are read as a season's records", (l) => {
    const brought = l.run("import", "--ledger", l.folder, "demo/quillmere");
    l.add(kEvening);
    l.add([consent(8, "Q07", "injury-record", "given"), consent(9, "Q07", "statistics", "given"), entry(6, "exposure-confirmed", { ...kSession, setting: "training", minutes: 75, players: 14 }),
      entry(7, "injury-opened", { player: "Q07", squad: "u13-kestrels", day: "2026-11-26", what: ["region knee", "setting training"], note: "=cmd" })], "--role", "lead");
    const made = l.ledger("sheets", "--from", "2026-11-23", "--until", "2026-11-30", "--to", l.path("sheets"));
    const twice = l.ledger("sheets", "--from", "2026-11-23", "--until", "2026-11-30", "--to", l.path("sheets"));
    const turned = l.ledger("sheets", "--from", "2026-11-30", "--until", "2026-11-23", "--to", l.path("other"));
    mkdirSync(l.path("season"));
    const read = l.run("evidence", "import", "--records", l.path("sheets"), "--from", "2026-11-23", "--to", "2026-11-30", "--out", l.path("season"));
    return all(status(brought, 0), status(made, 0), status(twice, 2), status(turned, 2), says(turned.stderr, /--until: found .*2026-11-23.*, expected a day not before 2026-11-30/), status(read, 0),
      says(readFileSync(l.path("season/hours.csv"), "utf8"), /u13-kestrels,2026-11-26,training,75,14,,,most,,,,yes/),
      says(readFileSync(l.path("season/injuries.csv"), "utf8"), /u13-kestrels,q07,.*2026-11-26,training.*knee/i));
  }),
  withLedger("an injury record waits for consent, and a withdrawal closes it; what is hurt tonight waits for nothing", (l) => {
    const injury = (n) => entry(n, "injury-opened", { player: "Q07", squad: "u13-kestrels", day: "2026-11-26", note: "canary" });
    const lead = (...entries) => l.add(entries, "--role", "lead");
    l.run("import", "--ledger", l.folder, "demo/quillmere");
    const without = lead(injury(1), entry(2, "hurt", { player: "Q07", place: "knee" }), entry(3, "attendance", { ...kSession, there: 3, players: ["Q07", "Q08", "Q09"] }));
    const books = l.ledger("check");
    const given = lead(consent(4, "Q07", "injury-record", "given"), injury(5), consent(6, "Q07", "statistics", "given"));
    const sheets = (name) => l.ledger("sheets", "--from", "2026-11-23", "--until", "2026-11-30", "--to", l.path(name));
    const open = sheets("open");
    const listed = l.ledger("consents");
    const withdrawn = lead(consent(7, "Q07", "injury-record", "withdrawn"), injury(8));
    const closed = sheets("closed");
    const state = l.ledger("state");
    const page = (...words) => {
      const made = l.ledger("timeline", "Q07", "--out", l.path("out"), ...words);
      return made.status === 0 ? spawnSync("pdftotext", ["-layout", l.path("out/about-one-child.pdf"), "-"], { encoding: "utf8" }).stdout : made.stderr;
    };
    const told = page();
    rmSync(l.path("out"), { recursive: true });
    const own = page("--own-copy");
    return all(status(without, 1), says(without.stdout, /0001  refused: there is no consent/), says(without.stdout, /0002  stored, number 1/), says(without.stdout, /0003  stored, number 2/), says(books.stdout, /^2 entries, 0 of erased people, 0 kept aside/),
      status(given, 0), status(open, 0), says(open.stdout, /1 row of hours and 1 injury/), says(open.stdout, /Left out for want of consent: 0 injuries and 2 places at sessions; 0 records are closed\./),
      says(readFileSync(l.path("open/hours.csv"), "utf8"), /"2026-11-26","training","","1"/), says(readFileSync(l.path("open/injuries.csv"), "utf8"), /canary/),
      status(listed, 0), says(listed.stdout, /^injury-record: 1 given, 0 withheld, \d+ never asked$/m), says(listed.stdout, /^ {2}Q08 {2}.*u13-kestrels/m), silent(listed.stdout.split("statistics:")[1], /Q07 /),
      status(withdrawn, 1), says(withdrawn.stdout, /0008  refused/), status(closed, 0), says(closed.stdout, /0 injuries for 'evidence'/), says(closed.stdout, /1 records are closed/), silent(readFileSync(l.path("closed/injuries.csv"), "utf8"), /canary|Q07/),
      says(state.stdout, /1 injuries and screenings are not shown/), says(state.stdout, /0 injuries$/m), silent(state.stdout, /missing of phone-1: [2-8]/), silent(told, /canary/), says(told, /hurt: place knee/), says(told, /consent to keep a record of injuries and screens: given by a guardian on/), says(told, /screens: withdrawn by a guardian on/), silent(told, /injury-record|answer given/), says(told, /Not shown for want of consent to an injury record: 1 entries/), says(own, /canary/));
  }),
  withLedger("one child's page for a guardian has everything about it and nobody else", (l) => {
    l.run("import", "--ledger", l.folder, "demo/quillmere");
    l.add([...kEvening, entry(6, "hurt", { player: "Q08", place: "ankle" })]);
    const made = l.ledger("timeline", "Q07", "--out", l.path("out"));
    const nobody = l.ledger("timeline", "Q99", "--out", l.path("out"));
    const page = l.path("out/about-one-child.pdf");
    const text = spawnSync("pdftotext", ["-layout", page, "-"], { encoding: "utf8" }).stdout;
    const mode = existsSync(page) ? (statSync(page).mode & 0o777).toString(8) : "none";
    return all(status(made, 0), status(nobody, 2), says(nobody.stderr, /PLAYER: found 'Q99', expected the id of a player on the club's lists/), mode === "600" ? "" : `mode ${mode}`,
      says(text, /hurt: place knee/), says(text, /entered by ann, coach/), says(text, /it is no diagnosis/), says(text, /None by name/), silent(text, /ankle|Q08/));
  }),
  withLedger("what was kept aside long ago goes, and what is of today stays", (l) => {
    const lifted = (n, day) => {
      writeFileSync(l.path("batch.json"), JSON.stringify({ entries: [entry(n, "lifted", { player: "Q07", names: [id(4)] })] }));
      return l.ledger("add", l.path("batch.json"), "--device", "phone-1", "--author", "ann", "--received", `${day}T18:05:00+01:00`);
    };
    lifted(6, "2020-01-01");
    lifted(7, new Date().toISOString().slice(0, 10));
    const gone = l.run("retain", "--ledger", l.folder);
    return all(status(gone, 0), says(gone.stdout, /^Past their time and gone: 0 of signing in, 1 kept aside, 0 of planning, 0 people who left, 0 entries, 0 notes of reading\.$/m), says(l.ledger("check").stdout, /^0 entries, 0 of erased people, 1 kept aside/));
  }),
  withLedger("what is past its time goes, and whoever counts those days is told", (l) => {
    const old = (day) => ({ squad: "u13-kestrels", day, start: "18:00", happened: "held", note: "canary-evening" });
    l.run("import", "--ledger", l.folder, "demo/quillmere");
    l.add([entry(1, "wrap-up", old("2020-09-03")), entry(2, "wrap-up", old("2020-09-10"))], "--role", "lead");
    l.add(kEvening.map((one, i) => ({ ...one, id: id(i + 11), sequence: i + 3 })));
    const sheets = (name) => l.ledger("sheets", "--from", "2020-09-01", "--until", "2020-12-31", "--to", l.path(name));
    const before = sheets("before");
    const short = l.run("retain", "--ledger", l.folder, "--keep-evenings-days", "100");
    const first = l.run("retain", "--ledger", l.folder);
    const second = l.run("retain", "--ledger", l.folder);
    const books = l.ledger("check");
    const after = sheets("after");
    const report = l.run("evidence", "report", "--ledger", l.folder, "--from", "2020-09-01", "--to", "2020-12-31", "--training-minutes", "75", "--calendar", "demo/quillmere", "--out", l.path("report"));
    const release = l.run("release", "--ledger", l.folder, "--from", "2020-08-01", "--until", "2021-07-31", "--dry-run");
    const told = /What was entered about sessions before \d{4}-\d\d-\d\d went by its time: /;
    const bytes = ["ledger.sqlite", "ledger.sqlite-wal"].map((file) => join(l.folder, file)).filter((file) => existsSync(file)).map((file) => readFileSync(file, "latin1")).join("");
    return all(status(before, 0), says(before.stdout, /2 sessions for/), silent(before.stdout, told), status(short, 2), says(short.stderr, /--keep-evenings-days/), status(first, 0), says(first.stdout, /0 people who left, 2 entries, 0 notes/),
      says(second.stdout, /, 0 entries, /), status(books, 0), says(books.stdout, /^2 of the entries went by their time/m), silent(l.ledger("state").stdout, /missing of/), status(after, 0), says(after.stdout, /^0 sessions|: 0 sessions for/m), says(after.stdout, told),
      says(report.stdout + report.stderr, told), status(release, 2), says(release.stderr, /from: found 2020-08-01, expected \d{4}-\d\d-\d\d or later/), silent(bytes, /canary-evening/));
  }),
  withLedger("what a coach may not enter, and another content, are told and change nothing", (l) => {
    l.add(kEvening);
    const before = JSON.stringify(l.state());
    const lifted = l.add([entry(6, "lifted", { player: "Q07", names: [id(4)] })]);
    const other = l.add([{ ...kEvening[2], there: 3 }]);
    const books = l.ledger("check");
    return all(status(lifted, 1), says(lifted.stdout, /kept aside: a coach does not enter lifted/), status(other, 1), says(other.stdout, /other content than before: the first stands, number 3/),
      JSON.stringify(l.state()) === before ? "" : "the state is another", status(books, 0), says(books.stdout, /5 entries, 0 of erased people, 2 kept aside/));
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
  withLedger("erasing says what remains, counted, and it is so", (l) => {
    l.add([...kEvening, entry(6, "hurt", { player: "Q08", place: "hip" }), entry(7, "hurt", { player: "Q08", place: "foot" }), entry(8, "attendance", { ...kSession, there: 2, players: ["Q07", "Q08"] })]);
    const erased = l.ledger("erase", "Q08");
    const state = JSON.stringify(l.state());
    return all(status(erased, 0), says(erased.stdout, /^ {4}2 entries about the player that nothing opens any more/m), says(erased.stdout, /^ {4}the id Q08 in 1 entry about an evening /m),
      says(l.ledger("check").stdout, /^8 entries, 2 of erased people/), says(state, /"Q08"/), silent(state, /hip|foot/));
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
    return all(status({ ...sound, stderr: sound.err }, 0), says(sound.out, /29 kinds of entries/), status({ ...broken, stdout: broken.out, stderr: broken.err }, 2), says(broken.err, /kinds\.toml:\d+:\d+: kind\.\d+\.class: found 'secret', expected one of club, personal, health/));
  }),
  withLedger("bad input: a clock without an offset, a folder without a ledger", (l) => {
    const clock = l.add(kEvening, "--received", "2026-11-26T18:05:00");
    l.folder += "-nowhere";
    return all(status(clock, 2), status(l.ledger("state"), 2), says(l.ledger("state").stderr, /found no ledger\.sqlite/));
  }),
];
