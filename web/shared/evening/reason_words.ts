// Why a plan is as it is, in the language that is set, from the door's codes. Of a code that is not known here, as a newer
// engine may have, the door's own English sentence.
import type { Reason, WayOut } from "../engine/answers.ts";
import { anyOf, type KeyOf, list, type Values, wordsOf } from "../words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

type Key = KeyOf<typeof en>;
const { say } = wordsOf({ en, es });

// What things are called where it is shown.
export interface Names {
  drill(id: string): string;
  family(key: string): string;
  rung(drill: string, key: string): string;
}

export interface Told {
  words: string;
  english: boolean; // the door's own, to be marked as such for a screen reader
}

const kMinute = 60;

// '45 s', '2 min', '2 min 10 s'.
export function duration(seconds: number): string {
  const minutes = Math.floor(seconds / kMinute);
  const rest = seconds % kMinute;
  if (minutes === 0) return say("time.seconds", { seconds: rest });
  return rest === 0 ? say("time.minutes", { minutes }) : say("time.both", { minutes, seconds: rest });
}

const exists = (key: string): key is Key => {
  let at: unknown = en;
  for (const part of key.split(".")) at = (at as Record<string, unknown> | undefined)?.[part];
  return typeof at === "string";
};

const trySay = (key: string, values: Values = {}): string | undefined => (exists(key) ? say(key, values) : undefined);
const loadWords = ({ load }: Reason): string => trySay(`load.${load}`) ?? String(load);
const matchWords = ({ days_to_match: days }: Reason): string => (days === undefined ? "" : (trySay(`match.${days}`) ?? ""));

// Why a drill cannot be done tonight.
function barWords(bar: Reason): string | undefined {
  if (bar.code === "needs") return trySay(`because.needs.${bar.need}`, { count: bar.count ?? 0 });
  if (bar.code === "not-on") return trySay(`because.not-on.${bar.surface}`);
  return trySay(`because.${bar.code}`, { age: bar.age ?? 0, metres: bar.metres ?? 0, cones: bar.cones ?? 0 });
}

function changeWords(reason: Reason, names: Names): string | undefined {
  switch (reason.code) {
    case "slot-too-short": {
      const [needed, slot, breaks] = [reason.needed_seconds ?? 0, reason.slot_seconds ?? 0, reason.breaks_seconds ?? 0];
      const key = breaks > 0 ? "change.slot-too-short-with-breaks" : "change.slot-too-short";
      return say(key, { needed: duration(needed), slot: duration(slot), breaks: duration(breaks) });
    }
    case "room-for": {
      const drills = (reason.drills ?? []).map((drill) => names.drill(drill));
      return drills.length > 0 ? say("change.room-for", { drills: list(drills) }) : say("change.room-for-doses");
    }
    case "keeps-ceiling":
      return say("change.keeps-ceiling", { load: loadWords(reason), most: reason.most ?? 0, age: reason.age ?? 0, match: matchWords(reason) });
    case "keeps-ceilings":
      return say("change.keeps-ceilings", { match: matchWords(reason) });
    case "time-and-ceilings": {
      const time = reason.time && changeWords(reason.time, names);
      return time && say("change.time-and-ceilings", { time });
    }
    case "stands-in": {
      const because = reason.because && barWords(reason.because);
      return because && say("change.stands-in", { drill: names.drill(reason.drill ?? ""), because });
    }
    case "covers":
      return say("change.covers", { family: names.family(reason.family ?? "") });
    default:
      return trySay(`change.${reason.code}`) ?? barWords(reason);
  }
}

function cureWords(cure: Reason, names: Names): string | undefined {
  if (cure.code === "more-time") return say("cure.more-time", { time: duration(cure.seconds ?? 0) });
  const because = cure.because && barWords(cure.because);
  if (because && cure.drill !== undefined) return say("cure.none-can-be-done-because", { drill: names.drill(cure.drill), because });
  return trySay(`cure.${cure.code}`, { most: cure.most_new ?? 0 });
}

function demandWords(demand: Reason, names: Names): string | undefined {
  switch (demand.code) {
    case "slot":
      return say("demand.slot", { time: duration(demand.seconds ?? 0) });
    case "ceiling": {
      if (demand.load === "new-drills") return say("demand.ceiling-new", { most: demand.most ?? 0 });
      const key = demand.match_in_sight ? "demand.ceiling-near-match" : "demand.ceiling";
      return say(key, { most: demand.most ?? 0, load: loadWords(demand), age: demand.age ?? 0 });
    }
    case "pinned": {
      const drill = demand.drill ?? "";
      const because = demand.because && barWords(demand.because);
      if (!because) return demand.because ? undefined : say("demand.pinned", { drill: names.drill(drill) });
      const rung = demand.rung === undefined ? "" : names.rung(drill, demand.rung);
      return say(rung ? "demand.pinned-rung-because" : "demand.pinned-because", { drill: names.drill(drill), because, rung });
    }
    default:
      return demand.why;
  }
}

function wayWords(way: WayOut, names: Names): string {
  if (way.another_day) return say("way.another-day");
  const slot = way.slot_seconds === undefined ? "" : say("way.slot", { time: duration(way.slot_seconds) });
  const drills = way.lift.map((drill) => names.drill(drill));
  const lift = drills.length === 0 ? "" : say("way.lift", { drills: way.any_one ? anyOf(drills) : list(drills) });
  return slot && lift ? say("way.either", { slot, lift }) : slot || lift;
}

const told = (words: string | undefined, sentence: string): Told => (words ? { words, english: false } : { words: sentence, english: true });

export const reasonTold = (reason: Reason | undefined, why: string, names: Names): Told => told(reason && changeWords(reason, names), why);
export const cureTold = (reason: Reason | undefined, cure: string, names: Names): Told => told(reason && cureWords(reason, names), cure);
export const demandTold = (reason: Reason | undefined, demand: string, names: Names): Told => told(reason && demandWords(reason, names), demand);

export function wayOutTold(ways: WayOut[] | undefined, sentence: string, names: Names): Told {
  const words = (ways ?? []).map((way) => wayWords(way, names)).filter((way) => way !== "");
  return told(words.reduce((first, rest) => (first ? say("way.then", { first, rest }) : rest), ""), sentence);
}

// What somebody does beside the squad. dose: in words, of the drill that is done.
export function swapTold(kind: string | undefined, does: { drill: string; rung: string } | undefined, dose: string, instruction: string, names: Names): Told {
  if (kind === "nothing") return told(say("swap.nothing"), instruction);
  return told(does && say("swap.does", { drill: names.drill(does.drill), rung: names.rung(does.drill, does.rung), dose }), instruction);
}
