// A drill of the catalogue as the screens read it (docs/formats/drill.md).
import type { EveningPackage } from "../package/evening_package.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import type { NewRung } from "./events.ts";

export interface Drill {
  id: string;
  name: string;
  how: string;
  cues: string[];
  stop_if: string[];
  telling_seconds: number;
  watch: { fault: string; cue: string }[];
  rung: { key: string; change: string }[];
  formation: string;
  dose: {
    kind: "reps" | "seconds" | "passes";
    sides?: boolean;
    tempo_seconds?: number;
    rest_seconds?: number;
    side_change_seconds?: number;
  };
  pair?: { both_at_once?: boolean; swap_seconds?: number };
  space_metres?: { width: number; length: number };
}

export function drillDocument(pack: EveningPackage, id: string): DoorTable | undefined {
  const drills = pack.catalogue["drills"];
  if (!Array.isArray(drills)) return undefined;
  return drills.find((drill): drill is DoorTable => (drill as DoorTable)["id"] === id);
}

// The server read the catalogue before it packed it, so its drills have the form of the page above.
export function drillOf(pack: EveningPackage, id: string): Drill | undefined {
  return drillDocument(pack, id) as unknown as Drill | undefined;
}

export function nameOfDrill(pack: EveningPackage, id: string): string {
  return drillOf(pack, id)?.name ?? id;
}

// One rung up or down the ladder; absent at its end.
export function rungBeside(drill: Drill | undefined, key: string, by: 1 | -1): NewRung | undefined {
  const at = drill?.rung.findIndex((rung) => rung.key === key) ?? -1;
  const beside = at < 0 ? undefined : drill?.rung[at + by];
  return beside && { key: beside.key, words: beside.change };
}
