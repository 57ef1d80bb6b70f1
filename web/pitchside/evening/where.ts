// Where a run is at a moment, from wall-clock time alone: the same before and after a reload.
import type { PlanItem } from "../../shared/engine/answers.ts";
import type { EveningState, Run } from "./evening_state.ts";

export function millisecondsInItem(run: Run, at: number): number {
  return run.counted + (run.paused ? 0 : Math.max(0, at - run.item_since));
}

export interface Where {
  item: number;
  drill: PlanItem;
  next?: PlanItem;
  seconds: number; // in the item
}

export function where(state: EveningState, at: number): Where | undefined {
  const { run, plan } = state;
  const drill = run && plan?.items[run.item];
  if (!run || !drill) return undefined;
  const found: Where = { item: run.item, drill, seconds: millisecondsInItem(run, at) / 1000 };
  const next = plan.items[run.item + 1];
  if (next) found.next = next;
  return found;
}

// What an item takes from its end of the one before: break, walking over, telling and doing.
export function secondsOf(item: PlanItem): number {
  return (item.rest_seconds ?? 0) + item.change_seconds + item.takes_seconds;
}

// Seconds by which the run, going on as planned, will be over after the slot; below zero while there is air.
export function secondsLate(state: EveningState, at: number): number {
  const { run, plan } = state;
  const current = run && plan?.items[run.item];
  if (!run || !current) return 0;
  const inItem = millisecondsInItem(run, at) / 1000;
  let left = Math.max(0, current.takes_seconds - inItem);
  for (const item of plan.items.slice(run.item + 1)) left += secondsOf(item);
  return Math.round((at - run.ends) / 1000 + left);
}

export function secondsLeft(run: Run, at: number): number {
  return Math.max(0, Math.floor((run.ends - at) / 1000));
}
