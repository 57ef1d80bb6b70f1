// The words around the report (../../shared/words/words.ts). The report itself is the core's, in the language asked for.
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say } = wordsOf({ en, es });
