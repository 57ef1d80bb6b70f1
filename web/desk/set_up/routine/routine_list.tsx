// The drills of a routine in order, by the parts of a session: each with its rung and its dose, moved by dragging or by the
// arrows, and taken out.
import { useRef, useState } from "preact/hooks";
import type { Formation, PlanAnswer } from "../../../shared/engine/answers.ts";
import { FormationSign } from "../../../shared/evening/formation_sign.tsx";
import type { DrillDocument } from "../../drills/drill_document.ts";
import { agesInWords, doseInWords, spoken } from "../../drills/spoken.ts";
import { wordFor } from "../../drills/words.ts";
import { familyName } from "../../squad/drill_names.ts";
import { durationWords } from "../../squad/dose_words.ts";
import { mayStandAt, movedBy } from "../../squad/places_in_order.ts";
import { isForAges, placedOf, rungsFor, type DrillOf, type Line, type Routine } from "./routine_document.ts";
import { say } from "./words.ts";

export interface RoutineDoings {
  move(drill: string, at: string): void;
  step(drill: string, by: 1 | -1): void;
  set(drill: string, keys: Partial<Line>): void;
  remove(drill: string): void;
}

interface ListProps {
  routine: Routine;
  drillOf: DrillOf;
  plan: PlanAnswer | undefined; // of all of it
  faults: Map<number, string>; // the engine's own words, by the line's number from 1
  doings: RoutineDoings;
}

export function RoutineList({ routine, drillOf, plan, faults, doings }: ListProps) {
  const [dragged, setDragged] = useState<{ drill: string; over?: string } | undefined>();
  const list = useRef<HTMLDivElement>(null);
  const placed = placedOf(routine, drillOf);
  const begin = (event: PointerEvent) => {
    const target = event.target as HTMLElement;
    const drill = target.closest<HTMLElement>("[data-drill]")?.dataset["drill"];
    if (!drill || target.closest("button, select, option") || event.button !== 0 || event.pointerType === "touch") return;
    list.current?.setPointerCapture(event.pointerId);
    setDragged({ drill });
  };
  const over = (event: PointerEvent) => {
    if (!dragged) return;
    const rows = [...(list.current?.querySelectorAll<HTMLElement>("[data-drill]") ?? [])];
    const there = rows.find((row) => {
      const { top, bottom } = row.getBoundingClientRect();
      return event.clientY >= top && event.clientY < bottom;
    })?.dataset["drill"];
    setDragged({ drill: dragged.drill, ...(there !== undefined && there !== dragged.drill ? { over: there } : {}) });
  };
  const end = () => {
    if (dragged?.over !== undefined && mayStandAt(placed, dragged.drill, dragged.over)) doings.move(dragged.drill, dragged.over);
    setDragged(undefined);
  };
  const stateOf = (drill: string): string => {
    if (!dragged) return "";
    if (drill === dragged.drill) return "dragged";
    if (!mayStandAt(placed, dragged.drill, drill)) return "may-not-stand";
    return drill === dragged.over ? "there" : "";
  };
  const phases = [...new Set(placed.map(({ phase }) => phase))];
  return (
    <div ref={list} onPointerDown={begin} onPointerMove={over} onPointerUp={end} onPointerCancel={() => setDragged(undefined)}>
      {phases.map((phase) => (
        <section key={phase} aria-label={wordFor("phase_long", phase)}>
          <h3>{wordFor("phase_long", phase)}</h3>
          <ol class="routine-lines">
            {routine.drill.map((line, at) =>
              placed[at]?.phase === phase ? (
                <Row
                  key={line.id}
                  line={line}
                  drill={drillOf(line.id)}
                  ages={routine.ages}
                  seconds={plan?.items.find(({ drill }) => drill === line.id)?.takes_seconds}
                  fault={faults.get(at + 1)}
                  may={(by) => movedBy(placed, line.id, by) !== undefined}
                  state={stateOf(line.id)}
                  doings={doings}
                />
              ) : null,
            )}
          </ol>
        </section>
      ))}
    </div>
  );
}

