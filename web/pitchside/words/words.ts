// The words of the phone's screens (../../shared/words/words.ts).
import { type KeyOf, type ListKeyOf, type ManyKeyOf, wordsOf } from "../../shared/words/words.ts";
import en from "./en.json";
import es from "./es.json";

export { language, type Language, list, number, weekday } from "../../shared/words/words.ts";
export type Key = KeyOf<typeof en>;
export type ListKey = ListKeyOf<typeof en>;
export type ManyKey = ManyKeyOf<typeof en>;

export const { say, lines, many } = wordsOf({ en, es });
