// The words of the drills' screens.
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });

// A word of the catalogue's own lists, in the language set; the catalogue's where we have none.
export function wordFor(list: keyof typeof en.list, word: string): string {
  return Object.hasOwn(en.list[list], word) ? say(`list.${list}.${word}` as Parameters<typeof say>[0]) : word;
}
