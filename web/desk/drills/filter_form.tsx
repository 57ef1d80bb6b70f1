// What the list is narrowed by. Each choice goes into the address, so that going back takes it back; what is typed stays
// here while the desk is open.
import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { kFamilies, kFormations, kNeeds, kPhases, kSurfaces } from "./drill_document.ts";
import { kOrders, type Order, type Wanted } from "./find_drills.ts";
import { go, hashOf } from "../shell/route.ts";
import { Field } from "../shell/parts.tsx";
import { say, wordFor } from "./words.ts";

export const typed = signal<{ text: string; said: string }>({ text: "", said: "" });

const kChoices = { family: kFamilies, phase: kPhases, formation: kFormations, without: ["all", ...kNeeds], ground: kSurfaces } as const;
type Choice = keyof typeof kChoices;
const kYoungest = 8;
const kOldest = 19;

export function wantedBy(further: Record<string, string>): Wanted {
  const age = Number(further.age);
  const chosen = Object.fromEntries((Object.keys(kChoices) as Choice[]).flatMap((key) => (further[key] ? [[key, further[key]]] : [])));
  return { ...chosen, ...(age ? { age } : {}), ...typed.value };
}

export function orderOf(further: Record<string, string>): Order {
  return kOrders.find((order) => order === further.order) ?? "session";
}

export function narrowed(further: Record<string, string>): boolean {
  return typed.value.text !== "" || typed.value.said !== "" || Object.keys(kChoices).some((key) => further[key]) || Boolean(further.age);
}

// On a phone the list would begin a screen below what it is narrowed by: there only the word stands open, the rest by a tap.
export function FilterForm({ further }: { further: Record<string, string> }) {
  const [folded, setFolded] = useState(!narrowed(further));
  const choose = (key: string, value: string) => {
    const { [key]: _, ...rest } = further;
    go(hashOf("drills", undefined, value ? { ...rest, [key]: value } : rest));
  };
  const select = (key: string, label: string, options: readonly string[], words: (option: string) => string, any?: string) => (
    <Field label={label}>
      {(given) => (
        <select {...given} value={further[key] ?? (any === undefined ? options[0] : "")} onChange={(event) => choose(key, event.currentTarget.value)}>
          {any === undefined ? null : <option value="">{any}</option>}
          {options.map((option) => (
            <option key={option} value={option}>
              {words(option)}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
  const write = (key: "text" | "said", label: string) => (
    <Field label={label}>
      {(given) => <input {...given} type="search" value={typed.value[key]} onInput={(event) => (typed.value = { ...typed.value, [key]: event.currentTarget.value })} />}
    </Field>
  );
  const ages = Array.from({ length: kOldest - kYoungest + 1 }, (_, index) => String(kYoungest + index));
  const forget = () => {
    typed.value = { text: "", said: "" };
    go(hashOf("drills", undefined, further.order ? { order: further.order } : {}));
  };
  return (
    <form class={`drill-filters not-on-paper${folded ? " folded" : ""}`} role="search" aria-label={say("filter.about")} onSubmit={(event) => event.preventDefault()}>
      {write("text", say("filter.text"))}
      <button type="button" class="unfold" aria-expanded={!folded} onClick={() => setFolded(!folded)}>
        {say("filter.more")}
      </button>
      {select("family", say("filter.family"), kFamilies, (one) => wordFor("family", one), say("filter.any"))}
      {select("phase", say("filter.phase"), kPhases, (one) => wordFor("phase", one), say("filter.any"))}
      {select("formation", say("filter.formation"), kFormations, (one) => wordFor("formation", one), say("filter.any"))}
      {select("age", say("filter.age"), ages, (one) => say("age", { age: one }), say("filter.any"))}
      {select("without", say("filter.without"), kChoices.without, (one) => (one === "all" ? say("filter.without_all") : say("filter.without_one", { need: wordFor("need", one) })), say("filter.any"))}
      {select("ground", say("filter.ground"), kSurfaces, (one) => wordFor("surface", one), say("filter.any"))}
      {write("said", say("filter.said"))}
      {select("order", say("filter.order"), kOrders, (one) => say(`order.${one as Order}`))}
      <div class="field forget">
        <button type="button" onClick={forget} disabled={!narrowed(further)}>
          {say("filter.forget")}
        </button>
      </div>
    </form>
  );
}
