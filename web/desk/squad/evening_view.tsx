// One evening of the block, opened: tried out where it can be, else what the block has.
import { useEffect, useRef } from "preact/hooks";
import { weekday } from "../../shared/words/words.ts";
import { hashOf } from "../shell/route.ts";
import type { BlockSession, SquadBlock } from "./block.ts";
import { doseWords } from "./dose_words.ts";
import { nameOfDrill, rungWords } from "./drill_names.ts";
import { EveningTry } from "./evening_try.tsx";
import type { Had } from "./squad_evenings.ts";
import { say } from "./words.ts";

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
  at: { date: string; start: string };
  had: Had;
}

export function EveningView({ block, squad, at, had }: EveningViewProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [at.date, at.start]);
  const session = block?.sessions.find(({ date, start }) => date === at.date && start === at.start);
  const pocket = typeof had === "object" ? had.evenings.evenings.find(({ day, start }) => day === at.date && start === at.start) : undefined;
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
      {had === "waiting" ? (
        <p class="waiting screen-tall" role="status">
          {say("evening.planning")}
        </p>
      ) : pocket && typeof had === "object" ? (
        <EveningTry key={`${at.date} ${at.start}`} evening={pocket} catalogue={had.evenings.catalogue} />
      ) : session ? (
        <>
          <p>{say(session.happened ? "evening.over" : had === "not-had" ? "evening.cannot" : "evening.not_yet")}</p>
          <AsPlanned session={session} />
        </>
      ) : (
        <p>{say("evening.not_there")}</p>
      )}
    </section>
  );
}
