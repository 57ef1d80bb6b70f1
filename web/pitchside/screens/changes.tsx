// What is different and why, said at once and not each time somebody looks.
import { changesBetween, changesFromRoutine, type ChangeWords } from "../evening/change_words.ts";
import { nameOfDrill } from "../evening/drill.ts";
import { say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

function Change({ change }: { change: ChangeWords }) {
  return (
    <li>
      <strong>{say(`change.${change.difference}`, { name: change.name, to: change.to })}</strong>
      {change.why && `. ${change.why[0]?.toUpperCase()}${change.why.slice(1)}.`}
    </li>
  );
}

export function Changes({ pitch }: { pitch: Pitch }) {
  const { plan, before } = pitch.evening.value;
  if (!plan || plan.outcome === "infeasible") return null;
  const nameOf = (drill: string) => nameOfDrill(pitch.pack, drill);
  const since = before ? changesBetween(before, plan, nameOf) : [];
  const all = changesFromRoutine(plan, nameOf);
  const shown = since.length > 0 ? since : all;
  const title = since.length > 0 ? say("tonight.changed") : say("tonight.from_routine");
  return (
    <section class={shown.length > 0 ? "changes" : ""} aria-live="polite">
      {shown.length === 0 ? (
        <p class="soft">{say("tonight.as_usual")}</p>
      ) : (
        <>
          <strong>{title}</strong>
          <ul>
            {shown.map((change) => (
              <Change key={change.drill} change={change} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
