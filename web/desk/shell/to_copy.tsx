// A text that goes elsewhere, such as a link in a message: shown whole, and copied by one click.
import { useRef, useState } from "preact/hooks";
import { announce } from "./announce.ts";
import { Field } from "./parts.tsx";
import { say } from "./words.ts";

export function ToCopy({ label, text, rows = 1 }: { label: string; text: string; rows?: number }) {
  const at = useRef<HTMLTextAreaElement>(null);
  const [copied, setCopied] = useState("");
  const copy = async () => {
    at.current?.select();
    // Where the clipboard is closed to pages, the text is marked, and the keyboard does it.
    const said = await navigator.clipboard.writeText(text).then(() => say("copy.done"), () => say("copy.by_hand"));
    setCopied(said);
    announce(said);
  };
  return (
    <div class="to-copy">
      <Field label={label}>{(given) => <textarea {...given} ref={at} readOnly rows={rows} value={text} />}</Field>
      <button type="button" onClick={() => void copy()}>
        {say("copy.copy")}
      </button>
      <span class="soft">{copied}</span>
    </div>
  );
}
