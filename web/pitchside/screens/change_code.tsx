// The code that locks the app, changed by whoever knows the one until now. A wrong one counts as at the locked app.
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { weakness } from "../keep/code.ts";
import { language, number, say } from "../words/words.ts";
import { CodeField, Switches } from "./code_field.tsx";
import { durationWords } from "./duration_words.ts";
import { CloseButton, Head } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";

const kFault = "code-fault";
const kForm = "code-form";

export function ChangeCodeScreen({ pitch }: { pitch: Pitch }) {
  const [old, fresh, again] = [useSignal(""), useSignal(""), useSignal("")];
  const [letters, seen] = [useSignal(false), useSignal(false)];
  const fault = useSignal<string | undefined>(undefined);
  const [working, changed] = [useSignal(false), useSignal(false)];
  const busy = useRef(false); // a second tap of the same wet finger is no second try
  const faultOf = async (): Promise<string | undefined> => {
    const weak = weakness(fresh.value);
    if (weak) return say(`keeping.lock.weak.${weak}`);
    if (fresh.value !== again.value) return say("keeping.lock.differs");
    const said = await pitch.changeCode!(old.value, fresh.value).catch(() => undefined);
    if (!said) return say("keeping.lock.change_failed");
    if (said.opened) return undefined;
    old.value = "";
    const wrong = say("keeping.lock.wrong", { left: number(said.left) });
    return said.wait > 0 ? `${wrong} ${say("keeping.lock.wait", { wait: durationWords(said.wait, language.value) })}` : wrong;
  };
  const submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (busy.current) return;
    busy.current = working.value = true;
    fault.value = await faultOf();
    busy.current = working.value = false;
    changed.value = fault.value === undefined;
  };
  const described = fault.value === undefined ? undefined : kFault;
  const field = { letters: letters.value, seen: seen.value, fault: described };
  return (
    <>
      <Head title={say("keeping.lock.change")}>
        <CloseButton pitch={pitch} />
      </Head>
      <main>
        {changed.value ? (
          <p class="large" role="status">
            {say("keeping.lock.changed")}
          </p>
        ) : (
          <form id={kForm} class="code-form" onSubmit={(event) => void submit(event)}>
            <CodeField id="code-old" label={say("keeping.lock.old")} text={old} {...field} />
            <CodeField id="code-new" label={say("keeping.lock.new")} text={fresh} {...field} />
            <CodeField id="code-again" label={say("keeping.lock.new_again")} text={again} {...field} />
            {fault.value === undefined ? null : (
              <p id={kFault} class="fault" role="alert">
                {fault}
              </p>
            )}
            <Switches words={{ letters: say("keeping.lock.letters"), show: say("keeping.lock.show") }} letters={letters} seen={seen} />
          </form>
        )}
      </main>
      {changed.value ? null : (
        <footer class="bar">
          <button type="submit" form={kForm} class="main" disabled={working.value || old.value === ""}>
            {working.value ? say("keeping.lock.opening") : say("keeping.lock.change")}
          </button>
        </footer>
      )}
    </>
  );
}
