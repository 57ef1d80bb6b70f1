// Asks for a squad's block and watches until it is made. Nobody has to wait: what is stopped is the watching alone.
import { useEffect, useRef, useState } from "preact/hooks";
import { ask } from "../api/ask.ts";
import { announce } from "../shell/announce.ts";
import { beginJob } from "../shell/jobs.ts";
import { say } from "./words.ts";

const kLookMilliseconds = 1200;
const kSilentLooks = 40; // with no job under way: perhaps nobody plans

interface Watched {
  number: number;
  squad: string;
  name: string;
}

type End = { words: string; made: boolean };

// How it ended. before: how many jobs of others are ahead, as long as it waits.
async function watch({ number, name }: Watched, stopped: () => boolean, told: (before: number) => void): Promise<End> {
  let silent = 0;
  while (!stopped()) {
    const answer = await ask("planning", {});
    if (!answer.ok) return { words: answer.words, made: false };
    const { jobs } = answer.said;
    const own = jobs.find((job) => job.number === number);
    if (own?.state === "done") return { words: say("block.done", { squad: name }), made: true };
    if (own?.state === "failed") return { words: say("block.failed", { why: own.why ?? "" }), made: false };
    told(jobs.filter((job) => job.number < number && (job.state === "waiting" || job.state === "taken")).length);
    silent = jobs.some((job) => job.state === "taken") ? 0 : silent + 1;
    if (silent > kSilentLooks) return { words: say("no_worker"), made: false };
    await new Promise((resolve) => setTimeout(resolve, kLookMilliseconds));
  }
  return { words: say("block.stopped"), made: false };
}

export interface Planner {
  busy: boolean;
  words: string; // how the last one ended
  plan(): void;
}

export function usePlanner(squad: string, name: string, made: () => void): Planner {
  const [state, setState] = useState({ busy: false, words: "" });
  const stop = useRef<() => void>(() => undefined);
  useEffect(() => {
    setState({ busy: false, words: "" });
    return () => stop.current();
  }, [squad]);
  async function plan(): Promise<void> {
    let stopped = false;
    stop.current = () => (stopped = true);
    setState({ busy: true, words: "" });
    const asked = await ask("ask-for-plans", {}, { squads: [squad] });
    const job = asked.ok ? asked.said.jobs[0] : undefined;
    if (!asked.ok || !job) return setState({ busy: false, words: asked.ok ? "" : asked.words });
    const shown = beginJob(say("block.asking", { squad: name }), () => stop.current());
    const end = await watch({ number: job.number, squad, name }, () => stopped, (before) => {
      shown.told({ words: before > 0 ? say("block.waits_for", { squad: name, count: before }) : say("block.asking", { squad: name }) });
    });
    shown.end();
    announce(end.words);
    setState({ busy: false, words: end.words });
    if (end.made) made();
  }
  return { ...state, plan: () => void plan() };
}
