// The session drawn to time, downwards: each drill as tall as it is long, the walk between two as a dashed line, the end
// with its width. A drill is moved by dragging it, or by its arrows.
import { useRef, useState } from "preact/hooks";
import type { PlanAnswer, PlanItem } from "../../shared/engine/answers.ts";
import { FormationSign } from "../../shared/evening/formation_sign.tsx";
import { timeAfter } from "../../shared/evening/time_after.ts";
import { doseWords } from "./dose_words.ts";
import { nameOfDrill, rungWords } from "./drill_names.ts";
import { mayStandAt } from "./places_in_order.ts";
import { say } from "./words.ts";

const kLeastHeight = 28; // of the shortest drill: a line of words and its buttons
const kTwoLines = 44; // from this height on there is room for the rung as well
const kUsualScale = 0.55; // pixels a second
const kSign = 56;
const kRuler = 44;

export interface RibbonDoings {
  move(drill: string, at: string): void;
  step(drill: string, by: 1 | -1): void;
  pin(drill: string, on: boolean): void;
  ban(drill: string): void;
  mayStep(drill: string, by: 1 | -1): boolean;
  isPinned(drill: string): boolean;
}

function scaleOf(items: PlanItem[]): number {
  const shortest = Math.min(...items.map(({ takes_seconds }) => takes_seconds), Infinity);
  return Math.max(kUsualScale, Number.isFinite(shortest) ? kLeastHeight / Math.max(10, shortest) : 0);
}

interface RowProps {
  item: PlanItem;
  y: (seconds: number) => number;
  doings: RibbonDoings;
  state: string; // of a drag: dragged, may-stand, may-not-stand or nothing
}

function Row({ item, y, doings, state }: RowProps) {
  const { drill } = item;
  const name = nameOfDrill(drill);
  const height = y(item.takes_seconds);
  return (
    <li data-drill={drill} class={`ribbon-row ${state}`} style={{ insetBlockStart: `${y(item.starts_seconds)}px`, blockSize: `${height}px` }}>
      <svg class="ribbon-sign" width={kSign} height={height} aria-hidden="true">
        <rect x={0.5} y={0.5} width={kSign - 1} height={Math.max(1, height - 1)} fill="var(--paper)" stroke="var(--ink)" />
        <FormationSign formation={item.formation} box={{ x: 6, y: 4, width: kSign - 12, height: Math.max(6, height - 8) }} />
      </svg>
      <span class="ribbon-words">
        <strong>{name}</strong> <span>{doseWords(item)}</span> <span class={height < kTwoLines ? "out-of-sight" : "soft"}>{rungWords(drill, item.rung)}</span>
      </span>
      <span class="ribbon-doings not-on-paper">
        <button type="button" aria-label={say("evening.earlier", { drill: name })} disabled={!doings.mayStep(drill, -1)} onClick={() => doings.step(drill, -1)}>
          ↑
        </button>
        <button type="button" aria-label={say("evening.later", { drill: name })} disabled={!doings.mayStep(drill, 1)} onClick={() => doings.step(drill, 1)}>
          ↓
        </button>
        <button type="button" aria-label={say("evening.pin_of", { drill: name })} aria-pressed={doings.isPinned(drill)} onClick={() => doings.pin(drill, !doings.isPinned(drill))}>
          {say("evening.pin")}
        </button>
        <button type="button" aria-label={say("evening.ban_of", { drill: name })} onClick={() => doings.ban(drill)}>
          {say("evening.ban")}
        </button>
      </span>
    </li>
  );
}

