// A link that the lead sent, good once: whoever has it chooses a password. Its secret stands behind the '#', which no
// browser sends anywhere, and leaves the address at once.
import { useRef, useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { askOnce } from "../api/ask.ts";
import { Field } from "./parts.tsx";
import { say } from "./words.ts";

export function takeActivation(place: Location, past: History): string | undefined {
  const secret = /^#activate=([A-Za-z0-9_-]{16,128})$/.exec(place.hash)?.[1];
  if (place.hash.startsWith("#activate=")) past.replaceState(null, "", place.pathname);
  return secret;
}

// Whole, as it is sent to somebody.
export function activationLink(secret: string): string {
  return `${location.origin}${location.pathname}#activate=${secret}`;
}

export function Activate({ link, done }: { link: string; done: (sign_in: string) => void }) {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [differs, setDiffers] = useState(false);
  const [seen, setSeen] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    const typed = new FormData(form.current!);
    const password = String(typed.get("password"));
    setDiffers(password !== typed.get("again"));
    if (password !== typed.get("again")) return;
    const answer = await askOnce("activate", {}, { link, password });
    if (answer.ok) done(answer.said.sign_in);
    else setRefused(answer);
  };
  const type = seen ? "text" : "password";
  return (
    <main class="door">
      <p class="mark">{say("sign_in.club")}</p>
      <form ref={form} onSubmit={(event) => void submit(event)}>
        <h1>{say("activate.title")}</h1>
        <p>{say("activate.what")}</p>
        <Field label={say("activate.password")} hint={say("activate.long")} {...(refused ? { fault: refused.words } : {})}>
          {(given) => <input {...given} name="password" type={type} autocomplete="new-password" required autoFocus />}
        </Field>
        <Field label={say("activate.again")} {...(differs ? { fault: say("activate.differs") } : {})}>
          {(given) => <input {...given} name="again" type={type} autocomplete="new-password" required />}
        </Field>
        <label class="tick">
          <input type="checkbox" checked={seen} onChange={(event) => setSeen(event.currentTarget.checked)} />
          {say("activate.show")}
        </label>
        <button type="submit" class="main">
          {say("activate.keep")}
        </button>
      </form>
    </main>
  );
}
