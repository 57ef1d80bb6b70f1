// A season's records of an invented club, with a truth that is known: squads, hours, attendance, warm-ups and injuries
// (docs/formats/records.md). One seed: the same bytes on every machine.
// usage: node tools/generate/season.mjs [--squads 24] [--weeks 40] [--effect 0.8] [--rate 4] [--seed 1] --out DIR
//   --effect: what one warm-up a week more multiplies the rate by; --rate: injuries in 1000 h without warm-ups
// Without --out it writes demo/quillmere/season; a lint compares.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { join } from "node:path";
import { generator } from "./seeded_numbers.mjs";

export const kFolder = "demo/quillmere/season";
const kFirstMonday = "2025-08-25";

class Chance {
  constructor(seed) {
    this.even = generator(seed);
  }
  below(n) {
    return Math.floor(this.even() * n);
  }
  happens(share) {
    return this.even() < share;
  }
  normal() {
    return Math.sqrt(-2 * Math.log(1 - this.even())) * Math.cos(2 * Math.PI * this.even());
  }
  // By inversion; means here are well below 20.
  poisson(mean) {
    let left = this.even();
    let own = Math.exp(-mean);
    let count = 0;
    while (left > own && count < 100) {
      left -= own;
      count += 1;
      own *= mean / count;
    }
    return count;
  }
  // One of [value, weight] pairs.
  pick(pairs) {
    let left = this.even() * pairs.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [value, weight] of pairs) {
      left -= weight;
      if (left < 0) return value;
    }
    return pairs.at(-1)[0];
  }
}

const kNames = ["Wrens", "Goldcrests", "Siskins", "Linnets", "Dunnocks", "Redstarts", "Kestrels", "Wagtails", "Fieldfares", "Lapwings", "Jackdaws", "Plovers",
  "Curlews", "Sparrowhawks", "Redwings", "Merlins", "Avocets", "Goshawks", "Egrets", "Herons", "Cranes", "Buzzards", "Ospreys", "Kites"];
const kBands = [10, 10, 11, 11, 12, 12, 13, 13, 13, 14, 14, 14, 15, 15, 15, 16, 16, 16, 17, 17, 18, 18, 19, 19];
const kSexes = ["mixed", "girls", "mixed", "girls", "mixed", "girls", "boys", "girls", "boys", "girls", "boys", "mixed", "girls", "boys", "mixed", "boys", "girls",
  "boys", "girls", "boys", "girls", "boys", "girls", "mixed"];

// What an injury is: [region, tissue, contact, onset, activity], how often. Shares are invented.
const kKinds = [
  [["ankle", "joint-sprain", "none", "acute-sudden", "landing"], 14], [["ankle", "joint-sprain", "indirect-athlete", "acute-sudden", "being-tackled"], 8],
  [["knee", "joint-sprain", "none", "acute-sudden", "cutting"], 7], [["knee", "contusion", "direct-athlete", "acute-sudden", "tackling"], 7],
  [["thigh", "muscle-injury", "none", "acute-sudden", "sprinting"], 15], [["thigh", "muscle-contusion", "direct-athlete", "acute-sudden", "being-tackled"], 7],
  [["hip-and-groin", "muscle-injury", "none", "acute-sudden", "kicking"], 8], [["knee", "physis-injury", "none", "repetitive-gradual", "jumping"], 6],
  [["foot", "physis-injury", "none", "repetitive-gradual", "running"], 5], [["lower-leg", "contusion", "direct-athlete", "acute-sudden", "tackling"], 6],
  [["head", "brain-or-spinal-cord-injury", "direct-athlete", "acute-sudden", "heading"], 3], [["wrist", "fracture", "direct-object", "acute-sudden", "falling"], 4],
  [["lumbosacral", "non-specific", "none", "repetitive-gradual", "running"], 4], [["hand", "joint-sprain", "direct-object", "acute-sudden", "throwing-or-catching"], 3],
];

