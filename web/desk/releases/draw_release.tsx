// A period is drawn and looked at before it is given out: then it stands as it is, and so do its days.
import { useState } from "preact/hooks";
import type { ReleaseForLead } from "../../shared/api.ts";
import { wholeDay } from "../../shared/words/words.ts";
import { faultWords, type Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { Field } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { Sure } from "../shell/sure.tsx";
import { AskField } from "./asked_of_board.tsx";
import { ReleasePage } from "./release_page.tsx";
import { many, say } from "./words.ts";

export function DrawRelease() {
  const [from, setFrom] = useState("");
  const [until, setUntil] = useState("");
  const [drawn, setDrawn] = useState<ReleaseForLead | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [gives, setGives] = useState(false);
  const [text, setText] = useState("");
  const line = text.trim().replace(/\s+/g, " "); // as it is kept
  const asked = line === "" ? {} : { asked: line };
  const draw = async (event: Event) => {
    event.preventDefault();
    const answer = await ask("preview-release", {}, { from, until });
    setDrawn(answer.ok ? answer.said : undefined);
    setRefused(answer.ok ? undefined : answer);
  };
  // Given out is what was looked at: another period is drawn first.
  const change = (set: (day: string) => void) => (event: { currentTarget: HTMLInputElement }) => {
    set(event.currentTarget.value);
    setDrawn(undefined);
  };
  const give = async () => {
    const answer = await ask("make-release", {}, { from, until, ...asked });
    if (!answer.ok) return answer;
    go(hashOf("releases", String(answer.said.release.release)));
    return undefined;
  };
  return (
    <section class="sheet" aria-labelledby="draw">
      <h2 id="draw">{say("draw.title")}</h2>
      <p>{say("draw.what")}</p>
      <form class="row top" onSubmit={(event) => void draw(event)}>
        <Field label={say("draw.from")}>{(given) => <input {...given} type="date" required value={from} onInput={change(setFrom)} />}</Field>
        <Field label={say("draw.until")}>{(given) => <input {...given} type="date" required value={until} onInput={change(setUntil)} />}</Field>
        <button type="submit">{say("draw.do")}</button>
      </form>
      {refused ? (
        <>
          <Refused refusal={refused} />
          {refused.faults.map((fault) => (
            <p key={fault.field}>{faultWords(fault)}</p>
          ))}
        </>
      ) : null}
      {drawn ? (
        <>
          <ForLead drawn={drawn} />
          <ReleasePage release={drawn.release} drawn />
          <AskField text={text} onText={setText} />
          <button type="button" class="main" onClick={() => setGives(true)}>
            {say("draw.give")}
          </button>
        </>
      ) : null}
      {gives ? (
        <Sure title={say("draw.sure", { from: wholeDay(from), until: wholeDay(until) })} button={say("draw.give")} act={give} onClose={() => setGives(false)}>
          <p>{say("draw.follows")}</p>
          {asked.asked === undefined ? null : (
            <p>
              {say("asked.title")}: <bdi class="written">{asked.asked}</bdi>
            </p>
          )}
        </Sure>
      ) : null}
    </section>
  );
}

// What the board does not get: what was hidden besides, and how narrow the rest leaves each number.
function ForLead({ drawn }: { drawn: ReleaseForLead }) {
  return (
    <div class="refused">
      <p>{many("not_given", drawn.not_given.length)}</p>
      <ul>
        {drawn.tried.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
