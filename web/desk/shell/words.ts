// The words of the frame (../../shared/words/words.ts). Each screen has a file like this one and tables of its own.
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, lines, many } = wordsOf({ en, es });
