// A lesson that a coach had: when, and of what. It says what was taught, and grades nobody.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { enter, type NewEntry, newEntry } from "../api/enter.ts";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { undo } from "../shell/undo.ts";
import type { Coach } from "./coach.ts";
import { lines, say } from "./words.ts";

export type Lesson = Coach["taught"][number];

const kMostBytes = 200; // as catalogue/ledger/kinds.toml has it
const bytes = (text: string): number => new TextEncoder().encode(text).length;

interface LessonFormProps {
  coaches: { account: string; name: string }[]; // as they are shown
  chosen: string[]; // at first
  before?: Lesson; // that is put right: of its coach alone
  today: string;
  again: () => Promise<unknown>;
  onClose: () => void;
}

export function LessonForm({ coaches, chosen: first, before, today, again, onClose }: LessonFormProps) {
  const [chosen, setChosen] = useState(first);
  const [day, setDay] = useState(before?.day ?? today);
  const [what, setWhat] = useState(before?.what ?? "");
  const [fault, setFault] = useState<"nobody" | "no_what" | "too_long" | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    const wrong = chosen.length === 0 ? "nobody" : what.trim() === "" ? "no_what" : bytes(what.trim()) > kMostBytes ? "too_long" : undefined;
    setFault(wrong);
    if (wrong || sends) return;
    setSends(true);
    const entries = chosen.map((coach) => newEntry("coach-taught", { coach, day, what: what.trim(), ...(before ? { corrects: before.entry } : {}) }));
    const why = await enter(entries);
    setSends(false);
    setRefused(why);
    if (why) return;
    onClose();
    await again();
    if (before) announce(say("lesson.kept"));
    else offerBack(entries);
  };
  const offerBack = (entries: NewEntry[]) =>
    undo.offer({
      words: say("lesson.kept"),
      undo: async () => {
        const not = await enter(entries.map(({ id, coach }) => newEntry("coach-entry-never-was", { coach, entry: id })));
        announce(not ? not.words : say("taken_back"));
        await again();
      },
    });
  // Entered of the wrong coach, or twice.
  const neverWas = async () => {
    const why = await enter(chosen.map((coach) => newEntry("coach-entry-never-was", { coach, entry: before?.entry })));
    setRefused(why);
    if (why) return;
    announce(say("taken_back"));
    onClose();
    await again();
  };
  const tick = (account: string, on: boolean) => setChosen(on ? [...chosen, account] : chosen.filter((one) => one !== account));
  return (
    <Dialog title={say(before ? "lesson.put_right" : "lesson.title")} wide onClose={onClose}>
      <form noValidate onSubmit={(event) => void submit(event)}>
        <p>{say("lesson.about")}</p>
        {before ? null : (
          <fieldset class="squads">
            <legend>{say("lesson.who")}</legend>
            {coaches.map(({ account, name }) => (
              <label key={account} class="tick">
                <input type="checkbox" checked={chosen.includes(account)} onChange={(event) => tick(account, event.currentTarget.checked)} />
                <bdi>{name}</bdi>
              </label>
            ))}
          </fieldset>
        )}
        {fault === "nobody" ? <p class="fault">{say("lesson.nobody")}</p> : null}
        <Field label={say("lesson.day")}>{(given) => <input {...given} type="date" required max={today} value={day} onInput={(event) => setDay(event.currentTarget.value)} />}</Field>
        <Field label={say("lesson.what")} hint={say("lesson.what_hint")} {...(fault === "no_what" || fault === "too_long" ? { fault: say(`lesson.${fault}`) } : {})}>
          {(given) => <input {...given} value={what} list="lessons" onInput={(event) => setWhat(event.currentTarget.value)} autocomplete="off" />}
        </Field>
        <datalist id="lessons">
          {lines("lesson.usual").map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
        {refused ? <Refused refusal={refused} /> : null}
        <p class="row">
          <button type="submit" class="main" aria-disabled={sends}>
            {say("lesson.enter")}
          </button>
          {before ? (
            <button type="button" onClick={() => void neverWas()}>
              {say("lesson.never_was")}
            </button>
          ) : null}
        </p>
      </form>
    </Dialog>
  );
}
