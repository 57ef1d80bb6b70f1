// The weeks of a season along the bottom: as many of their names as there is room for, the first among them.
import { widest } from "./measure.ts";

export function weekTicks(labels: string[], frameWidth: number): number[] {
  const room = widest(labels) + 14;
  const every = Math.max(1, Math.ceil((labels.length * room) / Math.max(1, frameWidth)));
  return labels.map((_, at) => at).filter((at) => at % every === 0);
}

// Half a week of air on both sides, so that the first and the last bar stand whole.
export function weekDomain(count: number): [number, number] {
  return [-0.5, Math.max(0.5, count - 0.5)];
}
