// The six digits of a second factor, asked for in three places: coming in, once more, and when it is set up.
import { useRef, useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Field } from "./parts.tsx";

interface CodeFormProps {
  label: string;
  hint?: string;
  button: string;
  send(code: string): Promise<Refusal | undefined>;
}

export function CodeForm({ label, hint, button, send }: CodeFormProps) {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const at = useRef<HTMLInputElement>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    const input = at.current!;
    if (input.value.trim() === "" || sends) return input.focus();
    setSends(true);
    const why = await send(input.value.trim());
    setSends(false);
    setRefused(why);
    if (!why) return;
    input.select();
    input.focus();
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <Field label={label} {...(hint ? { hint } : {})} {...(refused ? { fault: refused.words } : {})}>
        {(given) => <input {...given} ref={at} class="code" autocomplete="one-time-code" inputMode="text" spellcheck={false} autoFocus />}
      </Field>
      <button type="submit" class="main" aria-disabled={sends}>
        {button}
      </button>
    </form>
  );
}
