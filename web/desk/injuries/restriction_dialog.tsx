// What a player must leave out: nothing beside the squad, or some areas above some effort; until when, and when to look again.
import { useState } from "preact/hooks";
import { newEntry } from "../api/enter.ts";
import { Choice } from "../people/choice.tsx";
import { Field } from "../shell/parts.tsx";
import { DayDialog } from "./day_dialog.tsx";
import { enterWithUndo } from "./take_back.ts";
import en from "./words/en.json";
import { placeWords, say } from "./words.ts";

const kAllowed = ["none", "light", "moderate"] as const;

interface RestrictionProps {
  player: string;
  today: string;
  again: () => Promise<unknown>;
  onClose: () => void;
}

export function RestrictionDialog({ player, today, again, onClose }: RestrictionProps) {
  const [area, setArea] = useState("");
  const [allowed, setAllowed] = useState<string>("none");
  const [until, setUntil] = useState("");
  const [instruction, setInstruction] = useState("");
  const act = (review: string) => {
    const what = area === "" ? { sits_out: true } : { areas: [area], allowed };
    const rest = { ...(until ? { until } : {}), ...(instruction.trim() ? { instruction: instruction.trim() } : {}) };
    return enterWithUndo(newEntry("restriction", { player, ...what, review, ...rest }), say("told.restricted"), again);
  };
  return (
    <DayDialog title={say("held.restrict")} day_words={say("held.next_look")} day={today} least={today} button={say("restrict.enter")} act={act} onClose={onClose}>
      <Choice label={say("restrict.what")} value={area} options={[["", say("restrict.sits_out")], ...Object.keys(en.place).map((key): [string, string] => [key, say("restrict.spares", { place: placeWords(key) })])]} onChange={setArea} />
      {area === "" ? null : <Choice label={say("restrict.allowed")} value={allowed} options={kAllowed.map((one) => [one, say(`restrict.${one}`)])} onChange={setAllowed} />}
      <Field label={say("restrict.until")} hint={say("restrict.until_hint")}>
        {(given) => <input {...given} type="date" min={today} value={until} onInput={(event) => setUntil(event.currentTarget.value)} />}
      </Field>
      <Field label={say("restrict.instruction")} hint={say("restrict.instruction_hint")}>
        {(given) => <input {...given} maxLength={200} value={instruction} onInput={(event) => setInstruction(event.currentTarget.value)} autocomplete="off" />}
      </Field>
    </DayDialog>
  );
}
