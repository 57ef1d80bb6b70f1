// The field for the code: digits under the thumb, letters for whoever has a phrase; it may be pasted (WCAG 2.2, 3.3.8).
// It is covered by its style and not of the type of passwords: the browser's question whether it shall keep one would
// lie over the buttons of a session.
import type { Signal } from "@preact/signals";
import type { JSX } from "preact";

interface Shown {
  id: string;
  label: string;
  text: Signal<string>;
  letters: boolean;
  seen: boolean; // in the clear
  fault?: string | undefined; // the id of what says why it was not taken
}

export function CodeField({ id, label, text, letters, seen, fault }: Shown): JSX.Element {
  return (
    <>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        class={seen ? "" : "covered"}
        inputMode={letters ? "text" : "numeric"}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        aria-describedby={fault}
        aria-invalid={fault !== undefined}
        value={text}
        onInput={(event) => (text.value = event.currentTarget.value)}
      />
    </>
  );
}

export function Switches({ words, letters, seen }: { words: { letters: string; show: string }; letters: Signal<boolean>; seen: Signal<boolean> }): JSX.Element {
  return (
    <p class="switches">
      <button type="button" aria-pressed={letters.value} onClick={() => (letters.value = !letters.value)}>
        {words.letters}
      </button>
      <button type="button" aria-pressed={seen.value} onClick={() => (seen.value = !seen.value)}>
        {words.show}
      </button>
    </p>
  );
}
