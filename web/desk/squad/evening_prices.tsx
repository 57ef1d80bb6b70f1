// What a longer slot would buy on this evening, in the door's own numbers.
import type { EveningPrice, PlanAnswer } from "../../shared/engine/answers.ts";
import { list } from "../../shared/words/words.ts";
import { doseWords } from "./dose_words.ts";
import { familyName, nameOfDrill } from "./drill_names.ts";
import { say } from "./words.ts";

function gainWords({ covers, drill, sets, amount }: NonNullable<EveningPrice["gains"]>[number]): string {
  if (covers !== undefined) return say("price.covers", { family: familyName(covers) });
  if (drill !== undefined && sets !== undefined && amount !== undefined) return say("price.dose", { drill: nameOfDrill(drill), dose: doseWords({ drill, sets, amount }) });
  return "";
}

function Price({ price: { minutes, buys, gains = [] } }: { price: EveningPrice }) {
  const words = gains.map(gainWords);
  if (words.length === 0 || words.includes("")) return <span lang="en">{buys}</span>;
  return <>{say("price.more", { minutes, gains: list(words) })}</>;
}

// A longer slot that buys what a shorter one bought already is not told again.
function told(prices: EveningPrice[]): EveningPrice[] {
  return prices.filter(({ gains }, index) => JSON.stringify(gains) !== JSON.stringify(prices[index - 1]?.gains));
}

export function EveningPrices({ plan: { minute_prices = [] } }: { plan: PlanAnswer }) {
  const prices = told(minute_prices);
  return (
    <section aria-labelledby="evening-prices">
      <h3 id="evening-prices">{say("price.title")}</h3>
      {prices.length === 0 ? (
        <p>{say("price.none")}</p>
      ) : (
        <ul>
          {prices.map((price) => (
            <li key={price.minutes}>
              <Price price={price} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
