// What the counts cannot hold: what is asked of the board, what that costs, and what was decided. The lead may type it
// before printing; it is kept nowhere, and is marked as the lead's own words. Where nothing is typed there is room for a pen.
import { useState } from "preact/hooks";
import { Field } from "../shell/parts.tsx";
import { say } from "./words.ts";

const kMostLetters = 600;

export function AskedOfBoard({ asks }: { asks: boolean }) {
  const [text, setText] = useState("");
  const typed = text.trim() !== "";
  return (
    <section class={asks ? "asked-of-board" : "asked-of-board on-paper"}>
      <h3>{say("asked.title")}</h3>
      {asks ? (
        <div class="not-on-paper">
          <Field label={say("asked.label")} hint={say("asked.hint")}>
            {(given) => <textarea {...given} rows={3} maxLength={kMostLetters} value={text} onInput={(event) => setText(event.currentTarget.value)} />}
          </Field>
        </div>
      ) : null}
      <div class="on-paper">
        {typed ? (
          <>
            <p class="soft">{say("asked.own_words")}</p>
            <p>
              <bdi class="written">{text}</bdi>
            </p>
          </>
        ) : (
          <p class="to-fill">{say("asked.pen")}</p>
        )}
        <p class="to-fill">{say("asked.decided")}</p>
      </div>
    </section>
  );
}
