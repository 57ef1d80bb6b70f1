// Shown where a newer app has written what lies on the phone: nothing can be read, nothing is touched, and the newer app
// takes over as soon as it is there, since nothing runs here.
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import type { KeepingWords } from "./keeping_words.ts";
import type { Renewal } from "./renewal.ts";

export function UpdateApp({ renewal, words }: { renewal: Renewal; words: KeepingWords["newer_form"] }): JSX.Element {
  useEffect(() => renewal.waits.subscribe((waits) => waits && renewal.takeOver()), [renewal]);
  return (
    <main class="pair">
      <h1>{words.title}</h1>
      <p role="alert">{words.what}</p>
      <button type="button" class="main" onClick={() => renewal.look()}>
        {words.look}
      </button>
    </main>
  );
}
