// The evenings that the squads' plans have: read squad by squad, a few at a time, and kept as long as the page is open.
import { signal } from "@preact/signals";
import { ask } from "../api/ask.ts";
import { blockIn, type SquadBlock } from "../squad/block.ts";
import type { Planned, SquadRow } from "./week_table.ts";

const kAtOnce = 4;

// By squad; a squad without a plan has none. 'unknown': its plan could not be had.
export const plannedOf = signal<ReadonlyMap<string, Planned[] | "unknown">>(new Map());

export function eveningsIn(block: SquadBlock | undefined, squad: string): Planned[] {
  return (block?.sessions ?? []).map(({ date, start, minutes, match_day }) => ({ squad, day: date, start, minutes, match_day }));
}

let reading: Promise<void> | undefined;

export function readPlans(squads: SquadRow[]): Promise<void> {
  reading ??= readAll(squads).finally(() => (reading = undefined));
  return reading;
}

async function readAll(squads: SquadRow[]): Promise<void> {
  const to_read = squads.map(({ id }) => id).filter((id) => !Array.isArray(plannedOf.peek().get(id)));
  const read = new Map(plannedOf.peek());
  const one = async () => {
    for (let squad = to_read.shift(); squad !== undefined; squad = to_read.shift()) {
      const answer = await ask("plan", { squad });
      read.set(squad, answer.ok ? eveningsIn(blockIn(answer.said), squad) : "unknown");
    }
    plannedOf.value = new Map(read); // once, so that the table is not drawn anew for every squad
  };
  await Promise.all(Array.from({ length: kAtOnce }, one));
}
