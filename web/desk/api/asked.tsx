// What a screen asked for when it opened: waited for, there, or refused; and asked again after something changed.
import { useEffect, useRef, useState } from "preact/hooks";
import type { ComponentChildren } from "preact";
import type { Answer, Operation, Refusal, Said, ValuesOf } from "./answer.ts";
import { ask } from "./ask.ts";
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

const { say } = wordsOf({ en, es });

export interface Asked<Name extends Operation> {
  said: Said<Name> | undefined; // the last that was had, also while it is asked anew
  refused: Refusal | undefined;
  asks: boolean;
  again(): Promise<Answer<Name>>;
}

// wanted: false where it is not to be asked (yet).
export function useAsked<Name extends Operation>(operation: Name, values: ValuesOf<Name>, wanted = true): Asked<Name> {
  const [state, setState] = useState<{ key: string; said?: Said<Name>; refused?: Refusal; asks: boolean }>({ key: "", asks: wanted });
  const key = JSON.stringify([operation, values]);
  const newest = useRef("");
  async function again(): Promise<Answer<Name>> {
    newest.current = key;
    setState((before) => (before.key === key ? { ...before, asks: true } : { key, asks: true }));
    const answer = await ask(operation, values);
    // What was asked of another place meanwhile does not overwrite it.
    if (newest.current === key) setState((before) => (answer.ok ? { key, said: answer.said, asks: false } : { ...before, key, refused: answer, asks: false }));
    return answer;
  }
  useEffect(() => {
    if (wanted) void again();
    return () => {
      newest.current = "";
    };
  }, [key, wanted]);
  const here = state.key === key;
  return { said: here ? state.said : undefined, refused: here ? state.refused : undefined, asks: here ? state.asks : wanted, again };
}

interface AnyAsked {
  said: unknown;
  refused: Refusal | undefined;
  again(): Promise<unknown>;
}

// What is made of several: waited for as a whole, so that nothing moves when the rest comes; refused where any of it is
// and was never had, since half of it would look like all; and then all that is wanting is asked again.
export function together<Name extends Operation>(asked: Asked<Name>, others: AnyAsked[]): Asked<Name> {
  const wanting = [asked, ...others].filter(({ said }) => said === undefined);
  const refused = wanting.find((one) => one.refused !== undefined)?.refused ?? asked.refused;
  return {
    said: wanting.length === 0 ? asked.said : undefined,
    refused,
    asks: asked.asks,
    again: async () => {
      await Promise.all(wanting.filter((one) => one !== asked).map((one) => one.again()));
      return asked.again();
    },
  };
}

type Tall = "line" | "field" | "table" | "screen";

// The usual three states of a screen's part. height: how tall it stands while it is waited for, so that nothing jumps.
export function Of<Name extends Operation>({ asked, height = "screen", children }: { asked: Asked<Name>; height?: Tall; children: (said: Said<Name>) => ComponentChildren }) {
  return (
    <>
      {asked.refused ? <Refused refusal={asked.refused} again={() => void asked.again()} /> : null}
      {asked.said !== undefined ? children(asked.said) : asked.refused ? null : <Waiting height={height} />}
    </>
  );
}

export function Waiting({ height }: { height: Tall }) {
  return (
    <p class={`waiting ${height}-tall`} role="status">
      {say("waiting")}
    </p>
  );
}

export function Refused({ refusal, again }: { refusal: Refusal; again?: () => void }) {
  return (
    <div class="refused" role="alert">
      <p>{refusal.words}</p>
      {again ? (
        <button type="button" onClick={again}>
          {say("again")}
        </button>
      ) : null}
    </div>
  );
}
