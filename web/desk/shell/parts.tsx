// The few parts that all screens are made of.
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { withoutNames } from "./preferences.ts";
import { say } from "./words.ts";

// The first thing of every screen, there at once and before what it asked for: the focus goes to it when one comes here.
export function Head({ title, children }: { title: string; children?: ComponentChildren }) {
  return (
    <header class="head">
      <h1 tabIndex={-1}>{title}</h1>
      {children}
    </header>
  );
}

// Where there is nothing yet: what will be here, and the step that brings it.
export function Empty({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class="empty">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

// instead: what stands for the person on a wall that others look at, such as the squad's word or an id.
export function named(name: string, instead: string): string {
  return withoutNames.value ? instead : name;
}

// What somebody wrote freely may have a name in it.
export function Written({ text }: { text: string }) {
  return withoutNames.value ? <span class="soft">{say("written_hidden")}</span> : <bdi class="written">{text}</bdi>;
}

interface FieldProps {
  label: string;
  hint?: string;
  fault?: string;
  children: (given: { id: string; "aria-describedby"?: string; "aria-invalid"?: "true" }) => ComponentChildren;
}

// A label, what is typed or chosen, and below it what is wrong with it.
export function Field({ label, hint, fault, children }: FieldProps) {
  const id = useId();
  const about = [hint ? `${id}-hint` : "", fault ? `${id}-fault` : ""].filter((one) => one !== "").join(" ");
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint ? (
        <p id={`${id}-hint`} class="soft">
          {hint}
        </p>
      ) : null}
      {children({ id, ...(about ? { "aria-describedby": about } : {}), ...(fault ? { "aria-invalid": "true" } : {}) })}
      {fault ? (
        <p id={`${id}-fault`} class="fault">
          {fault}
        </p>
      ) : null}
    </div>
  );
}
