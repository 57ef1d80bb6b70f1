// What the counts cannot hold: what is asked of the board, and what that costs, in the lead's own words, given out with the
// page and as fixed as the rest of it. Where nothing is asked there is room for a pen, and always for what was decided.
import { Field } from "../shell/parts.tsx";
import { say } from "./words.ts";

const kMostLetters = 600;

export function AskField({ text, onText }: { text: string; onText: (text: string) => void }) {
  return (
    <Field label={say("asked.label")} hint={say("asked.hint")}>
      {(given) => <textarea {...given} rows={3} maxLength={kMostLetters} value={text} onInput={(event) => onText(event.currentTarget.value)} />}
    </Field>
  );
}

export function AskedOfBoard({ asked }: { asked: string | undefined }) {
  return (
    <section class={asked === undefined ? "asked-of-board on-paper" : "asked-of-board"}>
      <h3>{say("asked.title")}</h3>
      {asked === undefined ? (
        <p class="to-fill">{say("asked.pen")}</p>
      ) : (
        <>
          <p class="soft">{say("asked.own_words")}</p>
          <p>
            <bdi class="written">{asked}</bdi>
          </p>
        </>
      )}
      <p class="to-fill on-paper">{say("asked.decided")}</p>
    </section>
  );
}
