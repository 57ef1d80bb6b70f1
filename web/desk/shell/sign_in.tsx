// Coming in: the name and the password, then the code. It stands over whatever is open, so that nothing of it is lost, and
// hides it, since nobody knows who sits there now.
import { useEffect, useRef, useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { askOnce } from "../api/ask.ts";
import { cameIn, door, me } from "../api/coming_in.ts";
import { CodeForm } from "./code_form.tsx";
import { Field } from "./parts.tsx";
import { SecondFactor } from "./second_factor.tsx";
import { say } from "./words.ts";

type Step = "name" | "code" | "set-up";

async function readMe(): Promise<Refusal | undefined> {
  const answer = await askOnce("me", {});
  if (!answer.ok) return answer;
  cameIn(answer.said);
  return undefined;
}

export function SignIn({ notice }: { notice?: string }) {
  const at = useRef<HTMLDialogElement>(null);
  const [step, setStep] = useState<Step>(door.peek() === "code" ? "code" : "name");
  useEffect(() => {
    const dialog = at.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog ref={at} class="door" aria-labelledby="door-title" onCancel={(event) => event.preventDefault()}>
      <p class="mark">{say("sign_in.club")}</p>
      {notice && step === "name" ? <p role="status">{notice}</p> : null}
      {me.value && step === "name" ? <p role="status">{say("sign_in.over")}</p> : null}
      {step === "name" ? <NameForm next={setStep} /> : null}
      {step === "code" ? (
        <>
          <h1 id="door-title">{say("sign_in.code_title")}</h1>
          <CodeForm label={say("sign_in.code")} hint={say("sign_in.code_how")} button={say("sign_in.show")} send={showCode} />
          <button type="button" class="quiet" onClick={() => setStep("name")}>
            {say("sign_in.another")}
          </button>
        </>
      ) : null}
      {step === "set-up" ? <SecondFactor titled="door-title" done={() => void readMe()} /> : null}
      <p class="soft">{say("sign_in.role")}</p>
    </dialog>
  );
}

async function showCode(code: string): Promise<Refusal | undefined> {
  const answer = await askOnce("step-up", {}, { code });
  return answer.ok ? readMe() : answer;
}

function NameForm({ next }: { next: (step: Step) => void }) {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (sends) return;
    const typed = new FormData(form.current!);
    setSends(true);
    const answer = await askOnce("sign-in", {}, { sign_in: String(typed.get("sign_in")), password: String(typed.get("password")) });
    setSends(false);
    setRefused(answer.ok ? undefined : answer);
    if (!answer.ok) form.current?.querySelector<HTMLInputElement>("[name=password]")?.focus();
    else if (answer.said.next === "in") setRefused(await readMe());
    else next(answer.said.next === "show-second-factor" ? "code" : "set-up");
  };
  return (
    <form ref={form} onSubmit={(event) => void submit(event)}>
      <h1 id="door-title">{say("sign_in.title")}</h1>
      <Field label={say("sign_in.name")}>{(given) => <input {...given} name="sign_in" defaultValue={me.peek()?.sign_in ?? ""} autocomplete="username" autocapitalize="none" spellcheck={false} required autoFocus={!me.peek()} />}</Field>
      <Field label={say("sign_in.password")} {...(refused ? { fault: refused.words } : {})}>
        {(given) => <input {...given} name="password" type="password" autocomplete="current-password" required autoFocus={me.peek() !== undefined} />}
      </Field>
      <button type="submit" class="main" aria-disabled={sends}>
        {say("sign_in.enter")}
      </button>
      <p class="soft">{say("sign_in.forgotten")}</p>
    </form>
  );
}
