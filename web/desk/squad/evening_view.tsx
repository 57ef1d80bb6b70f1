// One evening of the block, opened: tried out where it can be, else what the block has.
import { useEffect, useRef } from "preact/hooks";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { weekday } from "../../shared/words/words.ts";
import type { Asked } from "../api/asked.tsx";
import { hashOf } from "../shell/route.ts";
import { momentOf } from "../week/days.ts";
import type { BlockSession, SquadBlock } from "./block.ts";
import { doseWords } from "./dose_words.ts";
import { nameOfDrill, rungWords } from "./drill_names.ts";
import { EveningTry } from "./evening_try.tsx";
import { PaperOfEvening } from "./paper.tsx";
import { paceOf, type PocketEvening } from "./tried.ts";
import { WhatCameOfIt } from "./what_came_of_it.tsx";
import { percent, say } from "./words.ts";

function AsPlanned({ session }: { session: BlockSession }) {
  return (
    <ul class="cards as-planned">
      {session.drills.map((planned) => (
        <li key={planned.drill}>
          <strong>{nameOfDrill(planned.drill)}</strong>, {doseWords(planned)} <span class="soft">{rungWords(planned.drill, planned.rung)}</span>
          {planned.done === false && <span>, {say("grid.not_done")}</span>}
        </li>
      ))}
    </ul>
  );
}

interface EveningViewProps {
  block: SquadBlock | undefined;
  squad: string;
  asked: Asked<"evenings">;
  at: { date: string; start: string };
  plan_block: () => void;
}

function paceWords(pace: number): string {
  const more = Math.round(100 * Math.abs(pace - 1));
  if (more < 1) return say("more.pace_usual");
  return say(pace > 1 ? "more.pace_slower" : "more.pace_faster", { percent: percent(more) });
}

export function EveningView({ block, squad, asked, at, plan_block }: EveningViewProps) {
  const catalogue = asked.said?.catalogue as DoorTable | undefined;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [at.date, at.start]);
  const session = block?.sessions.find(({ date, start }) => date === at.date && start === at.start);
  const pocket = (asked.said?.evenings as PocketEvening[] | undefined)?.find(({ day, start }) => day === at.date && start === at.start);
  const pace = pocket && paceOf(pocket);
  const kept = () => {
    plan_block();
    void asked.again();
  };
  const facts = pocket && { minutes: pocket.minutes, strip: pocket.strip, turnout: session?.turnout ?? pocket.documents.roster.length };
  return (
    <section class="one-evening" aria-labelledby="one-evening">
      <p class="not-on-paper">
        <a href={hashOf("squad", squad)}>{say("evening.back")}</a>
      </p>
      <h2 id="one-evening" tabIndex={-1} ref={heading}>
        {say("evening.title", { day: weekday(at.date), start: at.start })}
      </h2>
      {(facts ?? session) && (
        <p>
          {say("evening.facts", facts ?? { minutes: session!.minutes, strip: session!.strip, turnout: session!.turnout })}
          {(pocket?.match_day ?? session?.match_day) && ` ${say("evening.match_day")}`}
        </p>
      )}
      {(pocket ?? (session && !session.happened)) && <PaperOfEvening squad={squad} at={at} />}
      {pace !== undefined && <p class="soft">{paceWords(pace)}</p>}
      {`${at.date} ${at.start}` <= momentOf(new Date()) && session && <WhatCameOfIt squad={squad} at={at} plan_block={kept} />}
      {!asked.said && !asked.refused ? (
        <p class="waiting screen-tall" role="status">
          {say("evening.planning")}
        </p>
      ) : pocket && catalogue ? (
        <EveningTry key={`${at.date} ${at.start}`} squad={squad} evening={pocket} catalogue={catalogue} kept={kept} />
      ) : session ? (
        <>
          <p>{say(session.happened ? "evening.over" : asked.refused ? "evening.cannot" : "evening.not_yet")}</p>
          <AsPlanned session={session} />
        </>
      ) : (
        <p>{say("evening.not_there")}</p>
      )}
    </section>
  );
}
