// The squad screen's words, with the days and shares that they need.
import { language, wordsOf } from "../../shared/words/words.ts";
import { dayAfter } from "../week/days.ts";
import { weekdayOfSlot } from "./standing.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });
export type Key = Parameters<typeof say>[0];

const kSomeMonday = "2024-01-01";

// 'Tuesday' of 2.
export function weekdayName(weekday: number): string {
  const day = new Date(`${dayAfter(kSomeMonday, weekday - 1)}T12:00:00`);
  return new Intl.DateTimeFormat(language.value, { weekday: "long" }).format(day);
}

// 'Tuesday, 18:00' of 'tuesday 18:00'.
export function slotWords(slot: string): string {
  return `${weekdayName(weekdayOfSlot(slot))}, ${slot.split(" ")[1] ?? ""}`;
}

// '1.8' of 1.83: shares in per cent, with a sign of its own where it is asked for.
export function percent(value: number, digits = 1): string {
  return new Intl.NumberFormat(language.value, { maximumFractionDigits: digits }).format(value);
}

const kQuarters = ["", "¼", "½", "¾"];

// '2½' of 2.5: full doses come in quarters.
export function inQuarters(value: number): string {
  const quarters = Math.round(value * 4);
  const whole = Math.floor(quarters / 4);
  const part = kQuarters[quarters % 4] ?? "";
  return whole === 0 && part !== "" ? part : `${whole}${part}`;
}
