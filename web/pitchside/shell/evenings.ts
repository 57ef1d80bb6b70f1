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

const kAfterMilliseconds = 30 * 60_000; // own judgement: to wrap up, and to wait for the last parents
const kLongestMilliseconds = 4 * 3_600_000;

// How long a session keeps the app open: half an hour over its slot, so that nobody types a code in the rain between
// two drills, and one that is never wrapped up locks all the same (docs/model/pocket.md).
export function holdsUntil(state: unknown): number | undefined {
  const { run, screen } = (state ?? {}) as Partial<EveningState>;
  if (!run || screen === "finished") return undefined;
  return Math.min(run.ends, run.began + kLongestMilliseconds) + kAfterMilliseconds;
}
