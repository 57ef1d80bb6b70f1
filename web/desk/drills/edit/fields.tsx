// The fields of the form: each knows its path in the document, shows what is there, and below it what the checker says of
// that path.
import { createContext, type ComponentChildren } from "preact";
import { useContext, useState } from "preact/hooks";
import type { Fault } from "../../../shared/engine/answers.ts";
import { say } from "../words.ts";
import type { Draft } from "./draft.ts";
import { idOfPath, valueAt, withValue } from "./paths.ts";

export const DraftOf = createContext<Draft | undefined>(undefined);

export function useDraft(): Draft {
  const draft = useContext(DraftOf);
  if (!draft) throw new Error("a field outside a draft");
  return draft;
}

export function faultWords({ found, expected, hint }: Fault): string {
  return say("fault", { found, expected }) + (hint ? ` ${hint}` : "");
}

export function useFaultsAt(path: string): Fault[] {
  return (useDraft().faults.value ?? []).filter(({ field }) => field === path);
}

// Below a field of no frame of its own.
export function FaultsBelow({ path, id }: { path: string; id?: string }) {
  const faults = useFaultsAt(path);
  if (faults.length === 0) return null;
  return (
    <p {...(id ? { id } : {})} class="fault">
      {faults.map(faultWords).join(" ")}
    </p>
  );
}

interface Common {
  path: string;
  label: string;
  hint?: string;
}
interface Given {
  id: string;
  "aria-describedby"?: string;
  "aria-invalid"?: "true";
}

export function PathField({ path, label, hint, children }: Common & { children: (given: Given) => ComponentChildren }) {
  const faults = useFaultsAt(path);
  const id = idOfPath(path);
  const about = [hint ? `${id}-hint` : "", faults.length > 0 ? `${id}-fault` : ""].filter((one) => one !== "").join(" ");
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint ? (
        <p id={`${id}-hint`} class="soft">
          {hint}
        </p>
      ) : null}
      {children({ id, ...(about ? { "aria-describedby": about } : {}), ...(faults.length > 0 ? { "aria-invalid": "true" } : {}) })}
      <FaultsBelow path={path} id={`${id}-fault`} />
    </div>
  );
}

function useValue(path: string): [unknown, (value: unknown, kind?: string) => void] {
  const draft = useDraft();
  return [valueAt(draft.history.value.now, path), (value, kind) => draft.change((drill) => withValue(drill, path, value), kind)];
}

interface TextProps extends Common {
  tall?: boolean;
  optional?: boolean; // empty: the field is not written
  typed?: (text: string) => void; // in place of writing it as it is
}

export function TextField({ tall, optional, typed, ...common }: TextProps) {
  const draft = useDraft();
  const [value, set] = useValue(common.path);
  const input = (event: { currentTarget: { value: string } }) => {
    const text = event.currentTarget.value.replace(/[\r\n\t]+/g, " "); // the format's texts are of one line
    if (typed) typed(text);
    else set(optional && text === "" ? undefined : text, common.path);
  };
  const text = typeof value === "string" ? value : "";
  return (
    <PathField {...common}>
      {(given) =>
        tall ? <textarea {...given} rows={3} value={text} onInput={input} onBlur={draft.settle} /> : <input {...given} type="text" value={text} onInput={input} onBlur={draft.settle} />
      }
    </PathField>
  );
}

interface NumberProps extends Common {
  least: number;
  most: number;
  step?: number; // 1: whole numbers
  optional?: boolean;
}

