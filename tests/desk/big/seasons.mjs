// Five seasons of evenings as a ledger has them: begun, who was there, wrapped up, drills that wanted help, visits; players
// hurt and back, sore ones, and what the guardians signed. Invented, one seed.
import { generator } from "../../../tools/generate/seeded_numbers.mjs";

const kDay = 86_400_000;
const kSeed = 20261127;
const kWeeksOfSeason = 40;
const kWeekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];
const kRegions = ["ankle", "knee", "thigh", "hip-and-groin", "foot", "lower-leg"];
const kDrills = ["single-leg-bridge", "plant-and-cut", "side-plank", "squat"];
const kHurtEach = 61; // evenings
const kSoreEach = 43;
const kVisitEach = 40;
const kDaysOut = 14;

const iso = (time) => new Date(time).toISOString().slice(0, 10);

class Books {
  constructor() {
    this.random = generator(kSeed);
    this.made = 0;
    this.count = { coach: 0, lead: 0 };
    this.begin();
  }

  begin() {
    this.entries = { coach: [], lead: [] };
  }

  // RFC 9562, version 7; its id.
  add(role, kind, time, fields) {
    const when = Math.round(time).toString(16).padStart(12, "0");
    const nth = (++this.made).toString(16).padStart(12, "0");
    const id = `${when.slice(0, 8)}-${when.slice(8)}-7000-8000-${nth}`;
    this.entries[role].push({ id, sequence: ++this.count[role], device_time: `${new Date(time).toISOString().slice(0, 19)}Z`, kind, ...fields });
    return id;
  }

  among(list) {
    return list[Math.floor(this.random() * list.length)];
  }
}

function evening(books, squad, day, start) {
  const time = Date.parse(`${day}T${start}:00Z`);
  const about = { squad: squad.id, day, start };
  const luck = books.random();
  if (luck < 0.06) return void books.add("coach", "wrap-up", time, { ...about, happened: "missed" });
  const short = luck < 0.16;
  const players = squad.players.filter(() => books.random() < 0.85);
  books.add("coach", "session-started", time, about);
  books.add("coach", "attendance", time + 60_000, { ...about, there: players.length || 12, ...(players.length > 0 ? { players } : {}) });
  if (books.random() < 0.2) books.add("coach", "drill-marked", time + 600_000, { ...about, drill: books.among(kDrills), mark: "needs-help" });
  const how = books.random();
  const note = books.random() < 0.1 ? { note: "Wet grass; the last drill was cut." } : {};
  books.add("coach", "wrap-up", time + 1_200_000, { ...about, happened: short ? "cut-short" : "held", did_it: how < 0.65 ? "most" : how < 0.9 ? "half" : "few", minutes: short ? 12 : 19, ...note });
  if (books.random() < 1 / kVisitEach) books.add("lead", "visit", time + 1_800_000, { ...about, form: "observer-1" });
}

// Gives what is to be closed when its player is back.
function hurt(books, squad, day, start) {
  const player = books.among(squad.players);
  const time = Date.parse(`${day}T${start}:00Z`);
  const region = books.among(kRegions);
  const id = books.add("coach", "hurt", time + 900_000, { player, place: "ankle" });
  const injury = books.add("lead", "injury-opened", time + 10_000_000, { player, squad: squad.id, day, what: [`region ${region}`, "setting training", "onset acute-sudden"] });
  return { player, id, injury, back: Date.parse(day) + kDaysOut * kDay };
}

function closed(books, { player, id, injury, back }) {
  books.add("lead", "clearance", back, { player, names: [id], clinician: "An invented clinician", profession: "physiotherapist" });
  books.add("lead", "lifted", back, { player, names: [id] });
  books.add("lead", "injury-closed", back, { player, injury, returned: iso(back) });
}

// The Mondays of all seasons, oldest first; the latest season ends in the week of `today`.
function mondaysOf(today, seasons) {
  const now = Date.parse(today);
  const own = now - ((new Date(now).getUTCDay() + 6) % 7) * kDay;
  return Array.from({ length: seasons }, (_, season) => Array.from({ length: kWeeksOfSeason }, (_unused, week) => own - 7 * kDay * (52 * season + week))).flat().sort((a, b) => a - b);
}

function signed(books, squads, time) {
  for (const player of new Set(squads.flatMap(({ players }) => players))) {
    for (const purpose of ["training", "injury-record", "statistics"]) books.add("lead", "consent", time, { player, purpose, by: "guardian", answer: "given", day: iso(time) });
  }
}

// Week by week {role, received, entries}. told(squad, day): whether the ledger has that evening by another way.
export function* seasonsOf(squads, { seasons, today, told }) {
  const books = new Books();
  const out = [];
  const mondays = mondaysOf(today, seasons);
  signed(books, squads, mondays[0] - kDay);
  let evenings = 0;
  for (const monday of mondays) {
    for (const squad of squads) {
      for (const { weekday, start } of squad.slots) {
        const day = iso(monday + kWeekdays.indexOf(weekday) * kDay);
        if (day >= today || told(squad, day)) continue;
        evening(books, squad, day, start);
        evenings += 1;
        if (squad.players.length === 0) continue;
        if (evenings % kHurtEach === 0) out.push(hurt(books, squad, day, start));
        if (evenings % kSoreEach === 0) books.add("coach", "soreness", Date.parse(`${day}T${start}:00Z`), { player: books.among(squad.players), place: "knee", before: 2 });
      }
    }
    const sunday = monday + 6 * kDay;
    while (out.length > 0 && out[0].back <= Math.min(sunday, Date.parse(today) - kDay)) closed(books, out.shift());
    const received = `${iso(Math.min(sunday, Date.parse(today) - kDay))}T22:00:00Z`;
    for (const [role, entries] of Object.entries(books.entries)) if (entries.length > 0) yield { role, received, entries };
    books.begin();
  }
}
