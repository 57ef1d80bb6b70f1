// The door's slip for the evening as it is tried: who does something else, and who stands with whom.
import { useEffect, useState } from "preact/hooks";
import type { SlipAnswer } from "../../shared/engine/answers.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { eveningEngine } from "./evening_engine.ts";
import { requestOf, type PocketEvening, type Tried } from "./tried.ts";

const kSettlesMilliseconds = 500; // after the last try: the plan goes first; an evening that was just opened waits for nothing

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
    }, slip ? kSettlesMilliseconds : 0);
    return () => {
      wanted = false;
      clearTimeout(waits);
    };
  }, [evening, catalogue, tried, planned]);
  return slip;
}
