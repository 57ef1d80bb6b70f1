// The words of Set up the club (../../shared/words/words.ts).
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, lines, many } = wordsOf({ en, es });
