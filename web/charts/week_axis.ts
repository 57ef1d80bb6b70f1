// The weeks of a season along the bottom: as many of their names as there is room for, the first among them.
import { widest } from "./measure.ts";

const kFewestWeeks = 12; // fewer leave the rest of the axis empty: bars stay thin when a season has just begun

const kBeyond = 8; // so far a name may reach over the frame's end

export function weekTicks(labels: string[], frameWidth: number): number[] {
  const room = widest(labels) + 14;
  const shown = Math.max(labels.length, kFewestWeeks);
  const every = Math.max(1, Math.ceil((shown * room) / Math.max(1, frameWidth)));
  const fits = (at: number) => ((at + 0.5) / shown) * frameWidth + widest([labels[at] ?? ""]) / 2 <= frameWidth + kBeyond;
  return labels.map((_, at) => at).filter((at) => at % every === 0 && fits(at));
}

// Half a week of air on both sides, so that the first and the last bar stand whole.
export function weekDomain(count: number): [number, number] {
  return [-0.5, Math.max(count, kFewestWeeks) - 0.5];
}
