// A copy of everything about one child, for the guardian: a file, and a line in the book of reads with how it was made sure
// that it is the guardian.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { say } from "./words.ts";

const kMostBytes = 200;

// Into the browser's folder of downloads; the page keeps nothing of it. The file's name says of nobody who it is.
function save(text: string): void {
  const place = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = place;
  link.download = "one-player.json";
  link.click();
  URL.revokeObjectURL(place);
}

export function ExportChild({ player, onClose }: { player: string; onClose: () => void }) {
  const [verified, setVerified] = useState("");
  const [fault, setFault] = useState<string | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const submit = async (event: Event) => {
    event.preventDefault();
    const words = verified.trim();
    const wrong = words === "" ? say("export.say_how") : new TextEncoder().encode(words).length > kMostBytes ? say("export.too_long") : undefined;
    setFault(wrong);
    if (wrong) return;
    const answer = await ask("export-player", { player }, { verified: words });
    setRefused(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    save(`${JSON.stringify(answer.said, null, 2)}\n`);
    announce(say("export.done"));
    onClose();
  };
  return (
    <Dialog title={say("export.title", { player })} onClose={onClose}>
      <p>{say("export.what")}</p>
      <form onSubmit={(event) => void submit(event)}>
        <Field label={say("export.verified")} hint={say("export.hint")} {...(fault ? { fault } : {})}>
          {(given) => <textarea {...given} rows={2} value={verified} onInput={(event) => setVerified(event.currentTarget.value)} />}
        </Field>
        {refused ? <Refused refusal={refused} /> : null}
        <button type="submit" class="main">
          {say("export.do")}
        </button>
      </form>
    </Dialog>
  );
}
