// What changed in the block and why, rungs to confirm, what a minute is worth, what is short, and what falls out: in words.
import { language, list, weekday } from "../../shared/words/words.ts";
import { dayAfter, mondayOf, momentOf } from "../week/days.ts";
import { becauseTold } from "./because.ts";
import type { MinutePrice, Rolling, SquadBlock } from "./block.ts";
import { familyName, nameOfDrill, names, rungWords } from "./drill_names.ts";
import { Sentence } from "./evening_cost.tsx";
import { KeepButton } from "./keep_button.tsx";
import { owedIn } from "./owed.ts";
import { planCost } from "./plan_cost.ts";
import { inQuarters, percent, say, weekdayName } from "./words.ts";

type Session = Rolling["sessions"][number];

function sessionWords({ date, of, changes, why }: Session): string {
  if (of === 0) return say("changed.new_session", { day: weekday(date) });
  if (changes.length === 0 && why.length > 0) return say("changed.nothing_although", { day: weekday(date) });
  if (changes.length === 0) return say("changed.nothing", { day: weekday(date) });
  return say("changed.session", { day: weekday(date), changes: list(changes.map(({ drill, what }) => say(`changed.${what}`, { drill: nameOfDrill(drill) }))) });
}

function swapWords({ leaves, comes_in, why }: Rolling["swapped"][number]): string {
  if (leaves === undefined) return say("changed.comes", { comes_in: nameOfDrill(comes_in) });
  return say(`changed.swap.${why}`, { leaves: nameOfDrill(leaves), comes_in: nameOfDrill(comes_in) });
}

function rungProposal({ drill, rung, sessions, why }: Rolling["rungs"][number]): string {
  return say(why === "done by most" ? "changed.harder" : "changed.easier", { drill: nameOfDrill(drill), rung: rungWords(drill, rung), sessions });
}

// The server's sentences are English: what they say beyond the numbers is shown to whoever reads English.
function priceWords({ weekday: on, start, minutes, before, after, sentence }: MinutePrice): string {
  if (language.value === "en") return sentence;
  const more = before > 0 ? (100 * Math.abs(after - before)) / before : 0;
  return say(minutes < 0 ? "more.price_fewer" : "more.price", { weekday: weekdayName(on), start, minutes: Math.abs(minutes), percent: percent(more) });
}

// By family, the weeks that have a session and are short of it.
function shortOf({ weeks, sessions }: SquadBlock): string[] {
  const used = weeks.filter(({ week }) => sessions.some((session) => session.week === week));
  const keys = [...new Set(used.flatMap(({ families }) => families.map(({ family }) => family)))];
  return keys.flatMap((family) => {
    const short = used.flatMap(({ week, families }) => families.filter((each) => each.family === family && each.credits < each.target).map((each) => ({ week, ...each })));
    const [first] = short;
    if (!first) return [];
    const told = short.map(({ week, credits, target }) => say("more.short_week", { week, doses: inQuarters(credits / 4), target: inQuarters(target / 4) }));
    return [say("more.short_of", { family: familyName(family), weeks: list(told) })];
  });
}

function Reasons({ of: { why, because } }: { of: Session }) {
  return (
    <ul>
      {why.map((sentence, index) => (
        <li key={sentence}>
          <Sentence told={becauseTold(because?.[index], sentence, names)} />
        </li>
      ))}
    </ul>
  );
}

