// The words of the drills' screens.
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });

// What somebody wrote, within a sentence of ours: which way its letters run does not turn the rest (U+2068 and U+2069).
export const apart = (written: string): string => `\u2068${written}\u2069`;

// A word of the catalogue's own lists, in the language set; the catalogue's where we have none.
export function wordFor(list: keyof typeof en.list, word: string): string {
  return Object.hasOwn(en.list[list], word) ? say(`list.${list}.${word}` as Parameters<typeof say>[0]) : word;
}
