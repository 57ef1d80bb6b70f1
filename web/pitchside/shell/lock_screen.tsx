// The locked app: nobody's name, the way in, and at once what is wanted when somebody is hurt.
import { useSignal } from "@preact/signals";
import type { ComponentChildren, JSX } from "preact";
import { useEffect } from "preact/hooks";
import type { Keep } from "../keep/keep.ts";
import { CodeField, Switches } from "../screens/code_field.tsx";
import { durationWords } from "../screens/duration_words.ts";
import { say } from "../words/words.ts";
import type { LockWords } from "./keeping_words.ts";
import { LockedHurt } from "./locked_hurt.tsx";

const kFault = "code-fault";

interface Shown {
  keep: Keep;
  words: LockWords;
  onNewLink: () => void;
  children?: ComponentChildren; // what waits, and how sending goes
}

function CodeForm({ keep, words }: { keep: Keep; words: LockWords }): JSX.Element {
  const code = useSignal("");
  const [letters, seen] = [useSignal(keep.lock.letters.value), useSignal(false)];
  const opening = useSignal(false);
  const left = useSignal<number | undefined>(undefined); // tries, after a wrong one
  const wait = useSignal(0); // milliseconds until the next one
  useEffect(() => {
    const look = () => void keep.lock.wait().then((milliseconds) => (wait.value = milliseconds));
    look();
    const timer = setInterval(look, 1000);
    return () => clearInterval(timer);
  }, [keep]);
  const submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (opening.value || code.value === "") return;
    opening.value = true;
    const said = await keep.lock.unlock(code.value).finally(() => (opening.value = false));
    if (said.opened) return;
    left.value = said.left;
    wait.value = said.wait;
    code.value = "";
  };
  const waits = wait.value > 0;
  const fault = left.value === undefined ? undefined : words.wrong.replace("{left}", String(left.value));
  return (
    <form class="pair-form" onSubmit={(event) => void submit(event)}>
      <CodeField id="code" label={words.code} text={code} letters={letters.value} seen={seen.value} fault={fault === undefined ? undefined : kFault} />
      {fault === undefined ? null : (
        <p id={kFault} class="pair-fault" role="alert">
          {fault}
        </p>
      )}
      {waits ? <p>{words.wait.replace("{wait}", durationWords(wait.value, document.documentElement.lang))}</p> : null}
      <button type="submit" class="main" disabled={waits || opening.value}>
        {opening.value ? words.opening : words.open}
      </button>
      <Switches words={words} letters={letters} seen={seen} />
    </form>
  );
}

export function LockScreen({ keep, words, onNewLink, children }: Shown): JSX.Element {
  const hurt = useSignal(false);
  if (hurt.value) return <LockedHurt keep={keep} words={words} onReturn={() => (hurt.value = false)} />;
  const gone = keep.lock.state.value === "gone";
  return (
    <main class="pair lock">
      <h1>{words.title}</h1>
      <p>
        <button type="button" class="act now" onClick={() => (hurt.value = true)}>
          {say("hurt.title")}
        </button>
      </p>
      {gone ? <p role="alert">{words.gone}</p> : <CodeForm keep={keep} words={words} />}
      <details open={gone}>
        <summary>{words.forgotten}</summary>
        <div class="inside">
          {gone ? null : <p>{words.forgotten_how}</p>}
          <button type="button" onClick={onNewLink}>
            {words.link}
          </button>
        </div>
      </details>
      {children}
    </main>
  );
}
