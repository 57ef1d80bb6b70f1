// The lead saw an evening: the questions of the printed form (app/draw/clinic_words.h), about the session and naming nobody.
// Saved as an entry of the kind 'visit'; what it says in its answers stands in docs/model/desk_week.md.
import { useState } from "preact/hooks";
import { weekday } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Refused, useAsked } from "../api/asked.tsx";
import { enter, newEntry } from "../api/enter.ts";
import { Choice } from "../people/choice.tsx";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { undo } from "../shell/undo.ts";
import { blockIn } from "../squad/block.ts";
import { nameOfDrill } from "../squad/drill_names.ts";
import { answersOf, drillsOf, kForm, type Seen, type SeenDrill } from "./visit.ts";
import { say } from "./words.ts";

const kDidIt = ["most", "half", "few"] as const;

interface DrillProps {
  drill: string;
  seen: SeenDrill;
  change: (seen: SeenDrill) => void;
}

function DrillRow({ drill, seen, change }: DrillProps) {
  const name = nameOfDrill(drill);
  return (
    <fieldset class="seen-drill">
      <legend>{name}</legend>
      <span class="row" role="radiogroup" aria-label={`${name}: ${say("visit.did_it")}`}>
        {kDidIt.map((word) => (
          <label key={word} class="tick">
            <input type="radio" name={`seen-${drill}`} checked={seen.did_it === word} onChange={() => change({ ...seen, did_it: word })} />
            {say(`visit.${word}`)}
          </label>
        ))}
      </span>
      <input aria-label={`${name}: ${say("visit.help")}`} placeholder={say("visit.help")} maxLength={150} value={seen.help} onInput={(event) => change({ ...seen, help: event.currentTarget.value })} autocomplete="off" />
    </fieldset>
  );
}

interface VisitFormProps {
  squad: string;
  name: string;
  evenings: { day: string; start: string }[]; // that are over or under way, the latest first
  again: () => Promise<unknown>;
  onClose: () => void;
}

export function VisitForm({ squad, name, evenings, again, onClose }: VisitFormProps) {
  const plan = useAsked("plan", { squad });
  const [evening, setEvening] = useState(0);
  const [drills, setDrills] = useState<Record<string, SeenDrill>>({});
  const [taught, setTaught] = useState("");
  const [next, setNext] = useState("");
  const [note, setNote] = useState("");
  const [empty, setEmpty] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const chosen = evenings[evening];
  const asked = chosen && plan.said ? drillsOf(blockIn(plan.said), chosen.day, chosen.start) : [];
  const submit = async (event: Event) => {
    event.preventDefault();
    if (!chosen || sends) return;
    const seen: Seen = { drills: Object.fromEntries(Object.entries(drills).filter(([drill]) => asked.includes(drill))), taught, next };
    const answers = answersOf(seen);
    setEmpty(answers.length === 0 && note.trim() === "");
    if (answers.length === 0 && note.trim() === "") return;
    const about = { squad, day: chosen.day, start: chosen.start };
    const visit = newEntry("visit", { ...about, form: kForm, ...(answers.length > 0 ? { answers } : {}), ...(note.trim() ? { note: note.trim() } : {}) });
    setSends(true);
    const why = await enter([visit]);
    setSends(false);
    setRefused(why);
    if (why) return;
    onClose();
    await again();
    undo.offer({
      words: say("visit.kept", { squad: name, day: weekday(chosen.day) }),
      undo: async () => {
        const not = await enter([newEntry("taken-back", { ...about, corrects: visit.id })]);
        announce(not ? not.words : say("visit.taken_back"));
        await again();
      },
    });
  };
  return (
    <Dialog title={say("visit.title", { squad: name })} wide onClose={onClose}>
      {chosen ? (
        <form class="visit-form" onSubmit={(event) => void submit(event)}>
          <p>{say("visit.what")}</p>
          <Choice label={say("visit.evening")} value={String(evening)} options={evenings.map(({ day, start }, index): [string, string] => [String(index), `${weekday(day)}, ${start}`])} onChange={(index) => setEvening(Number(index))} />
          {asked.length > 0 ? <p class="soft">{say("visit.did_it")}</p> : null}
          {asked.map((drill) => (
            <DrillRow key={drill} drill={drill} seen={drills[drill] ?? { help: "" }} change={(seen) => setDrills({ ...drills, [drill]: seen })} />
          ))}
          {!plan.asks && asked.length === 0 ? <p>{say("visit.no_plan")}</p> : null}
          <Field label={say("visit.taught")}>{(given) => <input {...given} maxLength={180} value={taught} onInput={(event) => setTaught(event.currentTarget.value)} autocomplete="off" />}</Field>
          <Field label={say("visit.next")}>{(given) => <input {...given} maxLength={180} value={next} onInput={(event) => setNext(event.currentTarget.value)} autocomplete="off" />}</Field>
          <Field label={say("visit.note")}>{(given) => <input {...given} maxLength={1000} value={note} onInput={(event) => setNote(event.currentTarget.value)} autocomplete="off" />}</Field>
          {empty ? <p class="fault">{say("visit.empty")}</p> : null}
          {refused ? <Refused refusal={refused} /> : null}
          <p class="soft">{say("visit.rules")}</p>
          <button type="submit" class="main" aria-disabled={sends}>
            {say("visit.enter")}
          </button>
        </form>
      ) : (
        <p>{say("visit.no_evening")}</p>
      )}
    </Dialog>
  );
}
