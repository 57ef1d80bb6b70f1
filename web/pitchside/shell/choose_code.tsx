// After pairing, and before the first name comes: the code that locks what is about people.
import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { weakness } from "../keep/code.ts";
import type { Keep } from "../keep/keep.ts";
import { CodeField, Switches } from "../screens/code_field.tsx";
import type { LockWords } from "./keeping_words.ts";

const kFault = "code-fault";

export function ChooseCode({ keep, words, onChosen }: { keep: Keep; words: LockWords; onChosen: () => void }): JSX.Element {
  const [code, again] = [useSignal(""), useSignal("")];
  const [letters, seen] = [useSignal(false), useSignal(false)];
  const fault = useSignal<string | undefined>(undefined);
  const submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const weak = weakness(code.value);
    fault.value = weak ? words.weak[weak] : code.value === again.value ? undefined : words.differs;
    if (fault.value !== undefined) return;
    await keep.lock.choose(code.value);
    onChosen();
  };
  const described = fault.value === undefined ? undefined : kFault;
  return (
    <main class="pair lock">
      <h1>{words.choose_title}</h1>
      <p>{words.choose_how}</p>
      <form class="pair-form" onSubmit={(event) => void submit(event)}>
        <CodeField id="code" label={words.code} text={code} letters={letters.value} seen={seen.value} fault={described} />
        <CodeField id="code-again" label={words.again} text={again} letters={letters.value} seen={seen.value} fault={described} />
        {fault.value === undefined ? null : (
          <p id={kFault} class="pair-fault" role="alert">
            {fault}
          </p>
        )}
        <Switches words={words} letters={letters} seen={seen} />
        <button type="submit" class="main">
          {words.keep}
        </button>
      </form>
    </main>
  );
}
