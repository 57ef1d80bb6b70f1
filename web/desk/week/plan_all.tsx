// Plans for all squads: asked for at once, watched until the last is made, and called off where no worker has begun with them.
import { useEffect, useRef, useState } from "preact/hooks";
import { list } from "../../shared/words/words.ts";
import type { Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { announce } from "../shell/announce.ts";
import { beginJob } from "../shell/jobs.ts";
import { withdraw } from "../squad/withdraw.ts";
import { many, say } from "./words.ts";

const kLookMilliseconds = 1200;
const kSilentLooks = 40; // with no job under way: perhaps nobody plans

type Job = Said<"planning">["jobs"][number];

const isOver = ({ state }: Job): boolean => state === "done" || state === "failed";

export interface PlanAll {
  busy: boolean;
  words: string; // how the last one ended
  plan(): void;
}

function endWords(jobs: Job[], asked: number, nameOf: (squad: string) => string): string {
  const failed = jobs.filter(({ state }) => state === "failed");
  const made = jobs.filter(({ state }) => state === "done").length;
  const told = made === asked ? many("all_planned", made) : say("plan_all.some", { made, asked });
  if (failed.length === 0) return told;
  return `${told} ${say("plan_all.failed", { squads: list(failed.map(({ squad, why }) => `${nameOf(squad)} (${why ?? ""})`)) })}`;
}

// made: something was planned.
export function usePlanAll(nameOf: (squad: string) => string, made: () => void): PlanAll {
  const [state, setState] = useState({ busy: false, words: "" });
  const gone = useRef(false);
  useEffect(() => () => void (gone.current = true), []);
  async function plan(): Promise<void> {
    setState({ busy: true, words: "" });
    const asked = await ask("ask-for-plans", {}, {});
    if (!asked.ok) return setState({ busy: false, words: asked.words });
    const numbers = new Set(asked.said.jobs.map(({ number }) => number));
    let stopped = false;
    const shown = beginJob(say("plan_all.under_way", { done: 0, of: numbers.size }), () => (stopped = true));
    let own: Job[] = [];
    let silent = 0;
    let end = "";
    while (end === "") {
      const answer = await ask("planning", {});
      if (!answer.ok) {
        end = answer.words;
        break;
      }
      own = answer.said.jobs.filter(({ number }) => numbers.has(number));
      if (stopped) {
        const waiting = own.filter((job) => job.state === "waiting").map(({ number }) => number);
        for (const number of waiting) if (await withdraw(number)) numbers.delete(number);
        end = say("plan_all.stopped", { made: own.filter((job) => job.state === "done").length });
        break;
      }
      const done = own.filter(isOver).length;
      shown.told({ words: say("plan_all.under_way", { done, of: numbers.size }), done, of: numbers.size });
      if (own.every(isOver)) end = endWords(own, numbers.size, nameOf);
      silent = answer.said.jobs.some((job) => job.state === "taken") ? 0 : silent + 1;
      if (silent > kSilentLooks) end = say("plan_all.no_worker");
      if (end === "") await new Promise((resolve) => setTimeout(resolve, kLookMilliseconds));
    }
    shown.end();
    announce(end);
    if (gone.current) return;
    setState({ busy: false, words: end });
    made();
  }
  return { ...state, plan: () => void plan() };
}

export function PlanAllButton({ planner }: { planner: PlanAll }) {
  return (
    <p class="row not-on-paper">
      <button type="button" disabled={planner.busy} onClick={planner.plan}>
        {say("plan_all.ask")}
      </button>
      <span role="status">{planner.words}</span>
    </p>
  );
}
