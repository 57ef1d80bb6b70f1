// A slip in numbers: how many do something else, and in how many pairs they stand.
import type { SlipAnswer, TakesPart } from "../../shared/engine/answers.ts";

export interface SlipCounts {
  joins_in: number;
  with_swaps: number;
  sits_out: number;
  pairs: number;
  trios: number;
  alone: number;
}

// roster: how many the squad has.
export function countsOf({ swaps, groups, alone }: SlipAnswer, roster: number): SlipCounts {
  const of = (word: TakesPart) => swaps.filter(({ takes_part }) => takes_part === word).length;
  const with_swaps = of("joins in with swaps");
  const sits_out = of("sits out, see a clinician");
  const groups_of = (size: number) => groups.filter(({ players }) => players.length === size).length;
  return { joins_in: roster - with_swaps - sits_out, with_swaps, sits_out, pairs: groups_of(2), trios: groups_of(3), alone: alone.length };
}

// Every two of a group: those that may be kept apart.
export function pairsIn(players: string[]): [string, string][] {
  return players.flatMap((one, index) => players.slice(index + 1).map((other): [string, string] => [one, other]));
}
