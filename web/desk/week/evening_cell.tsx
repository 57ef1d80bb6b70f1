// One evening in the week's table: its state as a sign by pattern, and the same in words.
import { list, number, shortDay, weekday } from "../../shared/words/words.ts";
import { Written } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { becauseTold } from "../squad/because.ts";
import { nameOfDrill, names } from "../squad/drill_names.ts";
import { sessionInAddress } from "../squad/session_address.ts";
import type { Evening, State } from "./week_table.ts";
import type { WeekKeys } from "./week_keys.ts";
import { say } from "./words.ts";

const kBox = { x: 1, y: 1, width: 12, height: 12 };

function Inside({ state }: { state: State }) {
  switch (state) {
    case "held":
      return <rect {...kBox} fill="var(--ink)" stroke="var(--ink)" />;
    case "cut-short":
      return <path d="M1 1H7V13H1Z" fill="var(--ink)" />;
    case "not-run":
      return <path d="M1 1L13 13M13 1L1 13" stroke="var(--ink)" stroke-width={1.5} />;
    case "nobody":
      return <path d="M1 13L13 1" stroke="var(--ink)" stroke-width={1.5} />;
    case "falls-out":
      return <path d="M3 7H11" stroke="var(--ink)" stroke-width={2} />;
    case "begun":
      return <circle cx={7} cy={7} r={2.5} fill="var(--ink)" />;
    default:
      return null;
  }
}

export function StateSign({ state }: { state: State }) {
  return (
    <svg class="state-sign" width={14} height={14} aria-hidden="true">
      <rect {...kBox} fill="none" stroke={state === "to-come" || state === "falls-out" ? "var(--rule)" : "var(--ink)"} stroke-dasharray={state === "unheard" ? "2 2" : undefined} />
      <Inside state={state} />
    </svg>
  );
}

function minutesWords({ minutes, planned_minutes }: Evening): string {
  if (minutes !== undefined && planned_minutes !== undefined) return say("evening.minutes_of", { minutes, planned: planned_minutes });
  if (minutes !== undefined) return say("evening.minutes", { minutes });
  return planned_minutes === undefined ? "" : say("evening.planned", { planned: planned_minutes });
}

export function EveningCell({ evening, name, stop }: { evening: Evening; name: string; stop: ReturnType<WeekKeys["stop"]> }) {
  const { squad, day, start, state, there, did_it, needs_help, match_day, by_two, note, visited, falls_out } = evening;
  const why = falls_out && becauseTold(falls_out.because, falls_out.why, names);
  const parts = [minutesWords(evening), there === undefined ? "" : say("evening.there", { there: number(there) }), did_it ? say(`evening.${did_it}`) : ""];
  const told = parts.filter((part) => part !== "");
  return (
    <a class="evening" {...stop} href={hashOf("squad", squad, { session: sessionInAddress({ date: day, start }) })}>
      <span class="out-of-sight">
        {name}, {weekday(day)}:{" "}
      </span>
      <span class="narrow-day" aria-hidden="true">
        {shortDay(day)}
      </span>
      <span class="state">
        <StateSign state={state} /> <strong>{say(`state.${state}`)}</strong> {start}
      </span>
      <span>
        {told.map((part, index) => [
          index > 0 ? ", " : "",
          <span class="together" key={part}>
            {part}
          </span>,
        ])}
      </span>
      {match_day && <span>{say("evening.match")}</span>}
      {needs_help.length > 0 && <span class="help">{say("evening.help", { drills: list(needs_help.map(nameOfDrill)) })}</span>}
      {falls_out && (
        <bdi class="why" lang={why?.english ? "en" : undefined}>
          {why?.words}
        </bdi>
      )}
      {visited && <span>{say("evening.visited")}</span>}
      {note && (
        <span class="note">
          {say("evening.note")} <Written text={note} />
        </span>
      )}
      {by_two && <span>{say("evening.by_two")}</span>}
    </a>
  );
}