interface RowProps {
  line: Line;
  drill: DrillDocument | undefined;
  ages: Routine["ages"];
  seconds: number | undefined;
  fault: string | undefined;
  may: (by: 1 | -1) => boolean;
  state: string;
  doings: RoutineDoings;
}

function Row({ line, drill, ages, seconds, fault, may, state, doings }: RowProps) {
  const name = drill ? spoken(drill).name : line.id;
  return (
    <li data-drill={line.id} class={`routine-line ${state}`}>
      <svg width={36} height={20} aria-hidden="true">
        {drill ? <FormationSign formation={drill.formation as Formation} box={{ x: 2, y: 2, width: 32, height: 16 }} /> : null}
      </svg>
      <span class="routine-name">
        <strong>{name}</strong> <span class="soft">{drill ? familyName(drill.family) : ""}</span>
      </span>
      {drill ? <RungAndDose line={line} drill={drill} age={ages.from} name={name} set={(keys) => doings.set(line.id, keys)} /> : null}
      <span class="takes soft">{seconds === undefined ? "" : durationWords(seconds)}</span>
      <span class="routine-doings">
        <button type="button" aria-label={say("earlier", { drill: name })} disabled={!may(-1)} onClick={() => doings.step(line.id, -1)}>
          ↑
        </button>
        <button type="button" aria-label={say("later", { drill: name })} disabled={!may(1)} onClick={() => doings.step(line.id, 1)}>
          ↓
        </button>
        <button type="button" aria-label={say("remove_of", { drill: name })} onClick={() => doings.remove(line.id)}>
          {say("remove")}
        </button>
      </span>
      <Wrong line={line} drill={drill} ages={ages} fault={fault} />
    </li>
  );
}

// What the catalogue alone can tell is told in our words; the rest, such as a ceiling, in the engine's.
function Wrong({ line, drill, ages, fault }: Pick<RowProps, "line" | "drill" | "ages" | "fault">) {
  const from = drill?.rung.find(({ key }) => key === line.rung)?.ages_from ?? 0;
  const own = !drill ? say("unknown") : !isForAges(drill, ages) ? say("not_for_ages", { ages: agesInWords(drill.ages) }) : from > ages.from ? say("rung_from", { age: from }) : undefined;
  if (own === undefined && fault === undefined) return null;
  return (
    <p class="fault" lang={own === undefined ? "en" : undefined}>
      {own ?? fault}
    </p>
  );
}

function RungAndDose({ line, drill, age, name, set }: { line: Line; drill: DrillDocument; age: number; name: string; set: (keys: Partial<Line>) => void }) {
  const open = rungsFor(drill, age);
  const words = spoken(drill).rung;
  const rungs = drill.rung.filter((rung) => open.includes(rung) || rung.key === line.rung);
  const dose = `${line.sets} ${line.amount}`;
  return (
    <span class="rung-and-dose">
      <select aria-label={say("rung_of", { drill: name })} value={line.rung} onChange={(event) => set({ rung: event.currentTarget.value })}>
        {rungs.map(({ key }) => (
          <option key={key} value={key}>
            {words.find((rung) => rung.key === key)?.change ?? key}
          </option>
        ))}
      </select>
      <select
        aria-label={say("dose_of", { drill: name })}
        value={dose}
        onChange={(event) => {
          const [sets, amount] = event.currentTarget.value.split(" ").map(Number);
          set({ sets: sets ?? line.sets, amount: amount ?? line.amount });
        }}
      >
        {drill.dose.steps.map((step) => (
          <option key={`${step.sets} ${step.amount}`} value={`${step.sets} ${step.amount}`}>
            {doseInWords(drill, step)}
          </option>
        ))}
      </select>
    </span>
  );
}
