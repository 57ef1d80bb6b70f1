// Shown where an older form of what is kept could not be changed: it is all still there, and what the club does not have
// can be saved as a file in the form in which it would have been sent (docs/formats/sync.md).
import type { JSX } from "preact";
import type { Entry } from "../keep/entry.ts";
import type { KeepingWords } from "./keeping_words.ts";

function save(waiting: Entry[]): void {
  const file = new Blob([JSON.stringify({ client: 1, entries: waiting }, null, 1)], { type: "application/json" });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = "lanework-waiting.json";
  link.click();
  URL.revokeObjectURL(link.href);
}

export function Rescue({ waiting, words }: { waiting: Entry[]; words: KeepingWords["rescue"] }): JSX.Element {
  return (
    <main class="pair">
      <h1>{words.title}</h1>
      <p role="alert">{words.what}</p>
      <button type="button" class="main" onClick={() => location.reload()}>
        {words.again}
      </button>
      {waiting.length === 0 ? null : (
        <button type="button" onClick={() => save(waiting)}>
          {words.save.replace("{count}", String(waiting.length))}
        </button>
      )}
    </main>
  );
}
