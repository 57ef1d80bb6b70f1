// A squad's coming evenings with everything that the door needs to plan them (docs/formats/pocket.md), and the catalogue.
import type { DoorTable } from "../../shared/engine/door_value.ts";
import type { PocketEvening } from "./tried.ts";

export interface SquadEvenings {
  evenings: PocketEvening[];
  catalogue: DoorTable;
}

// The learned pace of the squad: above 1 is slower; absent where nothing was learned yet.
export function paceOf({ evenings }: SquadEvenings): number | undefined {
  const clock = evenings[0]?.documents.squad["clock"] as DoorTable | undefined;
  return typeof clock?.["pace"] === "number" ? clock["pace"] : undefined;
}
