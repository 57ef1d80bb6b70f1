// A drill in the words of the language that is set; the catalogue's own where there are none.
import type { PlanItem } from "../../shared/engine/answers.ts";
import { drillOf, nameOfDrill, type Drill } from "../evening/drill.ts";
import type { EveningPackage } from "../package/evening_package.ts";
import { drillWords } from "../../shared/words/renderings.ts";
import type { Names } from "../../shared/evening/reason_words.ts";
import { many, say } from "../words/words.ts";

export function nameOf(pack: EveningPackage, id: string): string {
  return drillWords(id)?.name ?? nameOfDrill(pack, id);
}

// A rendering stands for the shipped drill: one of another number of cues is a club's own, and stays as it is.
export function drillIn(pack: EveningPackage, id: string): Drill | undefined {
  const drill = drillOf(pack, id);
  const words = drillWords(id);
  if (!drill || !words) return drill;
  const fitting = <T>(own: T[], theirs: T[]): T[] => (own.length === theirs.length ? theirs : own);
  const watch = fitting(drill.watch, words.watch);
  const cues = fitting(drill.cues, words.cues);
  const stop_if = fitting(drill.stop_if, words.stop_if);
  const rung = drill.rung.map((each) => ({ ...each, change: words.rungs[each.key] ?? each.change }));
  return { ...drill, name: words.name, how: words.how, watch, cues, stop_if, rung };
}

export function rungWords(item: Pick<PlanItem, "drill" | "rung" | "rung_words">): string {
  return drillWords(item.drill)?.rungs[item.rung] ?? item.rung_words;
}

// As core/catalogue says it in English.
export function doseWords(pack: EveningPackage, item: Pick<PlanItem, "drill" | "sets" | "amount" | "dose">): string {
  const drill = drillOf(pack, item.drill);
  if (!drill) return item.dose;
  const { kind, sides } = drill.dose;
  let words = kind === "seconds" ? say("dose.seconds", { amount: item.amount }) : many(kind, item.amount);
  if (item.sets > 1) words = say("dose.sets", { sets: item.sets, dose: words });
  if (sides) words = say("dose.side", { dose: words });
  if (drill.formation === "pairs" && !drill.pair?.both_at_once) words = say("dose.each", { dose: words });
  return words;
}

const kFamilies = [
  "pulse-raising", "mobility", "hip-and-groin", "hamstring", "trunk", "balance", "leg-strength", "jump-and-land", "run-and-cut",
] as const;

export function familyWords(family: string): string {
  const known = kFamilies.find((each) => each === family);
  return known ? say(`family.${known}`) : family;
}

// What drills, families and rungs are called where a reason is told.
export function namesOf(pack: EveningPackage): Names {
  return {
    drill: (id) => nameOf(pack, id),
    family: familyWords,
    rung: (id, key) => drillWords(id)?.rungs[key] ?? drillOf(pack, id)?.rung.find((rung) => rung.key === key)?.change ?? key,
  };
}
