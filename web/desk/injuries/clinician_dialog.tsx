// What a named clinician said, written down by the lead: without a name and a profession it does not count.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Field } from "../shell/parts.tsx";
import { DayDialog } from "./day_dialog.tsx";
import { say } from "./words.ts";

interface ClinicianProps {
  title: string;
  what: string;
  act: (fields: { clinician: string; profession: string }) => Promise<Refusal | undefined>;
  onClose: () => void;
}

export function ClinicianDialog({ title, what, act, onClose }: ClinicianProps) {
  const [clinician, setClinician] = useState("");
  const [profession, setProfession] = useState("");
  return (
    <DayDialog title={title} button={say("clinician.enter")} act={() => act({ clinician: clinician.trim(), profession: profession.trim() })} onClose={onClose}>
      <p>{what}</p>
      <p>{say("clinician.what")}</p>
      <Field label={say("clinician.name")}>{(given) => <input {...given} required maxLength={200} value={clinician} onInput={(event) => setClinician(event.currentTarget.value)} autocomplete="off" />}</Field>
      <Field label={say("clinician.profession")}>{(given) => <input {...given} required maxLength={200} value={profession} onInput={(event) => setProfession(event.currentTarget.value)} autocomplete="off" />}</Field>
    </DayDialog>
  );
}
