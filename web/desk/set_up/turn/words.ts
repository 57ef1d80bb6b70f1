// The words of the turn of a season.
import { wordsOf } from "../../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });
