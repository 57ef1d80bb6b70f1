// One drill more: those that every player of the routine's ages may do, by the parts of a session.
import { useState } from "preact/hooks";
import { type DrillDocument, kPhases } from "../../drills/drill_document.ts";
import { agesInWords, spoken } from "../../drills/spoken.ts";
import { wordFor } from "../../drills/words.ts";
import { familyName } from "../../squad/drill_names.ts";
import { Field } from "../../shell/parts.tsx";
import { drillsToAdd, type Routine } from "./routine_document.ts";
import { say } from "./words.ts";

export function AddDrill({ routine, drills, add }: { routine: Routine; drills: DrillDocument[]; add: (drill: DrillDocument) => void }) {
  const [chosen, setChosen] = useState("");
  const open = drillsToAdd(routine, drills);
  const submit = (event: Event) => {
    event.preventDefault();
    const drill = open.find(({ id }) => id === chosen);
    if (!drill) return;
    add(drill);
    setChosen("");
  };
  return (
    <form class="add-drill" onSubmit={submit}>
      <Field label={say("add")} hint={say("add_hint", { ages: agesInWords(routine.ages) })}>
        {(given) => (
          <select {...given} value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
            <option value="">{say("add_choose")}</option>
            {kPhases.map((phase) => (
              <optgroup key={phase} label={wordFor("phase_long", phase)}>
                {open
                  .filter((drill) => drill.phase === phase)
                  .map((drill) => (
                    <option key={drill.id} value={drill.id}>
                      {`${spoken(drill).name} (${familyName(drill.family)})`}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        )}
      </Field>
      <button type="submit" aria-disabled={chosen === ""}>
        {say("add_do")}
      </button>
    </form>
  );
}
