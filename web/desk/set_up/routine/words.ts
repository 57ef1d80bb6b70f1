// The words of the house routines in Set up.
import { wordsOf } from "../../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });

// Of an id: a shipped one, or one that the club made its own of it, by its name; undefined of any other.
export function shippedName(id: string): string | undefined {
  const shipped = id.replace(/-own(-\d+)?$/, "");
  if (!Object.hasOwn(en.shipped, shipped)) return undefined;
  const name = say(`shipped.${shipped as keyof typeof en.shipped}`);
  return shipped === id ? name : say("own_name", { name });
}
