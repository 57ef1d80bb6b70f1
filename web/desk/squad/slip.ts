// Who does something else on an evening, and who stands with whom: the door's slip for the evening as it is tried.
import { useEffect, useState } from "preact/hooks";
import type { SlipAnswer, TakesPart } from "../../shared/engine/answers.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { eveningEngine } from "./evening_engine.ts";
import { requestOf, type PocketEvening, type Tried } from "./tried.ts";

const kSettlesMilliseconds = 500; // after the last try: the plan goes first

// The one before stays while the next is worked out. A try that cannot be planned has none.
export function useSlip(evening: PocketEvening, catalogue: DoorTable, tried: Tried, planned: boolean): SlipAnswer | undefined {
  const [slip, setSlip] = useState<SlipAnswer | undefined>();
  useEffect(() => {
    if (!planned) return;
    let wanted = true;
    const waits = setTimeout(() => {
      void eveningEngine()
        .ask(requestOf(evening, catalogue, tried, "slip"))
        .then((answer) => {
          if (wanted && answer.answer === "slip") setSlip(answer);
        });
    }, kSettlesMilliseconds);
    return () => {
      wanted = false;
      clearTimeout(waits);
    };
  }, [evening, catalogue, tried, planned]);
  return slip;
}

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
