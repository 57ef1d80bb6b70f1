// A question that is answered by a day, and what else is asked with it.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";

interface DayDialogProps {
  title: string;
  day_words?: string; // without it no day is asked for
  day?: string;
  optional?: boolean;
  least?: string;
  most?: string;
  button: string;
  act: (day: string) => Promise<Refusal | undefined>; // undefined: it is done
  onClose: () => void;
  children?: ComponentChildren;
}

export function DayDialog({ title, day_words, day: first = "", optional = false, least, most, button, act, onClose, children }: DayDialogProps) {
  const [day, setDay] = useState(first);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (sends) return;
    setSends(true);
    const why = await act(day);
    setSends(false);
    setRefused(why);
    if (!why) onClose();
  };
  return (
    <Dialog title={title} onClose={onClose}>
      <form onSubmit={(event) => void submit(event)}>
        {children}
        {day_words ? <Field label={day_words}>{(given) => <input {...given} type="date" required={!optional} min={least} max={most} value={day} onInput={(event) => setDay(event.currentTarget.value)} />}</Field> : null}
        {refused ? <Refused refusal={refused} /> : null}
        <button type="submit" class="main" aria-disabled={sends}>
          {button}
        </button>
      </form>
    </Dialog>
  );
}
