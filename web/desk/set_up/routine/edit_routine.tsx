// One house routine of the club's own, changed: its drills in order, and beside them what it takes, whether it fits, and what a
// week of it gives, counted anew with every step. A draft like the rest of the club, saved with it.
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { DoorTable } from "../../../shared/engine/door_value.ts";
import { useCatalogue } from "../../drills/catalogue.ts";
import type { CatalogueDocument, DrillDocument } from "../../drills/drill_document.ts";
import { beginning, done, type History, redone, undone } from "../../drills/edit/history.ts";
import { agesInWords, spoken } from "../../drills/spoken.ts";
import { useDrillNames } from "../../squad/drill_names.ts";
import { announce } from "../../shell/announce.ts";
import { hashOf } from "../../shell/route.ts";
import { NumberField, TextField } from "../fields.tsx";
import { AddDrill } from "./add_drill.tsx";
import { ConditionsForm, useConditions } from "./conditions.tsx";
import { type HouseRoutine, keepRoutine, ownById, squadsBy } from "./house_routines.ts";
import { type DrillOf, kAges, kMinutes, lineMovedBy, lineMovedTo, type Routine, withDrill, withLine, withoutLine } from "./routine_document.ts";
import { RoutineCovers } from "./routine_covers.tsx";
import { RoutineList, type RoutineDoings } from "./routine_list.tsx";
import { TimeInWords, TimeStrip } from "./routine_time.tsx";
import { type RoutineTrial, useRoutineTrial } from "./routine_trial.ts";
import { type FamilyTarget, weekOf } from "./week_work.ts";
import { say } from "./words.ts";

export function EditRoutine({ id }: { id: string }) {
  const own = ownById(id);
  const catalogue = useCatalogue();
  useDrillNames();
  return (
    <>
      <p>
        <a href={hashOf("set-up", "routines")}>{say("back")}</a>
      </p>
      {own === undefined ? <p>{say("gone")}</p> : catalogue === undefined ? <p class="waiting screen-tall" role="status">…</p> : <Editor key={id} own={own} catalogue={catalogue} />}
    </>
  );
}

// The door's catalogue is its five tables and nothing beside them; the same object as long as nothing changed, so that it is
// read once.
function useDoorCatalogue({ drills, families, limits, gaits, sources }: CatalogueDocument): DoorTable {
  return useMemo(() => ({ drills, families, limits, gaits, sources }) as unknown as DoorTable, [drills, families, limits, gaits, sources]);
}

// What is written is the draft itself: steps that can be taken back are of this page only.
function useSteps({ path, routine }: HouseRoutine) {
  const [history, setHistory] = useState<History<Routine>>(beginning(routine));
  // Changed elsewhere, such as by taking back a save: what could be undone is of something else.
  const current = JSON.stringify(history.now) === JSON.stringify(routine) ? history : beginning(routine);
  const go = (next: History<Routine>) => {
    setHistory(next);
    if (next.now !== routine) keepRoutine(path ?? "", next.now);
  };
  return {
    edit: (next: Routine, kind?: string) => go(done(current, next, kind)),
    ...(current.before.length > 0 ? { undo: () => go(undone(current)) } : {}),
    ...(current.after.length > 0 ? { redo: () => go(redone(current)) } : {}),
  };
}

function useKeys(undo: (() => void) | undefined, redo: (() => void) | undefined): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || !(event.ctrlKey || event.metaKey) || (event.target as HTMLElement).closest("input, textarea")) return;
      const key = event.key.toLowerCase();
      const doing = key === "y" || (key === "z" && event.shiftKey) ? redo : key === "z" ? undo : undefined;
      if (!doing) return;
      event.preventDefault();
      doing();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [undo, redo]);
}

