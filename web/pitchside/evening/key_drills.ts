// The drills that a new coach should see good examples of: those whose family weighs most, a family's further drills
// later; as the pack on paper chooses them (app/cli/clinic_matter.cpp, own judgement).
import type { PlanItem } from "../../shared/engine/answers.ts";

const kMost = 8;
const kFurther = 3; // in weights: what a further drill of a family counts less

export function keyDrills(items: PlanItem[], weights: Map<string, number>): PlanItem[] {
  const seen = new Map<string, number>();
  const ranked = items.map((item, at) => {
    const before = seen.get(item.family) ?? 0;
    seen.set(item.family, before + 1);
    return { at, rank: kFurther * before - (weights.get(item.family) ?? 1) };
  });
  const chosen = ranked.sort((one, other) => one.rank - other.rank || one.at - other.at).slice(0, kMost);
  return chosen.sort((one, other) => one.at - other.at).map(({ at }) => items[at] as PlanItem);
}
