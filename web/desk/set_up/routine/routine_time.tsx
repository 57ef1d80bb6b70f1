// How long a routine takes: drawn to time, with the end of the slot as a thick line and the end's own width; what it takes in
// words; and what is done about it where the minutes are too few.
import type { Formation, PlanAnswer } from "../../../shared/engine/answers.ts";
import { FormationSign } from "../../../shared/evening/formation_sign.tsx";
import { changesFromRoutine } from "../../../shared/evening/change_words.ts";
import { reasonTold } from "../../../shared/evening/reason_words.ts";
import { spoken } from "../../drills/spoken.ts";
import { doseInWords } from "../../drills/spoken.ts";
import { durationWords } from "../../squad/dose_words.ts";
import { names } from "../../squad/drill_names.ts";
import type { DrillOf } from "./routine_document.ts";
import type { RoutineTrial } from "./routine_trial.ts";
import { many, say } from "./words.ts";

const kWide = 1000;
const kHigh = 62;
const kBar = 34;
const kTop = 4;

export function TimeStrip({ plan, minutes, drillOf }: { plan: PlanAnswer | undefined; minutes: number; drillOf: DrillOf }) {
  const late = plan?.time?.nine_in_ten_seconds ?? 0;
  const last = Math.max(minutes * 60, plan?.planned_seconds ?? 0, late) * 1.03;
  const x = (seconds: number) => (seconds / last) * kWide;
  const every = last > 1800 ? 10 : 5;
  const marks = Array.from({ length: Math.floor(last / 60 / every) + 1 }, (_, at) => at * every).filter((mark) => Math.abs(mark - minutes) > 1.5);
  return (
    <svg class="time-strip" viewBox={`0 0 ${kWide} ${kHigh}`} role="img" aria-label={say("strip", { minutes: Math.round((plan?.planned_seconds ?? 0) / 60) })}>
      {plan?.items.map((item) => (
        <g key={item.drill}>
          <title>{drillOf(item.drill) ? spoken(drillOf(item.drill)!).name : item.drill}</title>
          <rect x={x(item.starts_seconds)} y={kTop} width={Math.max(1, x(item.takes_seconds))} height={kBar} fill="var(--paper)" stroke="var(--ink)" />
          <FormationSign formation={item.formation as Formation} box={{ x: x(item.starts_seconds) + 3, y: kTop + 4, width: Math.max(2, x(item.takes_seconds) - 6), height: kBar - 8 }} />
        </g>
      ))}
      {plan ? <path d={`M${x(plan.planned_seconds)} ${kTop}V${kTop + kBar}L${x(Math.max(late, plan.planned_seconds))} ${kTop + kBar}Z`} fill="var(--rule)" /> : null}
      {marks.map((mark) => (
        <g key={mark}>
          <line x1={x(mark * 60)} x2={x(mark * 60)} y1={kTop + kBar} y2={kTop + kBar + 6} stroke="var(--rule)" />
          <text x={x(mark * 60)} y={kHigh - 4} text-anchor={mark === 0 ? "start" : "middle"}>
            {mark}
          </text>
        </g>
      ))}
      <line x1={x(minutes * 60)} x2={x(minutes * 60)} y1={0} y2={kTop + kBar + 8} stroke="var(--ink)" stroke-width={4} />
      <text class="slot-end" x={x(minutes * 60)} y={kHigh - 4} text-anchor={minutes * 60 > 0.94 * last ? "end" : "middle"}>
        {say("slot_end", { minutes })}
      </text>
    </svg>
  );
}

export function TimeInWords({ trial: { whole, first, slot }, minutes, drillOf }: { trial: RoutineTrial; minutes: number; drillOf: DrillOf }) {
  if (!whole) return <p class="waiting line-tall">{say("reading")}</p>;
  const changes = slot ? changesFromRoutine(slot, names.drill) : [];
  const spare = minutes * 60 - whole.planned_seconds;
  return (
    <>
      <p>
        <strong>{say("takes", { time: durationWords(whole.planned_seconds), late: durationWords(whole.time?.nine_in_ten_seconds ?? whole.planned_seconds), players: many("players", whole.turnout) })}</strong>
      </p>
      {first?.outcome === "optimal" ? <p>{say("takes_first", { time: durationWords(first.planned_seconds) })}</p> : null}
      {slot?.infeasible ? <p>{say("no_room", { minutes })}</p> : null}
      {slot && !slot.infeasible && changes.length === 0 ? (
        <p>
          {say("fits", { minutes })} {spare > 0 ? say("spare", { time: durationWords(spare) }) : ""}
        </p>
      ) : null}
      {changes.length > 0 ? (
        <>
          <p>{say("fits_not", { minutes })}</p>
          <ul>
            {changes.map((change) => {
              const drill = drillOf(change.drill);
              const item = slot?.items.find((each) => each.drill === change.drill);
              const why = reasonTold(change.reason, change.why, names);
              return (
                <li key={change.drill}>
                  {say(`change.${change.difference}`, { name: drill ? spoken(drill).name : change.name, to: drill && item ? doseInWords(drill, item) : change.to })}
                  {why.words === "" ? null : <span class="soft" lang={why.english ? "en" : undefined}>{` (${why.words})`}</span>}
                </li>
              );
            })}
          </ul>
        </>
      ) : null}
    </>
  );
}
