// One report at a time: worked out when its period is chosen, with its progress in the frame, stopped by whoever waits or
// when another period is wanted.
import { useEffect, useState } from "preact/hooks";
import type { Season } from "../../shared/api.ts";
import { language } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { beginJob } from "../shell/jobs.ts";
import { type Draw, fetchDraw } from "./charts.ts";
import type { Period } from "./period.ts";
import { say } from "./words.ts";

export interface Report {
  season: Season;
  draw: Draw | undefined;
}
interface State {
  key: string; // the period's and the language's
  report?: Report;
  refused?: Refusal;
}

export function useReport(period: Period | undefined): State & { again(): void } {
  const [state, setState] = useState<State>({ key: "" });
  const [tries, setTries] = useState(0);
  const key = period ? `${period.from} ${period.to} ${language.value}` : "";
  useEffect(() => {
    if (!period) return undefined;
    const stop = new AbortController();
    const job = beginJob(say("works"), () => stop.abort());
    let wanted = true;
    setState({ key });
    void Promise.all([ask("season", { ...period, language: language.value }, undefined, stop.signal), fetchDraw()]).then(([answer, draw]) => {
      job.end();
      if (wanted) setState(answer.ok ? { key, report: { season: answer.said, draw } } : { key, refused: answer });
    });
    return () => {
      wanted = false;
      stop.abort();
      job.end();
    };
  }, [key, tries]);
  return { ...(state.key === key ? state : { key }), again: () => setTries(tries + 1) };
}