function dayAfter(date, days) {
  const at = new Date(`${date}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}

// Skewed: half of them about a week or less, few very long.
const daysOut = (chance) => (chance.happens(0.12) ? 0 : Math.max(1, Math.floor(Math.exp(1.9 + 1.1 * chance.normal()))));

function makeSquads(count, chance) {
  return Array.from({ length: count }, (_, i) => {
    const band = kBands[i % kBands.length];
    const name = kNames[i % kNames.length] + (i >= kNames.length ? ` ${1 + Math.floor(i / kNames.length)}` : "");
    const young = band < 13;
    return { id: `u${band}-${name.toLowerCase().replaceAll(" ", "-")}`, name: `U${band} ${name}`, band: `U${band}`, sex: kSexes[i % kSexes.length], players: 10 + chance.below(10),
      training: young ? 60 : 90, match: young ? 50 : 80, field: young ? 7 : 11, evenings: young ? 2 : 2 + chance.below(2), effect: Math.exp(0.35 * chance.normal()),
      // How keen the coach is: warm-ups done at so many of the evenings; some were never taught.
      keen: Math.min(0.97, Math.max(0.05, 0.62 + 0.28 * chance.normal())), taught: chance.happens(0.75) ? dayAfter(kFirstMonday, 7 * chance.below(10)) : "",
      careful: 0.75 + 0.25 * chance.even() };
  });
}

const heading = (text) => [text];

export function season({ squads: count = 24, weeks = 40, effect = 0.8, rate = 5, seed = 20250825 } = {}) {
  const chance = new Chance(seed);
  const squads = makeSquads(count, chance);
  const sheets = {
    squads: heading("squad,name,club,age band,sex,players,training minutes,match minutes,on the field,taught"),
    hours: heading("squad,date,setting,minutes,players,hours,player,warm-up,warm-up minutes,left out,needing help,confirmed"),
    injuries: heading("squad,player,event,date,setting,onset,contact,region,tissue,side,activity,recurrence,loss began,returned,days missed,note"),
    players: heading("player,squad,joined,left"),
  };
  const asOf = dayAfter(kFirstMonday, 7 * weeks - 1);
  for (const squad of squads) {
    sheets.squads.push([squad.id, squad.name, "Quillmere Juniors", squad.band, squad.sex, squad.players, squad.training, squad.match, squad.field, squad.taught].join(","));
    for (let p = 1; p <= squad.players; ++p) sheets.players.push(`${squad.id}-${p},${squad.id},,${chance.happens(0.03) ? dayAfter(kFirstMonday, 7 * chance.below(weeks)) : ""}`);
    const lately = [];
    for (let week = 0; week < weeks; ++week) {
      if (week >= 17 && week < 19) continue;  // the winter break
      const rows = [];
      let done = 0;
      const held = Array.from({ length: squad.evenings }, (_, e) => ({ setting: "training", day: 1 + 2 * e })).concat(chance.happens(0.85) ? [{ setting: "match", day: 5 }] : []);
      for (const { setting, day } of held) {
        if (chance.happens(0.06)) continue;
        const training = setting === "training";
        const there = training ? Math.max(5, Math.round(squad.players * (0.7 + 0.25 * chance.even()))) : squad.field;
        // Enthusiasm wanes a little through the season.
        const did = chance.happens(squad.keen * (1 - 0.25 * week / weeks)) ? chance.pick([["most", 7], ["half", 2], ["few", 1]]) : "no";
        done += { most: 1, half: 0.5, few: 0.2, no: 0 }[did];
        const minutes = (training ? squad.training : squad.match) + 5 * (chance.below(5) - 2);
        rows.push({ date: dayAfter(kFirstMonday, 7 * week + day), setting, minutes, there, did, written: chance.happens(squad.careful) });
      }
      if (rows.length === 0) continue;
      lately.push(done);
      const dose = lately.slice(-4).reduce((sum, one) => sum + one, 0) / Math.min(4, lately.length);
      for (const row of rows) {
        const known = row.written;
        const skipped = known && row.did !== "no" && chance.happens(0.08) ? chance.pick([["adductor-hold-partner", 4], ["kneeling-hamstring-lower", 5], ["side-plank", 2], ["line-hop-pattern", 1]]) : "";
        const help = known && row.did !== "no" && chance.happens(0.03) ? chance.pick([["plant-and-cut", 3], ["single-leg-squat-at-wall", 3], ["drop-and-freeze", 2]]) : "";
        sheets.hours.push([squad.id, row.date, row.setting, known ? row.minutes : "", known ? row.there : "", "", "", known ? row.did : "", known && row.did !== "no" ? 12 + chance.below(8) : "", skipped, help,
          known && chance.happens(0.9) ? "yes" : ""].join(","));
        const hours = (row.minutes * row.there) / 60;
        const happened = chance.poisson((rate / 1000) * hours * squad.effect * effect ** dose * (row.setting === "match" ? 2.6 : 0.7));
        for (let n = 0; n < happened; ++n) {
          const [region, tissue, contact, onset, activity] = chance.pick(kKinds);
          const out = daysOut(chance);
          const back = dayAfter(row.date, out + 1);
          const sure = (value, share) => (chance.happens(share) ? value : "");
          sheets.injuries.push([squad.id, `${squad.id}-${1 + chance.below(squad.players)}`, "", row.date, row.setting, sure(onset, 0.95), sure(contact, 0.9), sure(region, 0.98), sure(tissue, 0.9),
            ["head", "lumbosacral"].includes(region) ? "middle" : chance.pick([["left", 1], ["right", 1]]), sure(activity, 0.85), chance.pick([["first", 82], ["re-injury", 8], ["subsequent-local", 2], ["subsequent-new", 8]]), "",
            out === 0 ? row.date : back <= asOf ? back : "", "", ""].join(","));
        }
      }
    }
  }
  return Object.fromEntries(Object.entries(sheets).map(([name, rows]) => [`${name}.csv`, `${rows.join("\n")}\n`]));
}

// [path, text] of the demo's own season.
export const demoSeason = () => Object.entries(season()).map(([name, text]) => [`${kFolder}/${name}`, text]);

function main(words) {
  const asked = {};
  let out = kFolder;
  for (let i = 0; i < words.length; i += 2) {
    const name = words[i].replace(/^--/, "");
    if (name === "out") out = words[i + 1];
    else asked[name] = Number(words[i + 1]);
  }
  mkdirSync(out, { recursive: true });
  for (const [name, text] of Object.entries(season(asked))) writeFileSync(join(out, name), text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main(process.argv.slice(2));
