// The two days of a report, and links to the periods that are usually wanted. The address holds what is chosen.
import { useEffect, useState } from "preact/hooks";
import { Field } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { faultsOf, type Period } from "./period.ts";
import { say } from "./words.ts";

export type Usual = { word: "so_far" | "four_weeks"; period: Period }[];

const hashOfPeriod = ({ from, to }: Period): string => hashOf("evidence", undefined, { from, to });

// again: the same days once more, from what is in the books now.
export function PeriodForm({ shown, usual, again }: { shown: Partial<Period>; usual: Usual; again: () => void }) {
  const [typed, setTyped] = useState<Partial<Period>>(shown);
  const [told, setTold] = useState(shown.from !== undefined || shown.to !== undefined);
  useEffect(() => {
    setTyped(shown);
    setTold(shown.from !== undefined || shown.to !== undefined);
  }, [shown.from, shown.to]);
  const faults = faultsOf(typed.from, typed.to);
  const submit = (event: Event) => {
    event.preventDefault();
    setTold(true);
    const { from, to } = typed;
    if (faults.from || faults.to || !from || !to) return;
    if (from === shown.from && to === shown.to) again();
    else go(hashOfPeriod({ from, to }));
  };
  return (
    <form class="period not-on-paper" noValidate onSubmit={submit}>
      <div class="row">
        {(["from", "to"] as const).map((end) => (
          <Field key={end} label={say(end)} {...(told && faults[end] ? { fault: say(`fault.${faults[end]}`) } : {})}>
            {(given) => <input {...given} type="date" value={typed[end] ?? ""} onInput={(event) => setTyped({ ...typed, [end]: event.currentTarget.value })} />}
          </Field>
        ))}
        <button type="submit" class="main">
          {say("show")}
        </button>
      </div>
      <ul class="usual" aria-label={say("usual")}>
        {usual.map(({ word, period }) => (
          <li key={word}>
            <a href={hashOfPeriod(period)} aria-current={period.from === shown.from && period.to === shown.to ? "true" : undefined}>
              {say(word)}
            </a>
          </li>
        ))}
      </ul>
    </form>
  );
}
