// The few parts that all screens are made of: a head, a stepper, a choice, a tick.
import type { ComponentChildren } from "preact";
import { number, say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

export function Head({ title, children }: { title: string; children?: ComponentChildren }) {
  return (
    <header class="head">
      <h1 tabIndex={-1}>{title}</h1>
      {children}
    </header>
  );
}

export function CloseButton({ pitch }: { pitch: Pitch }) {
  return (
    <button type="button" onClick={() => (pitch.overlay.value = "none")}>
      {say("say.close")}
    </button>
  );
}

// In reach on every screen of an evening; a drill's clock stands meanwhile.
export function HurtButton({ pitch }: { pitch: Pitch }) {
  const stop = () => {
    pitch.happen({ event: "pause", at: Date.now() });
    pitch.overlay.value = "hurt";
  };
  return (
    <button type="button" class="act" onClick={stop}>
      {say("run.hurt")}
    </button>
  );
}

interface StepperProps {
  label: string;
  value: number;
  least: number;
  most: number;
  by?: number;
  onChange(value: number): void;
}

export function Stepper({ label, value, least, most, by = 1, onChange }: StepperProps) {
  const to = (wanted: number) => onChange(Math.min(most, Math.max(least, wanted)));
  return (
    <div class="stepper" role="group" aria-label={label}>
      <span>{label}</span>
      <span class="row">
        <button type="button" aria-label={`${label}: ${say("say.less")}`} disabled={value <= least} onClick={() => to(value - by)}>
          −
        </button>
        <output aria-live="polite">{number(value)}</output>
        <button type="button" aria-label={`${label}: ${say("say.more")}`} disabled={value >= most} onClick={() => to(value + by)}>
          +
        </button>
      </span>
    </div>
  );
}

export function Toggle({ label, on, onChange }: { label: string; on: boolean; onChange(on: boolean): void }) {
  return (
    <button type="button" aria-pressed={on} onClick={() => onChange(!on)}>
      {label}
    </button>
  );
}

export function Tick({ label, on, onChange }: { label: string; on: boolean; onChange(on: boolean): void }) {
  return (
    <label class="tick">
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  );
}
