// A dose in words, in full and in the short form of a cell. As core/catalogue says it in English.
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { drillOf } from "./drill_names.ts";
import { many, say } from "./words.ts";

interface Dose {
  drill: string;
  sets: number;
  amount: number;
}

interface Kind {
  kind: "reps" | "seconds" | "passes" | "unknown";
  sides: boolean;
  each: boolean; // one of a pair after the other
}

function kindOf(id: string): Kind {
  const drill = drillOf(id);
  const dose = drill?.["dose"] as DoorTable | undefined;
  const pair = drill?.["pair"] as DoorTable | undefined;
  const kind = dose?.["kind"];
  const known = kind === "reps" || kind === "seconds" || kind === "passes";
  return { kind: known ? kind : "unknown", sides: dose?.["sides"] === true, each: drill?.["formation"] === "pairs" && pair?.["both_at_once"] !== true };
}

export function doseWords({ drill, sets, amount }: Dose): string {
  const { kind, sides, each } = kindOf(drill);
  if (kind === "unknown") return shortDose({ drill, sets, amount });
  let words = kind === "seconds" ? say("dose.seconds", { amount }) : many(kind, amount);
  if (sets > 1) words = say("dose.sets", { sets, dose: words });
  if (sides) words = say("dose.side", { dose: words });
  return each ? say("dose.each", { dose: words }) : words;
}

export function shortDose({ drill, sets, amount }: Dose): string {
  const amounts = kindOf(drill).kind === "seconds" ? say("dose.seconds", { amount }) : String(amount);
  return sets > 1 ? say("dose.sets", { sets, dose: amounts }) : amounts;
}

// '1 min 36 s' of 96.
export function durationWords(seconds: number): string {
  const whole = Math.abs(Math.round(seconds));
  const minutes = Math.floor(whole / 60);
  const rest = whole % 60;
  if (minutes === 0) return say("time.seconds", { seconds: rest });
  return rest === 0 ? say("time.minutes", { minutes }) : say("time.both", { minutes, seconds: rest });
}
