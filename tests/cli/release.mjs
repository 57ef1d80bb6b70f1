// The board's releases from the command line: looked at first, made once, frozen, and in the backup.
import { join } from "node:path";
import { all, entry, Ledger, says, silent, status, withLedger } from "./ledger_folder.mjs";
import { PrivateCluster } from "./private_cluster.mjs";

const kAutumn = ["--from", "2025-08-01", "--until", "2025-12-31"];
const kSeason = ["--from", "2025-08-01", "--until", "2026-06-30"];

// Eleven of the under 13, six of the under 16, two of the under 11, each another child.
const kHurt = [["u13", 11, "knee"], ["u16", 6, "ankle"], ["u11", 2, "knee"]].flatMap(([squad, many, region], at) =>
  Array.from({ length: many }, (_, index) => entry(at * 20 + index + 1, "injury-opened", { player: `${squad}-${index}`, squad, day: "2025-10-01", what: ["setting match", `region ${region}`] })));

// Each child's guardian agreed to the record and to being counted.
const kAgreed = [...new Set(kHurt.map(({ player }) => player))].flatMap((player, at) =>
  ["injury-record", "statistics"].map((purpose, which) => entry(1000 + 2 * at + which, "consent", { player, purpose, by: "guardian", answer: "given", day: "2025-08-01" })));

const release = (ledger, ...words) => ledger.run("release", "--ledger", ledger.folder, ...ledger.where, ...words);

function restored(ledger) {
  ledger.add([...kAgreed, ...kHurt], "--role", "lead");
  const made = release(ledger, ...kAutumn);
  const keys = ledger.path("keys");
  const key = join(ledger.folder, "ledger.key");
  ledger.run("backup", "keys", "--out", keys);
  const backup = ledger.run("backup", "--ledger", ledger.folder, ...ledger.where, "--to", ledger.path("one.backup"), "--for", join(keys, "backup.public"));
  const back = ledger.run("restore", ledger.path("one.backup"), "--private", join(keys, "backup.private"), "--key", key, "--ledger", ledger.path("again"), "--erased", "none");
  const there = (...words) => ledger.run("release", "--ledger", ledger.path("again"), "--key", key, ...words);
  const next = there(...kSeason, "--dry-run", "--json");
  return all(status(made, 0), status(release(ledger, ...kAutumn), 2), status(backup, 0), status(back, 0), status(there(...kAutumn), 2), says(there(...kAutumn).stderr, /frozen/), status(next, 0), says(next.stdout, /"release": 2/));
}

export const releases = [
  withLedger("a release is looked at first, made once, and frozen", (ledger) => {
    const added = ledger.add([...kAgreed, ...kHurt], "--role", "lead");
    const dry = release(ledger, ...kAutumn, "--dry-run");
    const made = release(ledger, ...kAutumn, "--json");
    const again = release(ledger, ...kAutumn);
    const season = release(ledger, ...kSeason);
    const { release: given, tried, not_given } = JSON.parse(made.stdout);
    const rows = new Map(given.injuries.squads.map((row) => [row.key, row]));
    return all(status(added, 0), status(dry, 0), says(dry.stdout, /^Release 1 of/), says(dry.stdout, /u11 +hidden, fewer than 5 or needed to hide one/), says(dry.stdout, /squads u11, 2025-08-01 to 2025-12-31: 0 to 8/),
      says(dry.stdout, /Nothing was released/), status(made, 0), says(JSON.stringify(rows.get("u13")), /"count":11/), says(JSON.stringify(rows.get("u16")), /"hidden":true/), says(tried.join(), /Of squads also hidden: u16/),
      not_given.length > 5 ? "" : "nothing is told to the lead", silent(made.stdout, /u13-\d/), status(again, 2), says(again.stderr, /frozen/),
      status(season, 0), says(season.stdout, /Nothing is said of injuries/));
  }),
  withLedger("what is no period is refused in a line", (ledger) => {
    const wrong = [["--from", "autumn", "--until", "2025-12-31"], ["--from", "2025-12-31", "--until", "2025-08-01"], ["--from", "2025-08-01", "--until", "2025-08-31"], ["--from", "2025-08-01", "--until", "2099-08-31"]];
    return all(...wrong.map((words) => status(release(ledger, ...words), 2)), says(release(ledger, ...wrong[2]).stderr, /a season or a half: 90 to 400 days/));
  }),
  withLedger("a restored ledger knows what was released", restored),
  {
    name: "ledger: releases on PostgreSQL, and from there into a file",
    async run(program) {
      const cluster = await PrivateCluster.started();
      const ledger = new Ledger(program);
      try {
        ledger.where = ["--postgres", cluster.newDatabase(), "--club", "quillmere"];
        return all(status(ledger.ledger("new"), 0), restored(ledger));
      } finally {
        ledger.remove();
        cluster.stop();
      }
    },
  },
];
