// One evening as it is tried out: the door plans it anew for every try, at once with the finish by formula; the simulated
// evenings follow when nothing more was tried meanwhile.
import { useEffect, useRef, useState } from "preact/hooks";
import type { PlanAnswer } from "../../shared/engine/answers.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import type { Engine } from "../../shared/engine/engine.ts";
import { eveningEngine } from "./evening_engine.ts";
import { kFirstTries, kNothingTried, redo, requestOf, tryOn, undo, type PocketEvening, type Tried, type Tries } from "./tried.ts";

const kSpreadFollowsMilliseconds = 400;

export interface Trial {
  tried: Tried;
  usual: PlanAnswer | undefined; // with nothing tried
  plan: PlanAnswer | undefined; // as tried; the one before while it is being planned
  planning: boolean;
  trouble: string; // why there is no plan, in the door's words
  lost: boolean; // the door could not be had, or stopped
  again(): void; // asks it once more
  try(more: Partial<Tried>): void;
  undo?: () => void; // where there is something to undo
  redo?: () => void;
  forget?: () => void; // all of it, which is a try as well
}

export function useTrial(evening: PocketEvening, catalogue: DoorTable): Trial {
  const [tries, setTries] = useState<Tries>(kFirstTries);
  const [plans, setPlans] = useState<{ usual?: PlanAnswer; plan?: PlanAnswer; trouble: string; lost: boolean; planning: boolean }>({ trouble: "", lost: false, planning: true });
  const [asked, setAsked] = useState(0);
  const newest = useRef(0);
  useEffect(() => {
    const mine = ++newest.current;
    const engine = eveningEngine();
    const request = requestOf(evening, catalogue, tries.now);
    const untried = tries.now === kNothingTried;
    const take = (answer: Awaited<ReturnType<Engine["ask"]>>) => {
      if (mine !== newest.current || answer.answer === "dropped") return;
      setPlans((before) => {
        if (answer.answer === "plan") return { ...before, ...(untried ? { usual: answer } : {}), plan: answer, trouble: "", lost: false, planning: false };
        return { ...before, trouble: answer.answer === "faults" ? (answer.faults[0]?.sentence ?? "") : "", lost: answer.answer === "broken", planning: false };
      });
    };
    setPlans((before) => ({ ...before, lost: false, planning: true }));
    const plan = async () => {
      take(await engine.ask({ ...request, spread: "formula" }, "formula"));
      await new Promise((resolve) => setTimeout(resolve, kSpreadFollowsMilliseconds));
      if (mine === newest.current) take(await engine.ask(request, "simulated"));
    };
    void plan();
  }, [evening, catalogue, tries.now, asked]);
  useEffect(() => () => void (newest.current = -1), []);
  return {
    tried: tries.now,
    usual: plans.usual,
    plan: plans.plan,
    planning: plans.planning,
    trouble: plans.trouble,
    lost: plans.lost,
    again: () => setAsked(asked + 1),
    try: (more) => setTries((before) => tryOn(before, more)),
    ...(tries.past.length > 0 ? { undo: () => setTries(undo) } : {}),
    ...(tries.undone.length > 0 ? { redo: () => setTries(redo) } : {}),
    ...(tries.now === kNothingTried ? {} : { forget: () => setTries((before) => ({ past: [...before.past, before.now], now: kNothingTried, undone: [] })) }),
  };
}
