// The first thing that a coach sees: open the lead's link, compare a code, done.
import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { secretIn } from "./link.ts";
import type { Pairing } from "./pairing.ts";
import type { PairingWords } from "./pairing_words.ts";

interface Shown {
  pairing: Pairing;
  words: PairingWords;
  onOpen: () => void; // paired, and the coach wants to go on
  onBack?: (() => void) | undefined; // where there is something to go back to
  notice?: string | undefined; // why the phone is not paired any more
}

function LinkForm({ pairing, words }: Shown): JSX.Element {
  const text = useSignal("");
  const submit = (event: Event): void => {
    event.preventDefault();
    void pairing.begin(secretIn(text.value));
  };
  return (
    <form class="pair-form" onSubmit={submit}>
      <label for="pair-link">{words.link}</label>
      <input id="pair-link" type="text" autocomplete="off" autocapitalize="off" spellcheck={false} value={text} onInput={(event) => (text.value = event.currentTarget.value)} />
      <button type="submit" class="main">{words.go}</button>
    </form>
  );
}

function State(shown: Shown): JSX.Element {
  const { pairing, words, onOpen } = shown;
  const state = pairing.state.value;
  switch (state.at) {
    case "link-wanted":
      return (
        <>
          <p>{words.how}</p>
          <LinkForm {...shown} />
        </>
      );
    case "asking":
      return <p role="status">{words.asking}</p>;
    case "code":
      return (
        <>
          <p>{words.compare}</p>
          <p class="pair-code" aria-label={`${words.code}: ${[...state.code].join(" ")}`}>
            {state.code.slice(0, 3)} {state.code.slice(3)}
          </p>
          <p role="status">{words.waiting}</p>
        </>
      );
    case "paired":
      return (
        <>
          <p role="status">{words.paired}</p>
          <p>{state.lasting ? words.lasting : words.not_lasting}</p>
          <button type="button" class="main" onClick={onOpen}>
            {words.open}
          </button>
        </>
      );
    case "failed":
      return (
        <>
          <p role="alert" class="pair-fault">
            {words.failed[state.why]}
          </p>
          <p>{words.again}</p>
          <LinkForm {...shown} />
        </>
      );
  }
}

export function PairScreen(shown: Shown): JSX.Element {
  return (
    <main class="pair">
      <h1>{shown.words.title}</h1>
      {shown.notice === undefined || shown.pairing.state.value.at !== "link-wanted" ? null : (
        <p role="alert" class="pair-fault">
          {shown.notice}
        </p>
      )}
      <State {...shown} />
      {shown.onBack && shown.pairing.state.value.at !== "paired" ? (
        <button type="button" class="back-button" onClick={shown.onBack}>
          {shown.words.back}
        </button>
      ) : null}
    </main>
  );
}