// Minutes at the left, the walks as dashes, and the end: planned as a thin line, nine in ten as a wedge, the slot thick.
function Ruler({ plan, start, y }: { plan: PlanAnswer; start: string; y: (seconds: number) => number }) {
  const nine = Math.max(plan.planned_seconds, plan.time?.nine_in_ten_seconds ?? 0);
  const last = Math.max(plan.slot_seconds, nine);
  const minutes = Array.from({ length: Math.floor(last / 60) + 1 }, (_, minute) => minute);
  const x = kRuler + kSign / 2;
  return (
    <svg class="ribbon-ruler" width={kRuler + kSign} height={y(last) + 20} aria-hidden="true">
      {minutes.map((minute) => (
        <g key={minute}>
          <line x1={minute % 5 === 0 ? kRuler - 10 : kRuler - 5} x2={kRuler - 1} y1={y(60 * minute) + 0.5} y2={y(60 * minute) + 0.5} stroke="var(--rule)" />
          {minute % 5 === 0 && minute * 60 < plan.slot_seconds - 60 && (
            <text x={0} y={y(60 * minute) + (minute === 0 ? 11 : 4)} font-size={12}>
              {timeAfter(start, minute)}
            </text>
          )}
        </g>
      ))}
      {plan.items.map(({ drill, starts_seconds, change_seconds }) => (
        <line key={drill} x1={x} x2={x} y1={y(starts_seconds - change_seconds) + 1} y2={y(starts_seconds) - 1} stroke="var(--soft)" stroke-width={2} stroke-dasharray="3 3" />
      ))}
      <path d={`M${kRuler} ${y(plan.planned_seconds)}H${kRuler + kSign}L${x} ${y(nine)}Z`} fill="var(--rule)" />
      <line x1={kRuler} x2={kRuler + kSign} y1={y(plan.slot_seconds)} y2={y(plan.slot_seconds)} stroke="var(--ink)" stroke-width={3} />
      <text x={0} y={y(plan.slot_seconds) + 4} font-size={12} font-weight={700}>
        {timeAfter(start, Math.round(plan.slot_seconds / 60))}
      </text>
    </svg>
  );
}

export function EveningRibbon({ plan, start, doings }: { plan: PlanAnswer; start: string; doings: RibbonDoings }) {
  const list = useRef<HTMLOListElement>(null);
  const [dragged, setDragged] = useState<{ drill: string; over?: string } | undefined>();
  const scale = scaleOf(plan.items);
  const y = (seconds: number) => seconds * scale;
  const last = Math.max(plan.slot_seconds, plan.planned_seconds, plan.time?.nine_in_ten_seconds ?? 0);

  const drillAt = (height: number): string | undefined => {
    const top = list.current?.getBoundingClientRect().top ?? 0;
    const seconds = (height - top) / scale;
    return plan.items.find((item) => seconds >= item.starts_seconds - item.change_seconds && seconds < item.starts_seconds + item.takes_seconds)?.drill;
  };
  const begin = (event: PointerEvent) => {
    const target = event.target as HTMLElement;
    const row = target.closest<HTMLElement>(".ribbon-row");
    const drill = row?.dataset["drill"];
    if (!drill || target.closest("button") || event.button !== 0 || event.pointerType === "touch") return;
    list.current?.setPointerCapture(event.pointerId);
    setDragged({ drill });
  };
  const over = (event: PointerEvent) => {
    if (!dragged) return;
    const there = drillAt(event.clientY);
    setDragged({ drill: dragged.drill, ...(there !== undefined && there !== dragged.drill ? { over: there } : {}) });
  };
  const end = () => {
    if (dragged?.over !== undefined && mayStandAt(plan.items, dragged.drill, dragged.over)) doings.move(dragged.drill, dragged.over);
    setDragged(undefined);
  };
  const stateOf = (drill: string): string => {
    if (!dragged) return "";
    if (drill === dragged.drill) return "dragged";
    if (!mayStandAt(plan.items, dragged.drill, drill)) return "may-not-stand";
    return drill === dragged.over ? "may-stand there" : "may-stand";
  };
  return (
    <div class="ribbon" style={{ blockSize: `${y(last) + 24}px` }}>
      <Ruler plan={plan} start={start} y={y} />
      <ol
        ref={list}
        aria-label={say("evening.ribbon")}
        onPointerDown={begin}
        onPointerMove={over}
        onPointerUp={end}
        onPointerCancel={() => setDragged(undefined)}
      >
        {plan.items.map((item) => (
          <Row key={item.drill} item={item} y={y} doings={doings} state={stateOf(item.drill)} />
        ))}
      </ol>
    </div>
  );
}
