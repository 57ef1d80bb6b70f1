// A drill and its doses in the words of the language that is set; the catalogue's own where there are none.
import { drillWords } from "../../shared/words/renderings.ts";
import type { DoseStep, DrillDocument } from "./drill_document.ts";
import { many, say } from "./words.ts";

// A rendering is of the shipped drill. Where the club's own of that id says another number of things, it stays as it is.
export function spoken(drill: DrillDocument): DrillDocument {
  const words = drillWords(drill.id);
  if (!words) return drill;
  const of = <T>(own: T[], rendered: T[]): T[] => (own.length === rendered.length ? rendered : own);
  return {
    ...drill,
    name: words.name,
    how: words.how,
    cues: of(drill.cues, words.cues),
    stop_if: of(drill.stop_if, words.stop_if),
    watch: of(drill.watch, words.watch),
    rung: drill.rung.map((rung) => ({ ...rung, change: words.rungs[rung.key] ?? rung.change })),
  };
}

// As core/catalogue/drill.cpp says it in English.
export function doseInWords(drill: Pick<DrillDocument, "dose" | "formation" | "pair">, { sets, amount }: DoseStep): string {
  const { kind, sides } = drill.dose;
  const work = kind === "seconds" ? say("dose.seconds", { amount }) : many(kind === "passes" ? "passes" : "reps", amount);
  const worked = sets > 1 ? say("dose.sets", { sets, dose: work }) : work;
  const sided = sides ? say("dose.side", { dose: worked }) : worked;
  return drill.formation === "pairs" && !drill.pair?.both_at_once ? say("dose.each", { dose: sided }) : sided;
}

export function agesInWords({ from, to }: { from: number; to: number }): string {
  return from === to ? say("age", { age: from }) : say("ages", { from, to });
}
