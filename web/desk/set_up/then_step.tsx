// What comes when the club stands: plans, coaches, the first cards.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { hashOf } from "../shell/route.ts";
import { unsaved } from "./club_draft.ts";
import { many, say } from "./words.ts";

export function ThenStep() {
  const [asked, setAsked] = useState<number | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const plan = async () => {
    const answer = await ask("ask-for-plans", {}, {});
    setRefused(answer.ok ? undefined : answer);
    if (answer.ok) setAsked(answer.said.jobs.length);
  };
  return (
    <>
      <p>{say(unsaved.value.length > 0 ? "then.save_first" : "then.what")}</p>
      <ol class="steps">
        <li>
          <button type="button" onClick={() => void plan()}>
            {say("then.plan")}
          </button>
          {asked === undefined ? null : <p role="status">{many("asked", asked)}</p>}
          {refused ? <Refused refusal={refused} /> : null}
        </li>
        <li>
          <a href={hashOf("people")}>{say("then.invite")}</a>
        </li>
        <li>
          <a href={hashOf("squad")}>{say("then.print")}</a>
        </li>
      </ol>
    </>
  );
}
