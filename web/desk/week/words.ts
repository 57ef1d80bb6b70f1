// The week's words, and its days as a range.
import { language, wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });

// '23–29 November 2026'.
export function rangeOf(from: string, to: string): string {
  const how = new Intl.DateTimeFormat(language.value === "en" ? "en-GB" : language.value, { day: "numeric", month: "long", year: "numeric" });
  return how.formatRange(new Date(`${from}T12:00:00`), new Date(`${to}T12:00:00`));
}
