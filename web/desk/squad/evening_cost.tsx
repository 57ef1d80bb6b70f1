// What a try costs against the evening as it is planned, in words and with the door's own reasons.
import type { PlanAnswer } from "../../shared/engine/answers.ts";
import { costOf, isNothing } from "./cost.ts";
import { doseWords, durationWords } from "./dose_words.ts";
import { familyName, nameOfDrill } from "./drill_names.ts";
import { say } from "./words.ts";

export function EveningCost({ usual, plan }: { usual: PlanAnswer; plan: PlanAnswer }) {
  const cost = costOf(usual, plan, nameOfDrill);
  const doseOf = (drill: string, otherwise: string) => {
    const item = plan.items.find((each) => each.drill === drill);
    return item ? doseWords(item) : otherwise;
  };
  return (
    <section class="cost" aria-labelledby="what-it-costs" aria-live="polite">
      <h3 id="what-it-costs">{say("evening.cost")}</h3>
      {isNothing(cost) ? (
        <p>{say("evening.cost_nothing")}</p>
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
          {cost.changes.map(({ drill, difference, to, why }) => (
            <li key={drill}>
              {say(`change.${difference}`, { name: nameOfDrill(drill), to: doseOf(drill, to) })}
              {why !== "" && (
                <span class="soft" lang="en">
                  {" "}
                  ({why})
                </span>
              )}
            </li>
          ))}
          {cost.seconds !== 0 && <li>{say(cost.seconds > 0 ? "evening.longer" : "evening.shorter", { time: durationWords(cost.seconds) })}</li>}
        </ul>
      )}
    </section>
  );
}
