// What is different and why, said at once and not each time somebody looks.
import { changesBetween, changesFromRoutine, type ChangeWords } from "../../shared/evening/change_words.ts";
import { language, say } from "../words/words.ts";
import { cureTold, reasonTold, type Told } from "../../shared/evening/reason_words.ts";
import { doseWords, familyWords, nameOf, namesOf, rungWords } from "./drill_words.ts";
import type { Pitch } from "./pitch.ts";

// A reason that this app has no words for is the door's own, in English.
export function Sentence({ told: { words, english } }: { told: Told }) {
  return <span lang={english ? "en" : undefined}>{`${words[0]?.toUpperCase() ?? ""}${words.slice(1)}.`}</span>;
}

function Change({ pitch, change }: { pitch: Pitch; change: ChangeWords }) {
  const item = pitch.evening.value.plan?.items.find(({ drill }) => drill === change.drill);
  const of_rung = change.difference === "easier" || change.difference === "harder";
  const to = item && language.value !== "en" ? (of_rung ? rungWords(item) : doseWords(pitch.pack, item)) : change.to;
  return (
    <li>
      <strong>{say(`change.${change.difference}`, { name: nameOf(pitch.pack, change.drill), to })}</strong>
      {change.why && <>. <Sentence told={reasonTold(change.reason, change.why, namesOf(pitch.pack))} /></>}
    </li>
  );
}

function NotCovered({ pitch }: { pitch: Pitch }) {
  const open = pitch.evening.value.plan?.uncovered ?? [];
  if (open.length === 0) return null;
  return (
    <section class="changes">
      <strong>{say("tonight.not_covered")}</strong>
      <ul>
        {open.map(({ family, cure, reason }) => (
          <li key={family}>
            <strong>{familyWords(family)}</strong>. <Sentence told={cureTold(reason, cure, namesOf(pitch.pack))} />
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Changes({ pitch }: { pitch: Pitch }) {
  const { plan, before } = pitch.evening.value;
  if (!plan || plan.outcome === "infeasible") return null;
  const called = (drill: string) => nameOf(pitch.pack, drill);
  const since = before ? changesBetween(before, plan, called) : [];
  const all = changesFromRoutine(plan, called);
  const shown = since.length > 0 ? since : all;
  const title = since.length > 0 ? say("tonight.changed") : say("tonight.from_routine");
  return (
    <>
      <section class={shown.length > 0 ? "changes" : ""} aria-live="polite">
        {shown.length === 0 ? (
          <p class="soft">{say("tonight.as_usual")}</p>
        ) : (
          <>
            <strong>{title}</strong>
            <ul>
              {shown.map((change) => (
                <Change key={`${change.drill} ${change.difference}`} pitch={pitch} change={change} />
              ))}
            </ul>
          </>
        )}
      </section>
      <NotCovered pitch={pitch} />
    </>
  );
}
