// A squad's coming evenings with everything that the door needs to plan them (docs/formats/pocket.md), and the catalogue.
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { useEffect, useState } from "preact/hooks";
import { knowCatalogue } from "./drill_names.ts";
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

export type Had = { evenings: SquadEvenings } | "waiting" | "not-had";

// Read when the squad is opened: a line in the book of reads, as on a phone.
export function useEvenings(squad: string): Had {
  const [had, setHad] = useState<{ squad: string; had: Had }>({ squad, had: "waiting" });
  useEffect(() => {
    let wanted = true;
    setHad({ squad, had: "waiting" });
    void evenings(squad).then((got) => {
      if (got !== "waiting" && got !== "not-had") knowCatalogue(got.evenings.catalogue);
      if (wanted) setHad({ squad, had: got });
    });
    return () => {
      wanted = false;
    };
  }, [squad]);
  return had.squad === squad ? had.had : "waiting";
}

async function evenings(squad: string): Promise<Had> {
  try {
    const response = await fetch(`/api/squads/${encodeURIComponent(squad)}/evenings`, { cache: "no-store" });
    return response.ok ? { evenings: (await response.json()) as SquadEvenings } : "not-had";
  } catch {
    return "not-had";
  }
}
