// Asks for the plans of all squads and looks until they are made. Nobody has to wait; stopping takes back those that nobody has
// begun.
import { useEffect, useRef, useState } from "preact/hooks";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { announce } from "../shell/announce.ts";
import { beginJob } from "../shell/jobs.ts";
import { many, say } from "./words.ts";

const kLookMilliseconds = 1000;
const kSilentLooks = 45; // with none under way: perhaps nobody plans

type Job = Said<"planning">["jobs"][number];
export type Made = Record<string, Pick<Job, "state" | "why">>; // by squad

export interface AllPlans {
  asks: boolean;
  made: Made;
  words: string; // how it ended, where it did not end well
  refused: Refusal | undefined;
  plan(): void;
}

const isOver = ({ state }: Pick<Job, "state">): boolean => state === "done" || state === "failed";

// made: what became of each is told as it comes; done: all of them are over.
export function useAllPlans(done: () => void): AllPlans {
  const [state, setState] = useState<Omit<AllPlans, "plan">>({ asks: false, made: {}, words: "", refused: undefined });
  const stopped = useRef(false);
  const gone = useRef(false); // another screen: nobody looks any more, and nothing is taken back
  useEffect(() => () => void (gone.current = true), []);
  const tell = (news: Partial<AllPlans>) => setState((before) => ({ ...before, ...news }));

  async function look(numbers: Set<number>, count: number, bar: ReturnType<typeof beginJob>): Promise<string> {
    for (let silent = 0; !stopped.current; ) {
      if (gone.current) return "";
      const answer = await ask("planning", {});
      if (!answer.ok) return answer.words;
      const own = answer.said.jobs.filter(({ number }) => numbers.has(number));
      const over = own.filter(isOver).length;
      tell({ made: Object.fromEntries(own.map(({ squad, state: now, why }) => [squad, { state: now, ...(why === undefined ? {} : { why }) }])) });
      bar.told({ words: say("then.planning", { done: over, count }), done: over, of: count });
      if (over === count) return "";
      silent = own.some(({ state: now }) => now === "taken") ? 0 : silent + 1;
      if (silent > kSilentLooks) return say("then.no_worker");
      await new Promise((resolve) => setTimeout(resolve, kLookMilliseconds));
    }
    // What is under way goes on to its end; what still waits is taken back.
    const planning = await ask("planning", {});
    const waiting = planning.ok ? planning.said.jobs.filter(({ number, state: now }) => numbers.has(number) && now === "waiting") : [];
    for (const { number } of waiting) await ask("withdraw-planning", { number: String(number) });
    return say("then.stopped");
  }

  async function plan(): Promise<void> {
    stopped.current = false;
    tell({ asks: true, words: "", refused: undefined });
    const answer = await ask("ask-for-plans", {}, {});
    if (!answer.ok) return tell({ asks: false, refused: answer });
    const { jobs } = answer.said;
    const bar = beginJob(say("then.planning", { done: 0, count: jobs.length }), () => (stopped.current = true));
    const words = await look(new Set(jobs.map(({ number }) => number)), jobs.length, bar);
    bar.end();
    if (gone.current) return;
    announce(words === "" ? many("planned", jobs.length) : words);
    tell({ asks: false, words });
    done();
  }
  return { ...state, plan: () => void (state.asks || plan()) };
}