function Editor({ own, catalogue }: { own: HouseRoutine; catalogue: CatalogueDocument }) {
  const { routine } = own;
  const byId = useMemo(() => new Map(catalogue.drills.map((drill) => [drill.id, drill])), [catalogue]);
  const drillOf: DrillOf = (id) => byId.get(id);
  const { edit, undo, redo } = useSteps(own);
  useKeys(undo, redo);
  const counting = useConditions(squadsBy(own.named), routine);
  const { counted } = counting;
  const trial = useRoutineTrial(routine, useDoorCatalogue(catalogue), counted);
  const nameOf = (id: string) => (byId.has(id) ? spoken(byId.get(id) as DrillDocument).name : id);
  const list = useRef<HTMLDivElement>(null);
  const moved = (next: Routine, drill: string) => {
    edit(next);
    announce(say("moved", { drill: nameOf(drill), place: next.drill.findIndex(({ id }) => id === drill) + 1, count: next.drill.length }));
  };
  const doings: RoutineDoings = {
    move: (drill, at) => moved(lineMovedTo(routine, drillOf, drill, at), drill),
    step: (drill, by) => moved(lineMovedBy(routine, drillOf, drill, by), drill),
    set: (drill, keys) => edit(withLine(routine, drill, keys)),
    remove: (drill) => {
      edit(withoutLine(routine, drill));
      announce(say("removed", { drill: nameOf(drill) }));
      list.current?.focus(); // the button that was pressed is gone
    },
  };
  const add = (drill: DrillDocument) => {
    edit(withDrill(routine, drill, drillOf));
    announce(say("added", { drill: spoken(drill).name }));
  };
  const week = weekOf(routine, drillOf, catalogue.families.family as FamilyTarget[], counted.age, counted.evenings);
  return (
    <div class={trial.planning ? "routine-edit planning" : "routine-edit"}>
      <About routine={routine} edit={edit} />
      <ConditionsForm {...counting} />
      <div class="routine-strip" tabIndex={0} role="region" aria-label={say("time")}>
        <TimeStrip plan={trial.whole} minutes={counted.minutes} drillOf={drillOf} />
      </div>
      <div class="routine-sides">
        <div>
          <h2>{say("drills")}</h2>
          <p class="soft">{say("how")}</p>
          <p class="row">
            <button type="button" disabled={!undo} onClick={undo}>
              {say("undo")}
            </button>
            <button type="button" disabled={!redo} onClick={redo}>
              {say("redo")}
            </button>
          </p>
          <div ref={list} tabIndex={-1}>
            <RoutineList routine={routine} drillOf={drillOf} plan={trial.faults.length > 0 ? undefined : trial.whole} faults={faultsOfLines(trial)} doings={doings} />
          </div>
          <AddDrill routine={routine} drills={catalogue.drills} add={add} />
        </div>
        <div class="routine-aside">
          <h2>{say("time")}</h2>
          <div aria-live="polite" class="routine-words">
            <Troubles trial={trial} />
            {trial.faults.length === 0 ? <TimeInWords trial={trial} minutes={counted.minutes} drillOf={drillOf} /> : null}
          </div>
          <RoutineCovers week={week} />
        </div>
      </div>
    </div>
  );
}

// 3 of 'drill.3.amount'.
const lineOf = (field: string): number | undefined => (/^drill\.\d+/.test(field) ? Number(field.split(".")[1]) : undefined);

function faultsOfLines({ faults }: RoutineTrial): Map<number, string> {
  return new Map(faults.filter(({ file }) => file === "routine").flatMap(({ field, sentence }) => (lineOf(field) === undefined ? [] : [[lineOf(field) as number, sentence]])));
}

function Troubles({ trial: { faults, trouble } }: { trial: RoutineTrial }) {
  if (trouble !== "") return <p role="alert">{say("no_engine", { why: trouble })}</p>;
  if (faults.length === 0) return null;
  return (
    <>
      <h3>{say("faults")}</h3>
      <ul>
        {faults.map(({ file, field, sentence }) => (
          <li key={`${file} ${field} ${sentence}`}>
            {file === "strip" ? say("fault_place", { what: sentence }) : <span lang="en">{sentence}</span>}
          </li>
        ))}
      </ul>
    </>
  );
}

function About({ routine, edit }: { routine: Routine; edit: (next: Routine, kind?: string) => void }) {
  const ages = (keys: Partial<Routine["ages"]>) => edit({ ...routine, ages: { ...routine.ages, ...keys } }, "ages");
  return (
    <details class="sheet">
      <summary>
        <bdi>{routine.name}</bdi>, {agesInWords(routine.ages)}: {say("about")}
      </summary>
      <TextField label={say("name")} value={routine.name} onChange={(name) => edit({ ...routine, name }, "name")} />
      <div class="row top">
        <NumberField label={say("ages_from")} value={routine.ages.from} least={kAges[0]} most={routine.ages.to} onChange={(from) => from === undefined || ages({ from })} />
        <NumberField label={say("ages_to")} value={routine.ages.to} least={routine.ages.from} most={kAges[1]} onChange={(to) => to === undefined || ages({ to })} />
        <NumberField label={say("minutes")} value={routine.minutes} least={kMinutes[0]} most={kMinutes[1]} onChange={(minutes) => minutes === undefined || edit({ ...routine, minutes }, "minutes")} />
      </div>
      <TextField label={say("note")} value={routine.note} onChange={(note) => edit({ ...routine, note }, "note")} />
    </details>
  );
}
