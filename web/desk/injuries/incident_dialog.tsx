// The report of an incident and the letter to a clinician: what is known is typed once, and either is saved as a page to
// print. Nothing of it is kept here or in the books: it goes from this form onto paper.
import { useState } from "preact/hooks";
import { wholeDay } from "../../shared/words/words.ts";
import { faultWords, type Refusal } from "../api/answer.ts";
import { askForFile } from "../api/ask_file.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { bodyOf, emptyIncident, faultsOf, type Incident, kMostLetters, kMostOfWhatHappened, type Told } from "./incident.ts";
import type { Injury } from "./injury.ts";
import { say } from "./words.ts";

interface IncidentDialogProps {
  injury: Injury;
  today: string;
  onClose: () => void;
}

export function IncidentDialog({ injury, today, onClose }: IncidentDialogProps) {
  const [incident, setIncident] = useState<Incident>(emptyIncident(today));
  const [known_before, setKnownBefore] = useState(true);
  const [told_of, setToldOf] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const faults = told_of ? faultsOf(incident, injury.day, today) : {};
  const change = (part: Partial<Incident>) => setIncident({ ...incident, ...part });
  const saveIt = async (what: "incident-report" | "referral-letter") => {
    setToldOf(true);
    if (sends || Object.keys(faultsOf(incident, injury.day, today)).length > 0) return;
    setSends(true);
    const why = await askForFile(`${what}.pdf`, what, { injury: injury.injury }, { ...bodyOf(incident), known_before });
    setSends(false);
    setRefused(why);
    if (!why) announce(say("incident.saved"));
  };
  const fault = (field: keyof Incident): { fault?: string } => (faults[field] ? { fault: say(`incident.${faults[field]}`) } : {});
  const text = (field: "place" | "reported_by") => (
    <Field label={say(`incident.${field}`)}>
      {(given) => <input {...given} maxLength={kMostLetters} value={incident[field]} onInput={(event) => change({ [field]: event.currentTarget.value })} autocomplete="off" />}
    </Field>
  );
  const lines = (field: "signs" | "done") => (
    <Field label={say(`incident.${field}`)} hint={say(`incident.${field}_hint`)} {...fault(field)}>
      {(given) => <textarea {...given} rows={3} value={incident[field]} onInput={(event) => change({ [field]: event.currentTarget.value })} />}
    </Field>
  );
  return (
    <Dialog title={say("incident.title")} wide onClose={onClose}>
      <form class="incident" noValidate onSubmit={(event) => event.preventDefault()}>
        <p>{say("incident.about")}</p>
        <p>{say("incident.day", { day: wholeDay(injury.day) })}</p>
        <div class="two">
          <Field label={say("incident.time")}>{(given) => <input {...given} type="time" value={incident.time} onInput={(event) => change({ time: event.currentTarget.value })} />}</Field>
          {text("place")}
        </div>
        <Field label={say("incident.what_happened")} hint={say("incident.what_happened_hint")}>
          {(given) => <textarea {...given} rows={4} maxLength={kMostOfWhatHappened} value={incident.what_happened} onInput={(event) => change({ what_happened: event.currentTarget.value })} />}
        </Field>
        {lines("signs")}
        {lines("done")}
        <ToldFields told={incident.told} change={(told) => change({ told })} />
        <div class="two">
          {text("reported_by")}
          <Field label={say("incident.reported_on")} {...fault("reported_on")}>
            {(given) => <input {...given} type="date" min={injury.day} max={today} value={incident.reported_on} onInput={(event) => change({ reported_on: event.currentTarget.value })} />}
          </Field>
        </div>
        <label class="tick">
          <input type="checkbox" checked={known_before} onChange={(event) => setKnownBefore(event.currentTarget.checked)} />
          {say("incident.known_before")}
        </label>
        <p class="soft">{say("incident.rules")}</p>
        {refused ? <Refused refusal={refused} /> : null}
        {refused?.faults.map((one) => <p key={one.field}>{faultWords(one)}</p>)}
        <p class="row">
          <button type="button" class="main" aria-disabled={sends} onClick={() => void saveIt("incident-report")}>
            {say("incident.save_report")}
          </button>
          <button type="button" aria-disabled={sends} onClick={() => void saveIt("referral-letter")}>
            {say("incident.save_letter")}
          </button>
        </p>
      </form>
    </Dialog>
  );
}

// Who was told, by whom and when: one more row as soon as the last is filled.
function ToldFields({ told, change }: { told: Told[]; change: (told: Told[]) => void }) {
  const set = (at: number, part: Partial<Told>) => {
    const next = told.map((one, index) => (index === at ? { ...one, ...part } : one));
    const last = next.at(-1);
    change(last && last.who.trim() !== "" && next.length < 6 ? [...next, { who: "", by: "", at: "" }] : next);
  };
  return (
    <fieldset class="told-people">
      <legend>{say("incident.told")}</legend>
      {told.map((one, at) => (
        <div key={at} class="row">
          <input aria-label={say("incident.told_who", { at: at + 1 })} placeholder={say("incident.who")} maxLength={kMostLetters} value={one.who} onInput={(event) => set(at, { who: event.currentTarget.value })} autocomplete="off" />
          <input aria-label={say("incident.told_by", { at: at + 1 })} placeholder={say("incident.by")} maxLength={kMostLetters} value={one.by} onInput={(event) => set(at, { by: event.currentTarget.value })} autocomplete="off" />
          <input type="time" aria-label={say("incident.told_at", { at: at + 1 })} value={one.at} onInput={(event) => set(at, { at: event.currentTarget.value })} />
        </div>
      ))}
    </fieldset>
  );
}
