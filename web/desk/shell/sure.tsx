// Before what cannot be taken back: what follows, said; and where it is about somebody, their id or name typed once more.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { Dialog } from "./dialog.tsx";
import { Field } from "./parts.tsx";
import { say } from "./words.ts";

interface SureProps {
  title: string;
  typed?: string; // what must be typed before it is done
  button: string;
  act: () => Promise<Refusal | undefined>; // undefined: it is done
  onClose: () => void;
  children: ComponentChildren;
}

export function Sure({ title, typed, button, act, onClose, children }: SureProps) {
  const [text, setText] = useState("");
  const [differs, setDiffers] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    const other = typed !== undefined && text.trim() !== typed;
    setDiffers(other);
    if (other || sends) return;
    setSends(true);
    const why = await act();
    setSends(false);
    setRefused(why);
    if (!why) onClose();
  };
  return (
    <Dialog title={title} onClose={onClose}>
      {children}
      <form onSubmit={(event) => void submit(event)}>
        {typed === undefined ? null : (
          <Field label={say("sure.type", { typed })} {...(differs ? { fault: say("sure.differs") } : {})}>
            {(given) => <input {...given} value={text} onInput={(event) => setText(event.currentTarget.value)} autocomplete="off" spellcheck={false} />}
          </Field>
        )}
        {refused ? <Refused refusal={refused} /> : null}
        <p class="row">
          <button type="submit" class="act" aria-disabled={sends}>
            {button}
          </button>
          <button type="button" onClick={onClose}>
            {say("sure.leave")}
          </button>
        </p>
      </form>
    </Dialog>
  );
}
