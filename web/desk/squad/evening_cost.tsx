// What a try costs against the evening as it is planned, in words and with the door's own reasons.
import type { PlanAnswer } from "../../shared/engine/answers.ts";
import { changesFromRoutine, type ChangeWords } from "../../shared/evening/change_words.ts";
import { costOf, isNothing } from "./cost.ts";
import { doseWords, durationWords } from "./dose_words.ts";
import { familyName, nameOfDrill } from "./drill_names.ts";
import { say } from "./words.ts";

function Changes({ changes, plan }: { changes: ChangeWords[]; plan: PlanAnswer }) {
  return (
    <>
      {changes.map(({ drill, difference, to, why }) => {
        const item = plan.items.find((each) => each.drill === drill);
        return (
          <li key={drill}>
            {say(`change.${difference}`, { name: nameOfDrill(drill), to: item ? doseWords(item) : to })}
            {why !== "" && (
              <span class="soft" lang="en">
                {" "}
                ({why})
              </span>
            )}
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
          {cost.uncovered.map(({ family, cure }) => (
            <li key={family}>
              <strong>{say("evening.uncovered", { family: familyName(family) })}</strong> <span lang="en">{cure}</span>
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
