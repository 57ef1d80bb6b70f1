// A house routine as it is being written, planned by the door: all of it, for a squad that knows it and for one that sees it
// for the first time, and what is left of it in the minutes that there are.
import { useEffect, useRef, useState } from "preact/hooks";
import type { FaultsAnswer, PlanAnswer } from "../../../shared/engine/answers.ts";
import type { DoorTable } from "../../../shared/engine/door_value.ts";
import { type DoorRequest, type Engine, openEngine } from "../../../shared/engine/engine.ts";
import { door, engineWorker } from "../../shell/places.ts";
import type { Routine } from "./routine_document.ts";

export interface Conditions {
  age: number;
  players: number;
  minutes: number;
  strip: DoorTable;
  kit: DoorTable;
}
export interface RoutineTrial {
  whole?: PlanAnswer; // with all the time of the world, known
  first?: PlanAnswer; // the same, never done before
  slot?: PlanAnswer; // in the minutes that there are, known
  faults: FaultsAnswer["faults"]; // of the routine
  trouble: string;
  planning: boolean;
}

const kAllTheTime = 60; // minutes: the longest slot that the door takes
const kKnown = 20; // times done: nothing is left to be told
const kSomeDay = { date: "2026-01-06", start: "18:00:00" }; // any, far from a match
const kWaitMilliseconds = 60; // while somebody drags or types

let engine: Engine | undefined; // one for the page: it holds the catalogue

export function requestOf(routine: Routine, catalogue: DoorTable, { age, players, strip, kit }: Conditions, minutes: number, known: boolean): DoorRequest {
  const roster = Array.from({ length: players }, (_, at) => ({ id: `P${String(at + 1).padStart(2, "0")}`, name: `P${at + 1}`, age, row: at + 2 }));
  return {
    request: "plan",
    spread: "formula",
    catalogue,
    routine: routine as unknown as DoorTable,
    strip,
    squad: {
      club: "-", name: "-", roster: "roster.csv", routine: routine.id, strip: "strip.toml", age, kit, slot: { ...kSomeDay, minutes }, tonight: { turnout: players },
      taught: known ? Object.fromEntries(routine.drill.map(({ id }) => [id, kKnown])) : {},
    },
    restrictions: {},
    roster,
  };
}

const isPlan = (answer: { answer: string }): answer is PlanAnswer => answer.answer === "plan";

export function useRoutineTrial(routine: Routine, catalogue: DoorTable | undefined, conditions: Conditions): RoutineTrial {
  const [trial, setTrial] = useState<RoutineTrial>({ faults: [], trouble: "", planning: true });
  const newest = useRef(0);
  const asked = JSON.stringify([routine.drill, routine.ages, routine.minutes, conditions]);
  useEffect(() => {
    if (!catalogue) return undefined;
    const mine = ++newest.current;
    engine ??= openEngine({ worker: engineWorker, door });
    setTrial((before) => ({ ...before, planning: true }));
    const plan = async () => {
      const [whole, slot, first] = await Promise.all([
        engine!.ask(requestOf(routine, catalogue, conditions, kAllTheTime, true), "whole"),
        engine!.ask(requestOf(routine, catalogue, conditions, conditions.minutes, true), "slot"),
        engine!.ask(requestOf(routine, catalogue, conditions, kAllTheTime, false), "first"),
      ]);
      if (mine !== newest.current || whole.answer === "dropped") return;
      const faults = whole.answer === "faults" ? whole.faults : [];
      const trouble = whole.answer === "broken" ? whole.why : "";
      // With a fault the last times stay: they are of what was there before it.
      setTrial((before) => ({ ...before, faults, trouble, planning: false, ...(isPlan(whole) ? { whole } : {}), ...(isPlan(slot) ? { slot } : {}), ...(isPlan(first) ? { first } : {}) }));
    };
    const soon = setTimeout(() => void plan(), kWaitMilliseconds);
    return () => clearTimeout(soon);
  }, [catalogue, asked]);
  useEffect(() => () => void (newest.current = -1), []);
  return trial;
}
