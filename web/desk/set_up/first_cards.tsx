// The first plans of all squads, and for each the cards of its first week to print, with the page of names for the coach's
// pocket.
import type { Said } from "../api/answer.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { weekday } from "../../shared/words/words.ts";
import { hashOf } from "../shell/route.ts";
import { becauseTold } from "../squad/because.ts";
import { names } from "../squad/drill_names.ts";
import { dayAfter, mondayOf } from "../week/days.ts";
import { contentOf } from "./club_draft.ts";
import { kClub } from "./club_step.tsx";
import { type Made, useAllPlans } from "./plan_all.ts";
import { say } from "./words.ts";

type Row = Said<"week-of-squads">["squads"][number];

const kToday = () => new Date().toLocaleDateString("sv"); // '2026-11-27'

const kFriday = 4; // days after Monday

// Of the first block, or of this week where that has begun; at the week's end of the next, since that is what is printed then
// (own judgement).
export function firstMonday(): string {
  const block = contentOf(kClub)?.block as { first_monday?: string } | undefined;
  const today = kToday();
  const monday = mondayOf(today);
  const next = today > dayAfter(monday, kFriday) ? dayAfter(monday, 7) : monday;
  const first = block?.first_monday ?? next;
  return first > next ? first : next;
}

// '2026-12-01-1815'
const eveningOf = ({ day, start }: { day: string; start: string }): string => `${day}-${start.replace(":", "").slice(0, 4)}`;

export function FirstCards() {
  const monday = firstMonday();
  const week = useAsked("week-of-squads", { monday });
  const plans = useAllPlans(() => void week.again());
  const some = week.said?.squads.some(({ has_plan }) => has_plan) ?? false;
  return (
    <section class="sheet" aria-labelledby="first-cards">
      <h2 id="first-cards">{say("then.cards")}</h2>
      <p>{say("then.cards_what")}</p>
      <p class="row">
        <button type="button" class={some ? "" : "main"} aria-disabled={plans.asks} onClick={plans.plan}>
          {say(some ? "then.plan_anew" : "then.plan")}
        </button>
        <span role="status">{plans.words}</span>
      </p>
      {plans.refused ? <Refused refusal={plans.refused} /> : null}
      <Of asked={week} height="table">
        {({ squads }) => (
          <div class="table" tabIndex={0} role="region" aria-label={say("then.cards")}>
            <table class="first-cards">
              <caption class="out-of-sight">{say("then.cards")}</caption>
              <thead>
                <tr>
                  <th scope="col">{say("then.squad")}</th>
                  <th scope="col">{say("then.plan_is")}</th>
                  <th scope="col">{say("then.week_of", { day: weekday(monday) })}</th>
                  <th scope="col">{say("then.names")}</th>
                </tr>
              </thead>
              <tbody>
                {squads.map((row) => (
                  <SquadLine key={row.squad} row={row} made={plans.made} monday={monday} />
                ))}
              </tbody>
            </table>
          </div>
        )}
      </Of>
    </section>
  );
}

function stateOf({ squad, has_plan }: Row, made: Made): string {
  const state = made[squad]?.state ?? (has_plan ? "done" : "none");
  return say(`then.state.${state}`);
}

// Why there is none, where the plan says so.
function NoEvening({ row: { has_plan, fell_out } }: { row: Row }) {
  const [first] = fell_out;
  if (!has_plan || !first) return <span class="soft">{has_plan ? say("then.no_evening") : "—"}</span>;
  const why = becauseTold(first.because, first.why, names);
  return (
    <span>
      {say("then.falls_out")} <span lang={why.english ? "en" : undefined}>{why.words}</span>
    </span>
  );
}

function SquadLine({ row, made, monday }: { row: Row; made: Made; monday: string }) {
  const { squad, name, planned } = row;
  const first = planned.find(({ day }) => day >= kToday()) ?? planned[0]; // the evening that comes next
  const why = made[squad]?.why;
  return (
    <tr>
      <th scope="row">
        <a href={hashOf("squad", squad)}>
          <bdi>{name}</bdi>
        </a>
      </th>
      <td>
        {stateOf(row, made)}
        {why ? <span class="fault" lang="en">{` ${why}`}</span> : null}
      </td>
      <td>
        {first ? (
          <a href={`/api/squads/${encodeURIComponent(squad)}/cards/${monday}`} target="_blank" rel="noopener" aria-label={say("then.print_of", { squad: name })}>
            {say("then.print")}
          </a>
        ) : (
          <NoEvening row={row} />
        )}
      </td>
      <td>
        {first ? (
          <a href={`/api/squads/${encodeURIComponent(squad)}/slip/${eveningOf(first)}`} target="_blank" rel="noopener" aria-label={say("then.slip_of", { squad: name, day: weekday(first.day) })}>
            {say("then.slip", { day: weekday(first.day) })}
          </a>
        ) : (
          <span class="soft">—</span>
        )}
      </td>
    </tr>
  );
}
