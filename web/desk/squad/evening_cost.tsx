// What a try costs against the evening as it is planned, in words and with the door's own reasons.
import type { PlanAnswer } from "../../shared/engine/answers.ts";
import { changesFromRoutine, type ChangeWords } from "../../shared/evening/change_words.ts";
import { cureTold, reasonTold, type Told } from "../../shared/evening/reason_words.ts";
import { costOf, isNothing } from "./cost.ts";
import { doseWords, durationWords } from "./dose_words.ts";
import { familyName, nameOfDrill, names } from "./drill_names.ts";
import { say } from "./words.ts";

function changeWords({ drill, difference, to }: ChangeWords, plan: PlanAnswer): string {
  const item = plan.items.find((each) => each.drill === drill);
  return say(`change.${difference}`, { name: nameOfDrill(drill), to: item ? doseWords(item) : to });
}

// A reason that there are no words for is the door's own, in English.
export function Sentence({ told: { words, english } }: { told: Told }) {
  return <span lang={english ? "en" : undefined}>{`${words[0]?.toUpperCase() ?? ""}${words.slice(1)}.`}</span>;
}

// Changes of one reason stand together below it: the reason is said once.
function Changes({ changes, plan }: { changes: ChangeWords[]; plan: PlanAnswer }) {
  const reasons = [...new Set(changes.map(({ why }) => why))];
  return (
    <>
      {reasons.map((why) => {
        const own = changes.filter((change) => change.why === why);
        const lines = own.map((change) => <li key={change.drill}>{changeWords(change, plan)}</li>);
        if (why === "") return lines;
        return (
          <li key={why}>
            <span class="soft">
              <Sentence told={reasonTold(own[0]?.reason, why, names)} />
            </span>
            <ul>{lines}</ul>
          </li>
        );
      })}
    </>
  );
}

export function EveningCost({ usual, plan }: { usual: PlanAnswer; plan: PlanAnswer }) {
  const cost = costOf(usual, plan, nameOfDrill);
  const own = changesFromRoutine(usual, nameOfDrill); // the evening is planned to the second, the block in steps of five
  return (
    <section class="cost" aria-labelledby="what-it-costs" aria-live="polite">
      <h3 id="what-it-costs">{say("evening.cost")}</h3>
      {isNothing(cost) ? (
        <>
          <p>{say("evening.cost_nothing")}</p>
          {own.length > 0 && (
            <>
              <p>{say("evening.other_than_block")}</p>
              <ul>
                <Changes changes={own} plan={usual} />
              </ul>
            </>
          )}
        </>
      ) : (
        <ul>
          {cost.uncovered.map(({ family, cure, reason }) => (
            <li key={family}>
              <strong>{say("evening.uncovered", { family: familyName(family) })}</strong> <Sentence told={cureTold(reason, cure, names)} />
            </li>
          ))}
          {cost.covered.map((family) => (
            <li key={family}>{say("evening.covered", { family: familyName(family) })}</li>
          ))}
          {cost.moved.map((drill) => (
            <li key={drill}>{say("evening.moved", { drill: nameOfDrill(drill) })}</li>
          ))}
          <Changes changes={cost.changes} plan={plan} />
          {cost.seconds !== 0 && <li>{say(cost.seconds > 0 ? "evening.longer" : "evening.shorter", { time: durationWords(cost.seconds) })}</li>}
        </ul>
      )}
    </section>
  );
}
