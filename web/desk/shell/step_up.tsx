// The code once more, for what changes who sees what: a small question over the screen; the request goes on after it.
import type { Refusal } from "../api/answer.ts";
import { askOnce } from "../api/ask.ts";
import { codeShown } from "../api/coming_in.ts";
import { CodeForm } from "./code_form.tsx";
import { Dialog } from "./dialog.tsx";
import { say } from "./words.ts";

async function send(code: string): Promise<Refusal | undefined> {
  const answer = await askOnce("step-up", {}, { code });
  if (!answer.ok) return answer;
  codeShown(true);
  return undefined;
}

export function StepUp() {
  return (
    <Dialog title={say("step_up.title")} onClose={() => codeShown(false)}>
      <p>{say("step_up.what")}</p>
      <CodeForm label={say("sign_in.code")} button={say("step_up.go_on")} send={send} />
    </Dialog>
  );
}
