// Custody of a ledger from the command line: keys, backup, check, restore, the list of the erased, and what a backup that
// was cut, changed or made for somebody else gets. On SQLite and on PostgreSQL.
import { appendFileSync, chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, truncateSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { all, entry, id, kEvening, kSession, Ledger, says, silent, status, withLedger } from "./ledger_folder.mjs";
import { PrivateCluster } from "./private_cluster.mjs";

const kHurt = [entry(6, "hurt", { player: "Q08", place: "ankle" }), entry(7, "hurt", { player: "Q07", place: "hip" })];
const same = (one, other, what) => (one === other ? "" : `${what}: not the same`);

// What a person with both keys at hand types.
class Custody {
  constructor(ledger) {
    this.ledger = ledger;
    this.keys = ledger.path("keys");
    this.key = join(ledger.folder, "ledger.key");
  }
  makeKeys() {
    return this.ledger.run("backup", "keys", "--out", this.keys);
  }
  backUp(name, ...words) {
    return this.ledger.run("backup", "--ledger", this.ledger.folder, ...this.ledger.where, "--to", this.ledger.path(name), "--for", join(this.keys, "backup.public"), ...words);
  }
  check(name, { privateKey = join(this.keys, "backup.private"), key = this.key } = {}) {
    return this.ledger.run("backup", "check", this.ledger.path(name), "--private", privateKey, "--key", key);
  }
  restore(name, to, erased, ...words) {
    return this.ledger.run("restore", this.ledger.path(name), "--private", join(this.keys, "backup.private"), "--key", this.key, "--ledger", this.ledger.path(to), "--erased", erased, ...words);
  }
  erasedList() {
    return join(this.ledger.folder, "erased.list");
  }
  state(to, ...words) {
    return this.ledger.run("ledger", "state", "--ledger", this.ledger.path(to), "--key", this.key, "--json", ...words);
  }
  // No half of a restored ledger and no temporary file lies anywhere.
  leftovers() {
    const odd = readdirSync(this.ledger.root).filter((name) => /restoring|\.(backup|list)\../.test(name));
    return odd.length === 0 ? "" : `left behind: ${odd}`;
  }
}

const withCustody = (name, work) => withLedger(`custody: ${name}`, (ledger) => {
  const custody = new Custody(ledger);
  ledger.add([...kEvening, ...kHurt, entry(8, "lifted", { player: "Q07", names: [id(4)] })]);
  return all(status(custody.makeKeys(), 0), work(custody, ledger) ?? "");
});

// One with something in it for every way in which a file can be wrong.
const refused = (custody, name, bytes, pattern = /./) => {
  writeFileSync(custody.ledger.path(name), bytes);
  const checked = custody.check(name);
  const restored = custody.restore(name, "nowhere", "none");
  return all(status(checked, 2), says(checked.stderr, pattern), status(restored, 2), says(restored.stderr, pattern),
    existsSync(custody.ledger.path("nowhere")) ? "a ledger was left behind" : "", custody.leftovers());
};

export const custody = [
  withCustody("a backup is checked and restored, and equals what was there", (c, l) => {
    const made = c.backUp("one.backup");
    const checked = c.check("one.backup");
    const restored = c.restore("one.backup", "again", "none");
    const books = l.run("ledger", "check", "--ledger", l.path("again"), "--key", c.key);
    return all(status(made, 0), says(made.stdout, /7 of entry, .*2 of person, .*1 of quarantine/), says(made.stdout, /3 entries about people, each opened/),
      status(checked, 0), says(checked.stdout, /the scratch is gone/), status(restored, 0),
      same(c.state("again").stdout, l.ledger("state", "--json").stdout, "the state"), status(books, 0), same(books.stdout, l.ledger("check").stdout, "the books"),
      same((statSync(l.path("one.backup")).mode & 0o777).toString(8), "600", "the backup's mode"), c.leftovers());
  }),
  withCustody("the keys: one to write, one to read, neither over another", (c, l) => {
    const mode = (name) => (statSync(join(c.keys, name)).mode & 0o777).toString(8);
    const before = readFileSync(join(c.keys, "backup.private"), "utf8");
    const twice = c.makeKeys();
    const swapped = l.run("backup", "--ledger", l.folder, "--to", l.path("x.backup"), "--for", join(c.keys, "backup.private"));
    const storeKey = l.run("backup", "--ledger", l.folder, "--to", l.path("x.backup"), "--for", c.key);
    c.backUp("one.backup");
    const byPublic = c.check("one.backup", { privateKey: join(c.keys, "backup.public") });
    const said = all(same(mode("backup.private"), "400", "mode"), same(mode("backup.public"), "444", "mode"), status(twice, 2), says(twice.stderr, /found something of that name/),
      same(readFileSync(join(c.keys, "backup.private"), "utf8"), before, "the private key"), status(swapped, 2), says(swapped.stderr, /expected the public key of backups/),
      status(storeKey, 2), status(byPublic, 2), says(byPublic.stderr, /expected the private key of backups, mode 0400/), existsSync(l.path("x.backup")) ? "written all the same" : "");
    chmodSync(join(c.keys, "backup.private"), 0o440);
    return all(said, says(c.check("one.backup").stderr, /found a file that others may read/));
  }),
  withCustody("who was erased after the backup does not come back", (c, l) => {
    c.backUp("one.backup");
    const later = l.add([entry(9, "hurt", { player: "Q11", place: "foot" })]);
    const erased = ["Q07", "Q11"].map((player) => l.ledger("erase", player, "--received", "2026-12-01T09:00:00+01:00"));
    const list = readFileSync(c.erasedList(), "utf8");
    const restored = c.restore("one.backup", "again", c.erasedList());
    const state = c.state("again").stdout;
    // The original without the erased, up to what the backup knows: the one that came later was erased, too.
    const original = l.state();
    const there = JSON.parse(state);
    l.folder = l.path("again");
    const sentAgain = l.add([entry(9, "hurt", { player: "Q11", place: "foot" }), kEvening[3]], "--key", c.key);
    return all(status(later, 0), ...erased.map((one) => status(one, 0)), says(list, /^([0-9a-f]{32} 2026-12-01T09:00:00\+01:00 [0-9a-f]{8}\n){2}$/), silent(list, /Q07|Q11/),
      status(restored, 0), says(restored.stdout, /2 people are erased there and stay so/), silent(state, /Q07|hip|knee/), says(state, /Q08/),
      same(JSON.stringify({ ...there, latest_receipt: 0 }), JSON.stringify({ ...original, latest_receipt: 0 }), "the state without the erased"),
      same(readFileSync(l.path("again/erased.list"), "utf8").split("\n").sort().join(), list.split("\n").sort().join(), "the list that goes with it"),
      status(sentAgain, 1), says(sentAgain.stdout, /000000000009 {2}about somebody who was erased: dropped/), c.leftovers());
  }),
  withCustody("the list of the erased has to be named, whole and not older than the backup", (c, l) => {
    l.ledger("erase", "Q08");
    c.backUp("one.backup");
    const unnamed = l.run("restore", l.path("one.backup"), "--private", join(c.keys, "backup.private"), "--key", c.key, "--ledger", l.path("again"));
    const missing = c.restore("one.backup", "again", l.path("nowhere.list"));
    writeFileSync(l.path("empty.list"), "");
    const older = c.restore("one.backup", "again", l.path("empty.list"));
    writeFileSync(l.path("changed.list"), readFileSync(c.erasedList(), "utf8").replace(/^./, (digit) => (digit === "0" ? "1" : "0")));
    const changed = c.restore("one.backup", "again", l.path("changed.list"));
    return all(status(unnamed, 2), says(unnamed.stderr, /--erased is required/), status(missing, 2), says(missing.stderr, /'--erased none' says that nobody was ever erased/),
      status(older, 2), says(older.stderr, /found 1 people whom the backup knows as erased and the list does not/), status(changed, 2), says(changed.stderr, /changed\.list:1: found /),
      existsSync(l.path("again")) ? "a ledger was left behind" : "", status(c.restore("one.backup", "again", c.erasedList()), 0), c.leftovers());
  }),
  withCustody("an erasure that the list does not take is none, and one that was cut off is told", (c, l) => {
    const before = l.state();
    const nowhere = l.ledger("erase", "Q07", "--erased", l.path("nowhere/erased.list"));
    const unknown = l.ledger("erase", "Q99");
    const still = l.state();
    // The line is there and the key, too: the power went between the two.
    l.ledger("erase", "Q07");
    const line = readFileSync(c.erasedList(), "utf8");
    c.backUp("one.backup");
    const other = l.path("other.list");
    writeFileSync(other, line);
    const late = l.ledger("check", "--erased", other);
    return all(status(nowhere, 2), says(nowhere.stderr, /erased\.list: found No such file/), status(unknown, 1), same(JSON.stringify(still), JSON.stringify(before), "the state"),
      same(String(line.split("\n").length), "2", "lines"), status(late, 0));
  }),
  withCustody("restored without the list, the books say who is back", (c, l) => {
    c.backUp("one.backup");
    l.ledger("erase", "Q07");
    c.restore("one.backup", "again", "none");
    const books = l.run("ledger", "check", "--ledger", l.path("again"), "--key", c.key, "--erased", c.erasedList());
    return all(status(books, 1), says(books.stdout, /1 people are on the list of the erased and can still be read/));
  }),
  withCustody("other keys open nothing", (c, l) => {
    c.backUp("one.backup");
    l.run("backup", "keys", "--out", l.path("others"));
    const wrongPrivate = c.check("one.backup", { privateKey: l.path("others/backup.private") });
    l.run("ledger", "new", "--ledger", l.path("theirs"));
    const wrongKey = c.check("one.backup", { key: l.path("theirs/ledger.key") });
    const books = l.ledger("check", "--key", l.path("theirs/ledger.key"));
    const told = l.ledger("state", "--key", l.path("theirs/ledger.key"));
    const added = l.add([kEvening[3]], "--key", l.path("theirs/ledger.key"));
    l.run("ledger", "new", "--ledger", l.path("empty"));
    const onEmpty = l.run("ledger", "state", "--ledger", l.path("empty"), "--key", l.path("theirs/ledger.key"));
    const anothers = /found a key that is not this store's, expected the key that the store was made with/;
    return all(status(wrongPrivate, 2), says(wrongPrivate.stderr, /made for another key/), status(wrongKey, 2), says(wrongKey.stderr, /a person's key that does not open.*is the key the one of this ledger/),
      status(books, 2), says(books.stderr, anothers), status(told, 2), says(told.stderr, anothers), status(added, 2), says(added.stderr, anothers), silent(added.stdout, /dropped/),
      status(onEmpty, 2), says(onEmpty.stderr, /empty\/ledger\.sqlite: found a key that is not this store's/), onEmpty.stderr.trim().split("\n").length === 1 ? "" : onEmpty.stderr, c.leftovers());
  }),
  withCustody("cut at any length, changed at any byte, or longer: refused, and nothing is left behind", (c, l) => {
    c.backUp("one.backup");
    const whole = readFileSync(l.path("one.backup"));
    const checks = [];
    for (const length of [0, 1, 15, 16, 47, 128, 151, 152, 153, 169, 1000, whole.length - 17, whole.length - 1]) checks.push(refused(c, "cut.backup", whole.subarray(0, length), /cut\.backup: found /));
    for (let at = 0; at < whole.length; at += 211) {
      const changed = Buffer.from(whole);
      changed[at] ^= 1 << (at % 8);
      checks.push(refused(c, "changed.backup", changed, /changed\.backup: found /));
    }
    return all(...checks, refused(c, "longer.backup", Buffer.concat([whole, Buffer.from([0])]), /found bytes after its end|a byte is another/), refused(c, "text.backup", "a list of players\n".repeat(20), /found a file that is none/));
  }),
  withCustody("never over something, never from nothing", (c, l) => {
    c.backUp("one.backup");
    const before = readFileSync(l.path("one.backup"));
    const twice = c.backUp("one.backup");
    mkdirSync(l.path("full"));
    writeFileSync(l.path("full/letter.txt"), "keep me");
    mkdirSync(l.path("empty"));
    const full = c.restore("one.backup", "full", "none");
    const over = c.restore("one.backup", "books", "none");
    const empty = c.restore("one.backup", "empty", "none");
    const nothing = l.run("backup", "--ledger", l.path("nowhere"), "--key", c.key, "--to", l.path("x.backup"), "--for", join(c.keys, "backup.public"));
    const flags = ["--to", "--for", "--ledger"].map((left) => {
      const words = { "--ledger": l.folder, "--to": l.path("x.backup"), "--for": join(c.keys, "backup.public") };
      delete words[left];
      const said = l.run("backup", ...Object.entries(words).flat());
      return all(status(said, 2), says(said.stderr, new RegExp(`${left}: found nothing`)));
    });
    return all(status(twice, 2), says(twice.stderr, /found something of that name/), before.equals(readFileSync(l.path("one.backup"))) ? "" : "the old backup is another",
      status(full, 2), says(full.stderr, /found a place where something is, expected a new or empty folder/), same(readdirSync(l.path("full")).join(), "letter.txt", "the folder"), status(over, 2), status(empty, 0),
      status(nothing, 2), says(nothing.stderr, /found no ledger\.sqlite/), ...flags, c.leftovers());
  }),
  withCustody("a disk without room: no backup, no restored ledger, nothing left behind, the old ones as they were", (c, l) => {
    for (let batch = 0; batch < 4; ++batch) l.add(Array.from({ length: 100 }, (_, i) => entry(100 + 100 * batch + i, "hurt", { player: `Q${i % 20}`, place: "knee", note: "x".repeat(200) })));
    c.backUp("one.backup");
    // Files end at 16 or 64 blocks of 512 bytes, as on a disk that is full there.
    const limited = (blocks, ...words) => spawnSync("sh", ["-c", `trap '' XFSZ; ulimit -f ${blocks}; exec "$@"`, "sh", c.ledger.program, ...words], { encoding: "utf8" });
    const backup = limited(64, "backup", "--ledger", l.folder, "--to", l.path("two.backup"), "--for", join(c.keys, "backup.public"));
    const restored = limited(64, "restore", l.path("one.backup"), "--private", join(c.keys, "backup.private"), "--key", c.key, "--ledger", l.path("again"), "--erased", "none");
    const checked = limited(64, "backup", "check", l.path("one.backup"), "--private", join(c.keys, "backup.private"), "--key", c.key);
    return all(status(backup, 2), says(backup.stderr, /two\.backup: found File too large/), existsSync(l.path("two.backup")) ? "half a backup" : "", status(restored, 2), existsSync(l.path("again")) ? "half a ledger" : "",
      status(checked, 2), status(c.check("one.backup"), 0), status(l.ledger("check"), 0), c.leftovers());
  }),
  withCustody("a backup holds nothing of a child in the clear, and no key", (c, l) => {
    c.backUp("one.backup");
    const bytes = readFileSync(l.path("one.backup"));
    return all(silent(bytes.toString("latin1"), /Q07|Q08|knee|ankle|hurt|kestrels|phone-1/), bytes.includes(readFileSync(c.key)) ? "the ledger's key" : "",
      bytes.includes(Buffer.from(/[0-9a-f]{64}/.exec(readFileSync(join(c.keys, "backup.private"), "utf8"))[0], "hex")) ? "the private key" : "");
  }),
  withCustody("books that were changed are not backed up, and the last sound backup stays", (c, l) => {
    c.backUp("one.backup");
    const file = join(l.folder, "ledger.sqlite");
    const bytes = readFileSync(file);
    const at = bytes.indexOf("side-plank");
    bytes[at] ^= 1;
    writeFileSync(file, bytes);
    const told = l.ledger("state");
    const backup = c.backUp("two.backup");
    return all(at > 0 ? "" : "nothing was changed", status(told, 2), says(told.stderr, /entry 2, which does not follow from the one before/), status(l.ledger("check"), 1),
      status(backup, 2), says(backup.stderr, /entry 2, which does not follow/), existsSync(l.path("two.backup")) ? "backed up all the same" : "", status(c.check("one.backup"), 0), c.leftovers());
  }),
  withCustody("the list of the erased survives a line that was cut off", (c, l) => {
    l.ledger("erase", "Q07");
    const whole = readFileSync(c.erasedList(), "utf8");
    appendFileSync(c.erasedList(), whole);
    truncateSync(c.erasedList(), whole.length + 20);
    c.backUp("one.backup");
    const cut = c.restore("one.backup", "again", c.erasedList());
    l.ledger("erase", "Q08");
    const lines = readFileSync(c.erasedList(), "utf8").trim().split("\n");
    return all(status(cut, 2), says(cut.stderr, /erased\.list:2: found .*a last line that is cut off erased nobody/), same(String(lines.length), "2", "lines"), status(c.restore("one.backup", "again", c.erasedList()), 0));
  }),
  withCustody("killed at any moment: a whole backup or none, a whole ledger or none, nobody erased who is not on the list", (c, l) => {
    l.add(Array.from({ length: 400 }, (_, i) => entry(100 + i, "hurt", { player: `Q${20 + (i % 20)}`, place: "knee", note: "x".repeat(200) })));
    const checks = [status(c.backUp("whole.backup"), 0)];
    const killed = (after, ...words) => spawnSync(c.ledger.program, words, { timeout: after, killSignal: "SIGKILL" }).signal === "SIGKILL";
    const privateKey = join(c.keys, "backup.private");
    let kills = 0;
    for (let after = 1; after <= 40; after += 3) {
      const name = `killed-${after}`;
      kills += killed(after, "backup", "--ledger", l.folder, "--to", l.path(`${name}.backup`), "--for", join(c.keys, "backup.public"));
      if (existsSync(l.path(`${name}.backup`))) checks.push(status(c.check(`${name}.backup`), 0));
      kills += killed(after, "restore", l.path("whole.backup"), "--private", privateKey, "--key", c.key, "--ledger", l.path(name), "--erased", "none");
      if (existsSync(l.path(name))) checks.push(status(l.run("ledger", "check", "--ledger", l.path(name), "--key", c.key), 0), same(c.state(name).stdout, l.ledger("state", "--json").stdout, "the state"));
    }
    for (let player = 20; player < 40; ++player) {
      kills += killed(player - 15, "ledger", "erase", `Q${player}`, "--ledger", l.folder);
      const listed = readFileSync(c.erasedList(), "utf8").split("\n").length - 1;
      const gone = new Set(l.state().care.map((one) => one.entry.player));
      const erased = Array.from({ length: 20 }, (_, i) => `Q${20 + i}`).filter((name) => !gone.has(name)).length;
      checks.push(erased <= listed ? "" : `${erased} are erased and ${listed} on the list`);
    }
    return all(kills > 10 ? "" : `only ${kills} were killed`, ...checks, says(l.ledger("check").stdout, /407 entries/));
  }),
  {
    name: "ledger: custody: the same on PostgreSQL, and from each database into the other",
    async run(program) {
      const cluster = await PrivateCluster.started();
      const ledger = new Ledger(program);
      try {
        return onPostgres(ledger, cluster);
      } finally {
        ledger.remove();
        cluster.stop();
      }
    },
  },
];

function onPostgres(l, cluster) {
  const where = cluster.newDatabase();
  const c = new Custody(l);
  l.where = ["--postgres", where, "--club", "quillmere"];
  const withoutClub = l.run("ledger", "check", "--ledger", l.folder, "--postgres", where);
  const nowhere = l.run("ledger", "new", "--ledger", l.path("other"), "--postgres", "host=127.0.0.1 port=1 connect_timeout=2", "--club", "quillmere");
  const made = l.ledger("new");
  const first = l.add([...kEvening, ...kHurt]);
  const again = l.add(kEvening);
  const keys = c.makeKeys();
  const backup = c.backUp("one.backup");
  const nobody = l.run("backup", "--ledger", l.folder, "--postgres", where, "--club", "nobody", "--to", l.path("x.backup"), "--for", join(c.keys, "backup.public"));
  const erased = l.ledger("erase", "Q07");
  const books = l.ledger("check");
  const intoFile = c.restore("one.backup", "file", c.erasedList());
  const taken = c.restore("one.backup", "taken", c.erasedList(), ...l.where);
  const into = ["--postgres", cluster.newDatabase(), "--club", "quillmere"];
  const intoDatabase = c.restore("one.backup", "database", c.erasedList(), ...into);
  const bytes = readFileSync(l.path("one.backup"));
  writeFileSync(l.path("cut.backup"), bytes.subarray(0, bytes.length - 1));
  const elsewhere = ["--postgres", cluster.newDatabase(), "--club", "quillmere"];
  const cut = c.restore("cut.backup", "cut", "none", ...elsewhere);
  const afterCut = c.restore("one.backup", "after-cut", "none", ...elsewhere);
  const state = l.ledger("state", "--json").stdout;
  const back = l.run("backup", "--ledger", l.path("file"), "--key", c.key, "--to", l.path("file.backup"), "--for", join(c.keys, "backup.public"));
  const thirdDatabase = ["--postgres", cluster.newDatabase(), "--club", "quillmere"];
  const andBack = c.restore("file.backup", "back", c.erasedList(), ...thirdDatabase);
  return all(status(withoutClub, 2), status(nowhere, 2), existsSync(l.path("other/ledger.sqlite")) ? "a file beside a database" : "", status(made, 0), existsSync(join(l.folder, "ledger.sqlite")) ? "a file beside a database" : "",
    status(first, 0), says(first.stdout, /stored, number 7/), status(again, 0), says(again.stdout, /known already, number 1/), status(keys, 0), status(backup, 0), says(backup.stdout, /from PostgreSQL, form \d+:/),
    status(c.check("one.backup"), 0), status(nobody, 2), says(nobody.stderr, /--club: found 'nobody', expected a club whose ledger lies in that database/), status(erased, 0), status(books, 0), says(books.stdout, /7 entries, 2 of erased people/),
    status(intoFile, 0), same(c.state("file").stdout, state, "the state in a file"), status(taken, 2), says(taken.stderr, /'quillmere', which has rows in person/), existsSync(l.path("taken")) ? "a folder was left behind" : "",
    status(intoDatabase, 0), same(c.state("database", ...into).stdout, state, "the state in another database"), status(cut, 2), existsSync(l.path("cut")) ? "a folder was left behind" : "", status(afterCut, 0),
    silent(state, /Q07|knee|hip/), says(state, /Q08/), status(back, 0), status(andBack, 0), same(c.state("back", ...thirdDatabase).stdout, state, "the state there and back"), c.leftovers());
}
