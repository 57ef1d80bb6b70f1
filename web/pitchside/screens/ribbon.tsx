// The session as a ribbon drawn to time, as on the card; the finish is drawn with its width.
import type { Formation, PlanAnswer } from "../../shared/engine/answers.ts";
import { timeAfter } from "../../shared/evening/time_after.ts";
import { say } from "../words/words.ts";
import { FormationSign } from "../../shared/evening/formation_sign.tsx";
import { useMeasured } from "./measured.ts";

const kBar = 44;
const kFormations: Formation[] = ["lane", "spread", "pairs"];

function Legend({ plan }: { plan: PlanAnswer }) {
  const there = kFormations.filter((formation) => plan.items.some((item) => item.formation === formation));
  return (
    <p class="row soft">
      {there.map((formation) => (
        <span class="row" key={formation}>
          <svg width={30} height={24} aria-hidden="true">
            <FormationSign formation={formation} box={{ x: 2, y: 2, width: 26, height: 20 }} />
          </svg>
          {say(`ribbon.${formation}`)}
        </span>
      ))}
    </p>
  );
}

interface RibbonProps {
  plan: PlanAnswer;
  start: string; // when its first second is
}

export function Ribbon({ plan, start }: RibbonProps) {
  const { ref, width, letter } = useMeasured<HTMLDivElement>();
  const nine = plan.time?.nine_in_ten_seconds ?? plan.planned_seconds;
  const last = Math.max(plan.slot_seconds, nine, plan.planned_seconds, 1);
  const x = (seconds: number) => 1 + (seconds * (width - 4)) / last;
  const end = timeAfter(start, Math.round(plan.slot_seconds / 60));
  const middle = kBar / 2 + 4;
  const bottom = kBar + 4;
  const minutes = Array.from({ length: Math.floor(last / 60) + 1 }, (_, minute) => minute);
  return (
    <div ref={ref}>
      {width > 0 && (
        <svg width={width} height={bottom + 12 + letter * 1.3} role="img" aria-label={say("ribbon.title", { start, end })}>
          {plan.items.map((item) => {
            const from = x(item.starts_seconds);
            const until = x(item.starts_seconds + item.takes_seconds);
            const moves = x(item.starts_seconds - item.change_seconds);
            return (
              <g key={item.drill}>
                {from - moves > 3 && (
                  <line x1={moves + 1} x2={from - 1} y1={middle} y2={middle} stroke="var(--soft)" stroke-width={2} stroke-dasharray="3 3" />
                )}
                <rect x={from} y={4} width={Math.max(1, until - from)} height={kBar} fill="none" stroke="var(--ink)" />
                <FormationSign formation={item.formation} box={{ x: from + 3, y: 8, width: Math.max(4, until - from - 6), height: kBar - 8 }} />
              </g>
            );
          })}
          <path d={`M${x(plan.planned_seconds)} 4L${x(Math.max(nine, plan.planned_seconds))} ${middle}L${x(plan.planned_seconds)} ${bottom}Z`} fill="var(--soft)" />
          <line x1={x(plan.planned_seconds)} x2={x(plan.planned_seconds)} y1={0} y2={bottom + 4} stroke="var(--ink)" stroke-width={2} />
          <line x1={x(plan.slot_seconds)} x2={x(plan.slot_seconds)} y1={0} y2={bottom + 4} stroke="var(--ink)" stroke-width={3} />
          {minutes.map((minute) => (
            <line key={minute} x1={x(minute * 60)} x2={x(minute * 60)} y1={bottom + 4} y2={bottom + (minute % 5 === 0 ? 11 : 8)} stroke="var(--ink)" />
          ))}
          <line x1={x(0)} x2={x(last)} y1={bottom + 4} y2={bottom + 4} stroke="var(--ink)" />
          <text x={0} y={bottom + 10 + letter} font-size={letter}>
            {start}
          </text>
          <text x={x(plan.slot_seconds)} y={bottom + 10 + letter} font-size={letter} text-anchor="end">
            {end}
          </text>
        </svg>
      )}
      <Legend plan={plan} />
    </div>
  );
}