// What cannot be read as a number stays in the field and is told there; the document keeps the last that could.
export function NumberField({ least, most, step = 1, optional, hint, ...common }: NumberProps) {
  const draft = useDraft();
  const [value, set] = useValue(common.path);
  const [typed, setTyped] = useState<string | undefined>();
  const shown = typed ?? (value === undefined ? "" : String(value));
  const wrong = typed !== undefined && typed.trim() !== "" && !Number.isFinite(Number(typed.replace(",", ".")));
  const put = (text: string) => {
    setTyped(text);
    const number = Number(text.replace(",", "."));
    if (text.trim() === "") {
      if (optional) set(undefined, common.path);
    } else if (Number.isFinite(number)) set(number, common.path);
  };
  const key = (event: KeyboardEvent) => {
    const way = { ArrowUp: 1, ArrowDown: -1, PageUp: 5, PageDown: -5 }[event.key];
    if (way === undefined) return;
    event.preventDefault();
    const next = Math.min(most, Math.max(least, (typeof value === "number" ? value : least) + way * step));
    put(String(Math.round(next * 1000) / 1000));
  };
  const range = say(optional ? "range_or_nothing" : "range", { least, most });
  return (
    <PathField {...common} hint={hint ? `${hint} ${range}` : range}>
      {(given) => (
        <>
          <input {...given} {...(wrong ? { "aria-invalid": "true" as const } : {})} class="short" type="text" inputMode="decimal" value={shown} onInput={(event) => put(event.currentTarget.value)} onKeyDown={key}
            onBlur={() => {
              if (!wrong) setTyped(undefined);
              draft.settle();
            }} />
          {wrong ? <p class="fault">{say("no_number")}</p> : null}
        </>
      )}
    </PathField>
  );
}

interface ChoiceProps extends Common {
  options: readonly string[];
  words: (option: string) => string;
  none?: string; // shown for: not written
  chosen?: (option: string) => void;
}

export function ChoiceField({ options, words, none, chosen, ...common }: ChoiceProps) {
  const [value, set] = useValue(common.path);
  const text = typeof value === "string" ? value : "";
  const choose = (option: string) => (chosen ? chosen(option) : set(option === "" ? undefined : option));
  return (
    <PathField {...common}>
      {(given) => (
        <select {...given} value={text} onChange={(event) => choose(event.currentTarget.value)}>
          {none !== undefined || !options.includes(text) ? <option value="">{none ?? say("choose")}</option> : null}
          {options.map((option) => (
            <option key={option} value={option}>
              {words(option)}
            </option>
          ))}
        </select>
      )}
    </PathField>
  );
}

export function TickField({ path, label, chosen }: { path: string; label: string; chosen?: (on: boolean) => void }) {
  const [value, set] = useValue(path);
  return (
    <>
      <label class="tick">
        <input id={idOfPath(path)} type="checkbox" checked={value === true} onChange={(event) => (chosen ? chosen(event.currentTarget.checked) : set(event.currentTarget.checked))} />
        {label}
      </label>
      <FaultsBelow path={path} />
    </>
  );
}

// Several of a list.
export function TicksField({ path, label, options, words }: { path: string; label: string; options: readonly string[]; words: (option: string) => string }) {
  const [value, set] = useValue(path);
  const on = Array.isArray(value) ? (value as string[]) : [];
  return (
    <fieldset class="ticks" id={idOfPath(path)} tabIndex={-1}>
      <legend>{label}</legend>
      {options.map((option) => (
        <label key={option} class="tick">
          <input type="checkbox" checked={on.includes(option)} onChange={(event) => set(event.currentTarget.checked ? options.filter((one) => one === option || on.includes(one)) : on.filter((one) => one !== option))} />
          {words(option)}
        </label>
      ))}
      <FaultsBelow path={path} />
    </fieldset>
  );
}

// One text a line.
export function LinesField({ most, ...common }: Common & { most: number }) {
  const draft = useDraft();
  const [value, set] = useValue(common.path);
  const lines = Array.isArray(value) ? (value as string[]) : [];
  const [typed, setTyped] = useState<string | undefined>();
  const said = (text: string) => text.split(/\r?\n/).map((line) => line.replace(/\t/g, " ").trim()).filter((line) => line !== "");
  const shown = typed !== undefined && JSON.stringify(said(typed)) === JSON.stringify(lines) ? typed : lines.join("\n");
  return (
    <PathField {...common}>
      {(given) => (
        <textarea {...given} rows={most} value={shown} onBlur={draft.settle}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            set(said(event.currentTarget.value), common.path);
          }} />
      )}
    </PathField>
  );
}
