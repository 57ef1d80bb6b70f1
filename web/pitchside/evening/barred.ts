// Which rungs ask more than little of a sore place: what a permission names in place of the place itself
// (docs/formats/permissions.md). The same sum as core/people makes of a restriction with 'allowed = "light"'.
import type { DoorTable } from "../../shared/engine/door_value.ts";

const kLight = 1; // of the grades 1 light, 2 moderate, 3 heavy

interface Stress {
  area: string;
  kind: string;
  grade: number;
}

interface Stressed {
  id: string;
  stress?: Stress[];
  rung: { key: string; stress?: Stress[] }[];
}

// A rung's grade replaces the drill's for the same area and kind.
function stressOf(drill: Stressed, rung: { stress?: Stress[] }): Stress[] {
  const own = rung.stress ?? [];
  const replaced = (one: Stress) => own.some((other) => other.area === one.area && other.kind === one.kind);
  return [...(drill.stress ?? []).filter((one) => !replaced(one)), ...own];
}

// Rows of a drill and its barred rungs; of a drill alone where every rung is barred. Without a place: of every area.
export function barredFor(catalogue: DoorTable, place: string | undefined): string[][] {
  const drills = (catalogue["drills"] ?? []) as unknown as Stressed[];
  const rows: string[][] = [];
  for (const drill of drills) {
    const barred = drill.rung.filter((rung) =>
      stressOf(drill, rung).some((one) => one.grade > kLight && (place === undefined || one.area === place)),
    );
    if (barred.length === 0) continue;
    rows.push(barred.length === drill.rung.length ? [drill.id] : [drill.id, ...barred.map((rung) => rung.key)]);
  }
  return rows;
}
