// Squad: its block as a grid, against its targets and in words; or one of its evenings, opened and tried out.
import { useEffect, useState } from "preact/hooks";
import { moment, weekday } from "../../shared/words/words.ts";
import { Of, useAsked, Waiting } from "../api/asked.tsx";
import { shippedName } from "../set_up/routine/words.ts";
import { Empty, Head } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import type { SquadRow } from "../week/week_table.ts";
import { usePlanner, type Planner } from "./ask_for_plan.ts";
import { blockIn, type SquadBlock } from "./block.ts";
import { BlockTable } from "./block_table.tsx";
import { MinutesAndShortfalls, WhatChanged } from "./block_notes.tsx";
import { inWords, namesAreSettled, useDrillNames } from "./drill_names.ts";
import { CalendarLinkPart } from "./calendar_link.tsx";
import { eveningEngine } from "./evening_engine.ts";
import { EveningView } from "./evening_view.tsx";
import { PaperOfWeeks } from "./paper.tsx";
import { sessionOfAddress } from "./session_address.ts";
import { TargetsTables } from "./targets_tables.tsx";
import { many, percent, say } from "./words.ts";

function Neighbours({ squads, at }: { squads: SquadRow[]; at: string }) {
  const here = squads.findIndex(({ id }) => id === at);
  const link = (squad: SquadRow | undefined, key: "earlier" | "later") => squad && <a href={hashOf("squad", squad.id)}>{say(key, { name: squad.name })}</a>;
  return (
    <nav class="row neighbours not-on-paper" aria-label={say("squads")}>
      {link(squads[here - 1], "earlier")}
      <a href={hashOf("squad")}>{say("all")}</a>
      {link(squads[here + 1], "later")}
    </nav>
  );
}

function Choose({ squads }: { squads: SquadRow[] }) {
  if (squads.length === 0) {
    return (
      <Empty title={say("none.title")}>
        <p>{say("none.what")}</p>
      </Empty>
    );
  }
  return (
    <>
      <p>{say("choose_what")}</p>
      <ul class="squad-list">
        {squads.map(({ id, name }) => (
          <li key={id}>
            <a href={hashOf("squad", id)}>{name}</a>
          </li>
        ))}
      </ul>
    </>
  );
}

// The gap and what it means, in one sentence.
export function gapWords({ feasible, gap_percent, rolling }: SquadBlock): string {
  if (!feasible) return say("block.infeasible");
  if (gap_percent === 0) return say(rolling ? "block.proven_rest" : "block.proven");
  return say(rolling ? "block.gap_rest" : "block.gap", { percent: percent(gap_percent, 2) });
}

function AskButton({ planner }: { planner: Planner }) {
  return (
    <>
      <p class="row not-on-paper">
        <button type="button" disabled={planner.busy} onClick={planner.plan}>
          {say("block.ask")}
        </button>
        <button type="button" onClick={() => print()}>
          {say("print")}
        </button>
      </p>
      {planner.words !== "" && <p role="status">{planner.words}</p>}
    </>
  );
}

function OneSquad({ squad, session }: { squad: SquadRow; session: string | undefined }) {
  const plan = useAsked("plan", { squad: squad.id });
  const planner = usePlanner(squad.id, squad.name, () => void plan.again());
  const [before, setBefore] = useState<SquadBlock | undefined>(); // what the next plan takes the place of
  const at = sessionOfAddress(session);
  // What the door needs for an evening is asked for when one is opened, and not before: a line in the book of reads.
  const evenings = useAsked("evenings", { squad: squad.id }, at !== undefined);
  useEffect(() => {
    if (at) eveningEngine(); // it starts while the evening is asked for
  }, [at !== undefined]);
  const planFrom = (block: SquadBlock | undefined) => () => {
    setBefore(block);
    planner.plan();
  };
  return (
    <Of asked={plan}>
      {(said) => {
        const block = blockIn(said);
        if (!namesAreSettled.value) return <Waiting height="screen" />;
        if (at) return <EveningView block={block} squad={squad.id} asked={evenings} at={at} plan_block={planFrom(block)} />;
        const shown = { ...planner, plan: planFrom(block) };
        if (!block) {
          return (
            <>
              <Empty title={say("no_plan.title")}>
                <p>{say("no_plan.what")}</p>
                <AskButton planner={shown} />
              </Empty>
              <CalendarLinkPart squad={squad.id} name={squad.name} />
            </>
          );
        }
        const [first] = block.sessions;
        return (
          <>
            <section aria-labelledby="the-block">
              <h2 id="the-block">{say("block.title")}</h2>
              {first && <p>{say("block.from", { weeks: many("weeks", block.weeks.length), day: weekday(first.date), routine: block.routine === squad.id ? say("block.own_routine") : (shippedName(block.routine) ?? inWords(block.routine)) })}</p>}
              <p>
                {gapWords(block)} {said.made && <span class="soft">{say("block.made", { when: moment(said.made) })}</span>}
              </p>
              <AskButton planner={shown} />
              <PaperOfWeeks squad={squad.id} days={block.sessions.map(({ date }) => date)} />
            </section>
            <WhatChanged block={block} {...(before && before !== block ? { before } : {})} plan_block={planFrom(block)} />
            <BlockTable block={block} />
            <TargetsTables block={block} />
            <MinutesAndShortfalls block={block} />
            <CalendarLinkPart squad={squad.id} name={squad.name} />
          </>
        );
      }}
    </Of>
  );
}

export function Screen({ route }: ScreenProps<"squad">) {
  useDrillNames();
  const squads = useAsked("squads", {});
  const own = squads.said?.squads.find(({ id }) => id === route.squad);
  return (
    <div class="squad-screen">
      <Head title={route.squad === undefined ? say("choose") : (own?.name ?? route.squad)}>{own && squads.said ? <Neighbours squads={squads.said.squads} at={own.id} /> : route.squad === undefined ? null : <div class="row neighbours not-on-paper">{"\u00a0"}</div>}</Head>
      {route.squad === undefined ? <Of asked={squads}>{(said) => <Choose squads={said.squads} />}</Of> : <OneSquad key={route.squad} squad={own ?? { id: route.squad, name: route.squad, relation: "own" }} session={route.further["session"]} />}
    </div>
  );
}
