// Asks for the plans of all squads and looks until they are made. Nobody has to wait; stopping takes back those that nobody has
// begun.
import { useEffect, useRef, useState } from "preact/hooks";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { announce } from "../shell/announce.ts";
import { beginJob } from "../shell/jobs.ts";
import { withdraw } from "../squad/withdraw.ts";
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

interface Ended {
  words: string;
  planned?: number; // of those that were asked for; not stated where nobody looked until the last
}

const isOver = ({ state }: Pick<Job, "state">): boolean => state === "done" || state === "failed";

const madeOf = (jobs: Job[]): Made => Object.fromEntries(jobs.map(({ squad, state, why }) => [squad, { state, ...(why === undefined ? {} : { why }) }]));

// made: what became of each is told as it comes; done: all of them are over.
export function useAllPlans(done: () => void): AllPlans {
  const [state, setState] = useState<Omit<AllPlans, "plan">>({ asks: false, made: {}, words: "", refused: undefined });
  const stopped = useRef(false);
  const run = useRef(0);
  const gone = useRef(false); // another screen: nobody looks any more, and nothing is taken back
  useEffect(() => () => void (gone.current = true), []);
  const tell = (news: Partial<AllPlans>) => setState((before) => ({ ...before, ...news }));

  async function look(numbers: Set<number>, count: number, bar: ReturnType<typeof beginJob>): Promise<Ended> {
    for (let silent = 0; !stopped.current; ) {
      if (gone.current) return { words: "" };
      const answer = await ask("planning", {});
      if (!answer.ok) return { words: answer.words };
      const own = answer.said.jobs.filter(({ number }) => numbers.has(number));
      const over = own.filter(isOver).length;
      tell({ made: madeOf(own) });
      bar.told({ words: say("then.planning", { done: over, count }), done: over, of: count });
      if (over === count) return { words: "", planned: own.filter(({ state: now }) => now === "done").length };
      silent = own.some(({ state: now }) => now === "taken") ? 0 : silent + 1;
      if (silent > kSilentLooks) return { words: say("then.no_worker") };
      await new Promise((resolve) => setTimeout(resolve, kLookMilliseconds));
    }
    void follow(await takeBack(numbers));
    return { words: say("then.stopped") };
  }

  // What still waits is taken back, and its squad stands as it was before. Gives those that a worker has, or had.
  async function takeBack(numbers: Set<number>): Promise<Set<number>> {
    const planning = await ask("planning", {});
    const waiting = planning.ok ? planning.said.jobs.filter(({ number, state: now }) => numbers.has(number) && now === "waiting") : [];
    const left = new Set(numbers);
    for (const { number } of waiting) if (await withdraw(number)) left.delete(number);
    return left;
  }

  // Those go on to their end, and are told as they come, unless something newer is watched.
  async function follow(numbers: Set<number>): Promise<void> {
    const mine = run.current;
    for (let over = false; !over; ) {
      const answer = await ask("planning", {});
      if (!answer.ok || gone.current || run.current !== mine) return;
      const own = answer.said.jobs.filter(({ number }) => numbers.has(number));
      tell({ made: madeOf(own) });
      over = own.every(isOver);
      if (!over) await new Promise((resolve) => setTimeout(resolve, kLookMilliseconds));
    }
    done();
  }

  async function plan(): Promise<void> {
    tell({ asks: true, words: "", refused: undefined });
    const answer = await ask("ask-for-plans", {}, {});
    if (!answer.ok) return tell({ asks: false, refused: answer });
    await watch(answer.said.jobs);
  }

  // Whoever comes back while plans are under way sees how far they are, and may stop them.
  async function goOn(): Promise<void> {
    const planning = await ask("planning", {});
    const jobs = planning.ok ? planning.said.jobs.filter((job) => !isOver(job)) : [];
    if (jobs.length > 0 && !gone.current) await watch(jobs);
  }
  useEffect(() => void goOn(), []);

  async function watch(jobs: Pick<Job, "number">[]): Promise<void> {
    stopped.current = false;
    run.current += 1;
    tell({ asks: true });
    const bar = beginJob(say("then.planning", { done: 0, count: jobs.length }), () => (stopped.current = true));
    const { words, planned } = await look(new Set(jobs.map(({ number }) => number)), jobs.length, bar);
    bar.end();
    if (gone.current) return;
    announce(planned === undefined ? words : many("planned", planned));
    tell({ asks: false, words });
    done();
  }
  return { ...state, plan: () => void (state.asks || plan()) };
}
