// What a drill is called and what is said of it.
import { say } from "../words.ts";
import type { Watch } from "../drill_document.ts";
import { idFor } from "./begin.ts";
import { LinesField, TextField, useDraft } from "./fields.tsx";
import { Rows } from "./rows.tsx";

export function SaidSection({ adding }: { adding: boolean }) {
  const draft = useDraft();
  const { id, name } = draft.history.value.now;
  // The file is called after the drill as long as nobody wrote otherwise; a drill that is there keeps what it is called.
  const called = (text: string) => idFor(text) || (text.trim() === "" ? "" : "drill");
  const follows = adding && (id === "" || id === called(name));
  const rename = (text: string) => draft.change((drill) => ({ ...drill, name: text, ...(follows ? { id: called(text) } : {}) }), "name");
  return (
    <section class="sheet">
      <h2>{say("form.said")}</h2>
      <TextField path="name" label={say("field.name")} typed={rename} />
      {adding ? <TextField path="id" label={say("field.id")} hint={say("hint.id")} /> : null}
      <TextField path="purpose" label={say("field.purpose")} hint={say("hint.purpose")} tall />
      <TextField path="how" label={say("field.how")} hint={say("hint.how")} tall />
      <LinesField path="cues" label={say("field.cues")} hint={say("hint.cues")} most={3} />
      <LinesField path="stop_if" label={say("field.stop_if")} hint={say("hint.stop_if")} most={3} />
      <Rows<Watch> path="watch" title={say("part.watch")} named={({ fault }) => fault} least={1} most={4} fresh={() => ({ fault: "", cue: "" })} add={say("add_watch")} ordered compact>
        {(path) => (
          <>
            <TextField path={`${path}.fault`} label={say("watch.seen")} />
            <TextField path={`${path}.cue`} label={say("watch.said")} />
          </>
        )}
      </Rows>
    </section>
  );
}