function Lines({ lines }: { lines: string[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

// Holds from the first week that begins after today.
function RungToConfirm({ squad, proposal, plan_block }: { squad: string; proposal: Rolling["rungs"][number]; plan_block: () => void }) {
  const { drill, rung } = proposal;
  const from = dayAfter(mondayOf(momentOf(new Date()).slice(0, 10)), 7);
  return (
    <li>
      {rungProposal(proposal)}
      <KeepButton
        squad={squad}
        wanted={{ rungs: { [drill]: { rung, from } } }}
        words={say("keep.rung")}
        label={say("keep.rung_about", { drill: nameOfDrill(drill), rung: rungWords(drill, rung) })}
        done={say("keep.rung_done", { drill: nameOfDrill(drill), day: weekday(from) })}
        plan={plan_block}
      />
    </li>
  );
}

// What is asked for on top, because a week before gave less than it promised.
function StillOwed({ block }: { block: SquadBlock }) {
  const owed = owedIn(block);
  if (owed.length === 0) return null;
  return (
    <>
      <h3>{say("changed.owed")}</h3>
      <Lines lines={owed.map(({ week, families }) => say("changed.owed_week", { week, families: list(families.map(({ family, target, usual }) => say("changed.owed_of", { family: familyName(family), target: inQuarters(target), usual: inQuarters(usual) }))) }))} />
    </>
  );
}

function CostOfPlan({ before, block }: { before: SquadBlock; block: SquadBlock }) {
  const cost = planCost(before, block, block.rolling?.today ?? "");
  const told = (family: string, short: number, was: number) => {
    if (short === 0) return say("changed.cost_met", { family: familyName(family) });
    return was === 0 ? say("changed.cost_short", { family: familyName(family), short: inQuarters(short) }) : say("changed.cost_of", { family: familyName(family), short: inQuarters(short), before: inQuarters(was) });
  };
  return (
    <>
      <h3>{say("changed.cost")}</h3>
      {cost.length === 0 ? <p>{say("changed.cost_nothing")}</p> : <Lines lines={cost.map(({ week, families }) => say("changed.cost_week", { week, families: families.map(({ family, short, before: was }) => told(family, short, was)).join("; ") }))} />}
    </>
  );
}

// before: the block that this one took the place of, where it was planned anew on this page.
export function WhatChanged({ block, before, plan_block }: { block: SquadBlock; before?: SquadBlock; plan_block: () => void }) {
  const { rolling } = block;
  return (
    <section aria-labelledby="what-changed">
      <h2 id="what-changed">{say("changed.title")}</h2>
      {rolling ? (
        <ul>
          {rolling.sessions.map((session) => (
            <li key={session.date + session.start}>
              {sessionWords(session)}
              {session.why.length > 0 && <Reasons of={session} />}
            </li>
          ))}
          {rolling.sessions.length <= 1 && <li>{say("changed.later")}</li>}
          {rolling.swapped.map((swap) => (
            <li key={swap.comes_in}>{swapWords(swap)}</li>
          ))}
        </ul>
      ) : (
        <p>{say("changed.fresh")}</p>
      )}
      <StillOwed block={block} />
      {before && <CostOfPlan before={before} block={block} />}
      {rolling && rolling.rungs.length > 0 && (
        <>
          <h3>{say("changed.rungs")}</h3>
          <p class="soft">{say("changed.rungs_what")}</p>
          <ul>
            {rolling.rungs.map((proposal) => (
              <RungToConfirm key={proposal.drill} squad={block.squad} proposal={proposal} plan_block={plan_block} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

export function MinutesAndShortfalls({ block }: { block: SquadBlock }) {
  const short = shortOf(block);
  return (
    <section aria-labelledby="minutes-and-shortfalls">
      <h2 id="minutes-and-shortfalls">{say("more.title")}</h2>
      <h3>{say("more.prices")}</h3>
      {block.minute_prices.length > 0 ? <Lines lines={block.minute_prices.map(priceWords)} /> : <p>{say("more.prices_none")}</p>}
      <h3>{say("more.short")}</h3>
      {short.length > 0 ? <Lines lines={short} /> : <p>{say("more.short_none")}</p>}
      {block.missed.length > 0 && (
        <>
          <h3>{say("more.missed")}</h3>
          <ul>
            {block.missed.map(({ date, start, why, because }) => (
              <li key={date + start}>
                {weekday(date)}, {start}: <Sentence told={becauseTold(because, why, names)} />
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
