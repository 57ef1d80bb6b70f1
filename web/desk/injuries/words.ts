// The words of Injuries (../../shared/words/words.ts), with those of every term of the records.
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export const { say, many } = wordsOf({ en, es });

export const isWord = <Table extends object>(table: Table, key: string): key is keyof Table & string => Object.hasOwn(table, key);

export function stepWords(step: string): string {
  return isWord(en.step, step) ? say(`step.${step}`) : step;
}

export function gateWords(gate: string): string {
  return isWord(en.gate, gate) ? say(`gate.${gate}`) : gate;
}

export function placeWords(place: string): string {
  return isWord(en.place, place) ? say(`place.${place}`) : place;
}
