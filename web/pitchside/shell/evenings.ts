// The evenings that the phone holds, in the order in which they come, and what was kept of each.
import type { EveningState } from "../evening/evening_state.ts";
import { openEvening } from "../evening/open_evening.ts";
import type { HeldPackage } from "../keep/packages.ts";
import type { Evening } from "../package/evening_package.ts";

export interface HeldEvening {
  key: string; // of the evening's state in what is kept
  held: HeldPackage;
  evening: Evening;
}

export const keyOf = (squad: string, { day, start }: Evening): string => `${squad} ${day} ${start}`;

// From today on; of one day by their start.
export function eveningsOf(held: HeldPackage[], today: string): HeldEvening[] {
  const all = held.flatMap((one) => one.package.evenings.map((evening) => ({ key: keyOf(one.package.squad.id, evening), held: one, evening })));
  const at = ({ evening }: HeldEvening): string => `${evening.day} ${evening.start}`;
  return all.filter(({ evening }) => evening.day >= today).sort((one, other) => (at(one) < at(other) ? -1 : at(one) > at(other) ? 1 : 0));
}

// As it was kept; else as the package has it.
export function stateOf({ held, evening }: HeldEvening, kept: unknown): EveningState {
  return (kept as EveningState | undefined) ?? openEvening(held.package, evening);
}

// A session that was begun and not wrapped up goes on where it was when the app is opened again.
export const isUnderWay = (state: EveningState): boolean => state.run !== undefined && state.screen !== "finished";
