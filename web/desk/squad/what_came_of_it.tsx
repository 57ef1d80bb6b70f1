// An evening that is over: what was told of it, or, where nobody has said a word, a form for the lead, who has it from the coach
// or from the paper: an entry of the kind 'wrap-up', as the phone's own.
import { useState } from "preact/hooks";
import { weekday } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { enter, newEntry } from "../api/enter.ts";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field, Written } from "../shell/parts.tsx";
import { undo } from "../shell/undo.ts";
import { mondayOf } from "../week/days.ts";
import type { Entered } from "../week/week_table.ts";
import { say } from "./words.ts";

const kHappened = ["held", "cut-short", "missed"] as const;
const kDidIt = ["most", "half", "few", "nobody"] as const;
const kMostMinutes = 240; // own judgement: no warm-up is longer; it catches a slip of the finger

interface Wanted {
  happened: (typeof kHappened)[number] | undefined;
  did_it: (typeof kDidIt)[number] | undefined;
  minutes: string;
  note: string;
}
type Wanting = "happened" | "did_it" | "minutes";

// What is not told of an evening, or cannot be so.
export function wantingIn({ happened, did_it, minutes }: Wanted): Wanting | undefined {
  if (!happened) return "happened";
  if (happened === "missed") return undefined;
  if (!did_it) return "did_it";
  const had = Number(minutes);
  if (minutes.trim() === "") return happened === "cut-short" ? "minutes" : undefined;
  return Number.isInteger(had) && had >= 1 && had <= kMostMinutes ? undefined : "minutes";
}

export function contentOf({ happened, did_it, minutes, note }: Wanted): Record<string, unknown> {
  const held = happened === "missed" ? {} : { did_it, ...(minutes.trim() === "" ? {} : { minutes: Number(minutes) }) };
  return { happened, ...held, ...(note.trim() === "" ? {} : { note: note.trim() }) };
}

interface ChoicesProps<Word extends string> {
  name: string;
  words: readonly Word[];
  chosen: Word | undefined;
  fault: boolean;
  choose: (word: Word) => void;
}

function Choices<Word extends "held" | "cut-short" | "missed" | "most" | "half" | "few" | "nobody">({ name, words, chosen, fault, choose }: ChoicesProps<Word>) {
  return (
    <fieldset class="squads">
      <legend>{say(name === "happened" ? "over.happened" : "over.did_it")}</legend>
      {words.map((word) => (
        <label key={word} class="tick">
          <input type="radio" name={`over-${name}`} checked={chosen === word} onChange={() => choose(word)} />
          {say(`over.${word}`)}
        </label>
      ))}
      {fault ? <p class="fault">{say("over.choose")}</p> : null}
    </fieldset>
  );
}

interface Evening {
  squad: string;
  at: { date: string; start: string };
}

function TellDialog({ squad, at, told, onClose }: Evening & { told: () => Promise<unknown>; onClose: () => void }) {
  const [wanted, setWanted] = useState<Wanted>({ happened: undefined, did_it: undefined, minutes: "", note: "" });
  const [wanting, setWanting] = useState<Wanting | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const set = (more: Partial<Wanted>) => setWanted({ ...wanted, ...more });
  const about = { squad, day: at.date, start: at.start };
  const submit = async (event: Event) => {
    event.preventDefault();
    const not_yet = wantingIn(wanted);
    setWanting(not_yet);
    if (not_yet || sends) return;
    const entry = newEntry("wrap-up", { ...about, ...contentOf(wanted) });
    setSends(true);
    const why = await enter([entry]);
    setSends(false);
    setRefused(why);
    if (why) return;
    onClose();
    await told();
    undo.offer({
      words: say("over.kept", { day: weekday(at.date) }),
      undo: async () => {
        const not = await enter([newEntry("taken-back", { ...about, corrects: entry.id })]);
        announce(not ? not.words : say("over.taken_back"));
        await told();
      },
    });
  };
  const held = wanted.happened !== undefined && wanted.happened !== "missed";
  return (
    <Dialog title={say("over.title", { day: weekday(at.date), start: at.start })} onClose={onClose}>
      <form onSubmit={(event) => void submit(event)}>
        <Choices name="happened" words={kHappened} chosen={wanted.happened} fault={wanting === "happened"} choose={(happened) => set({ happened })} />
        {held ? <Choices name="did_it" words={kDidIt} chosen={wanted.did_it} fault={wanting === "did_it"} choose={(did_it) => set({ did_it })} /> : null}
        {held ? (
          <Field label={say("over.minutes")} hint={say(wanted.happened === "cut-short" ? "over.minutes_cut" : "over.minutes_held")} {...(wanting === "minutes" ? { fault: say("over.no_minutes", { most: kMostMinutes }) } : {})}>
            {(given) => <input {...given} inputMode="numeric" value={wanted.minutes} onInput={(event) => set({ minutes: event.currentTarget.value })} autocomplete="off" />}
          </Field>
        ) : null}
        <Field label={say("over.note")} hint={say("over.note_hint")}>
          {(given) => <textarea {...given} rows={2} maxLength={500} value={wanted.note} onInput={(event) => set({ note: event.currentTarget.value })} />}
        </Field>
        {refused ? <Refused refusal={refused} /> : null}
        <button type="submit" class="main" aria-disabled={sends}>
          {say("over.enter")}
        </button>
      </form>
    </Dialog>
  );
}

function AsTold({ entered: { did_it, minutes, note }, happened }: { entered: Entered; happened: NonNullable<Entered["happened"]> }) {
  const parts = [say(`over.${happened}`), did_it ? say(`over.${did_it}`) : "", minutes === undefined ? "" : say("over.had", { minutes })];
  return (
    <p>
      {say("over.told", { told: parts.filter((part) => part !== "").join(", ") })} {note ? <Written text={note} /> : null}
    </p>
  );
}

// plan_block: what follows from it is in the plan once it is made anew.
export function WhatCameOfIt({ squad, at, plan_block }: Evening & { plan_block: () => void }) {
  const week = useAsked("week", { monday: mondayOf(at.date) });
  const [tells, setTells] = useState(false);
  const [is_new, setIsNew] = useState(false);
  const told = async () => {
    setIsNew(true);
    await week.again();
  };
  return (
    <section class="not-on-paper" aria-labelledby="came-of-it">
      <h3 id="came-of-it">{say("over.heading")}</h3>
      <Of asked={week} height="line">
        {({ evenings }) => {
          const entered = evenings.find((one) => one.squad === squad && one.day === at.date && one.start === at.start);
          return entered?.happened ? (
            <AsTold entered={entered} happened={entered.happened} />
          ) : (
            <p class="row">
              <span>{say("over.no_word")}</span>
              <button type="button" onClick={() => setTells(true)}>
                {say("over.tell")}
              </button>
            </p>
          );
        }}
      </Of>
      {is_new ? (
        <p class="row">
          <span>{say("over.then")}</span>
          <button type="button" onClick={plan_block}>
            {say("over.plan")}
          </button>
        </p>
      ) : null}
      {tells ? <TellDialog squad={squad} at={at} told={told} onClose={() => setTells(false)} /> : null}
    </section>
  );
}
