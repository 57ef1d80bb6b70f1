// One coming evening, tried out: the ribbon and, beside it, minutes and turnout, what was left out, and what it costs.
import { useEffect } from "preact/hooks";
import type { Formation, PlanAnswer } from "../../shared/engine/answers.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { FormationSign } from "../../shared/evening/formation_sign.tsx";
import { demandTold, wayOutTold } from "../../shared/evening/reason_words.ts";
import { EveningCost, Sentence } from "./evening_cost.tsx";
import { EveningRibbon, type RibbonDoings } from "./evening_ribbon.tsx";
import { EveningPrices } from "./evening_prices.tsx";
import { EveningSlip } from "./evening_slip.tsx";
import { KeepTry } from "./keep_try.tsx";
import { nameOfDrill, names } from "./drill_names.ts";
import { movedBy, movedTo, orderWith, type Placed } from "./places_in_order.ts";
import { useTrial, type Trial } from "./trial.ts";
import { banned, orderOfRoutine, pinned, type PocketEvening } from "./tried.ts";
import { say } from "./words.ts";

const kMinutes: [number, number] = [5, 60]; // the door's own bounds
const kTurnout: [number, number] = [2, 40];
const kFormations: Formation[] = ["lane", "spread", "pairs"];

interface StepperProps {
  label: string;
  value: number;
  bounds: [number, number];
  onChange(value: number): void;
}

function Stepper({ label, value, bounds: [least, most], onChange }: StepperProps) {
  return (
    <div class="row stepper" role="group" aria-label={label}>
      <span>{label}</span>
      <button type="button" aria-label={say("evening.less", { what: label })} disabled={value <= least} onClick={() => onChange(value - 1)}>
        −
      </button>
      <output>{value}</output>
      <button type="button" aria-label={say("evening.more", { what: label })} disabled={value >= most} onClick={() => onChange(value + 1)}>
        +
      </button>
    </div>
  );
}

function placedIn(catalogue: DoorTable, ids: string[]): Placed[] {
  const drills = (catalogue["drills"] ?? []) as DoorTable[];
  return ids.flatMap((id) => {
    const drill = drills.find((each) => each["id"] === id);
    return drill ? [{ drill: id, phase: String(drill["phase"]), family: String(drill["family"]) }] : [];
  });
}

function doingsOf(evening: PocketEvening, catalogue: DoorTable, trial: Trial, plan: PlanAnswer): RibbonDoings {
  const routine = placedIn(catalogue, orderOfRoutine(evening));
  const stands = (drill: string) => routine.some((each) => each.drill === drill);
  const take = (order: Placed[] | undefined) => order && trial.try({ order: orderWith(routine, order) });
  return {
    move: (drill, at) => take(movedTo(plan.items, drill, at)),
    step: (drill, by) => take(movedBy(plan.items, drill, by)),
    mayStep: (drill, by) => stands(drill) && movedBy(plan.items, drill, by) !== undefined,
    pin: (drill, on) => trial.try(pinned(trial.tried, drill, on)),
    ban: (drill) => trial.try(banned(trial.tried, drill, true)),
    isPinned: (drill) => trial.tried.pins.includes(drill),
  };
}

// Drills of the routine that are not in: by the lead, or because tonight has no room for them.
function NotIn({ evening, trial, plan }: { evening: PocketEvening; trial: Trial; plan: PlanAnswer }) {
  const { bans } = trial.tried;
  const out = [...new Set([...bans, ...orderOfRoutine(evening)])].filter((drill) => !plan.items.some((item) => item.drill === drill));
  if (out.length === 0) return null;
  return (
    <section aria-labelledby="not-in">
      <h3 id="not-in">{say("evening.out")}</h3>
      <ul class="cards">
        {out.map((drill) => (
          <li key={drill} class="row">
            <span>{nameOfDrill(drill)}</span>
            {bans.includes(drill) ? (
              <button type="button" aria-label={`${say("evening.allow")}: ${nameOfDrill(drill)}`} onClick={() => trial.try(banned(trial.tried, drill, false))}>
                {say("evening.allow")}
              </button>
            ) : (
              <button type="button" aria-label={say("evening.pin_of", { drill: nameOfDrill(drill) })} aria-pressed={trial.tried.pins.includes(drill)} onClick={() => trial.try(pinned(trial.tried, drill, !trial.tried.pins.includes(drill)))}>
                {say("evening.pin")}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Legend({ plan }: { plan: PlanAnswer }) {
  return (
    <p class="row soft">
      {kFormations
        .filter((formation) => plan.items.some((item) => item.formation === formation))
        .map((formation) => (
          <span class="row" key={formation}>
            <svg width={30} height={20} aria-hidden="true">
              <FormationSign formation={formation} box={{ x: 2, y: 2, width: 26, height: 16 }} />
            </svg>
            {say(`evening.legend.${formation}`)}
          </span>
        ))}
    </p>
  );
}

// Ctrl+Z and Ctrl+Y (or Ctrl+Shift+Z), where nobody types and the frame has nothing to take back (../shell/bars.tsx).
function useUndoKeys(trial: Trial): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || !(event.ctrlKey || event.metaKey) || (event.target as HTMLElement).closest("input, textarea")) return;
      const key = event.key.toLowerCase();
      const doing = key === "y" || (key === "z" && event.shiftKey) ? trial.redo : key === "z" ? trial.undo : undefined;
      if (!doing) return;
      event.preventDefault();
      doing();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [trial.undo, trial.redo]);
}

function Steps({ trial }: { trial: Trial }) {
  const step = (words: string, doing: (() => void) | undefined) => (
    <button type="button" disabled={!doing} onClick={doing}>
      {words}
    </button>
  );
  return (
    <p class="row not-on-paper">
      {step(say("evening.undo"), trial.undo)}
      {step(say("evening.redo"), trial.redo)}
      {step(say("evening.forget"), trial.forget)}
      <button type="button" onClick={() => print()}>
        {say("print")}
      </button>
    </p>
  );
}

function NoPlanYet({ trial: { trouble, lost, again } }: { trial: Trial }) {
  if (lost) {
    return (
      <div role="alert">
        <p>{say("evening.no_engine")}</p>
        <button type="button" onClick={again}>
          {say("evening.no_engine_again")}
        </button>
      </div>
    );
  }
  if (trouble === "") return <p class="waiting screen-tall" role="status">{say("evening.planning")}</p>;
  return (
    <p role="alert">
      {say("evening.no_plan")} <span lang="en">{trouble}</span>
    </p>
  );
}

interface EveningTryProps {
  squad: string;
  evening: PocketEvening;
  catalogue: DoorTable;
  kept: () => void; // something of a try stands for the squad now
}

export function EveningTry({ squad, evening, catalogue, kept }: EveningTryProps) {
  const trial = useTrial(evening, catalogue);
  useUndoKeys(trial);
  const { plan, usual } = trial;
  if (!plan || !usual) return <NoPlanYet trial={trial} />;
  const { infeasible } = plan;
  return (
    <div class={trial.planning ? "evening-try planning" : "evening-try"}>
      <div>
        <p class="soft not-on-paper">{say("evening.how")}</p>
        {infeasible ? (
          <div role="alert">
            <p>
              <strong>{say("evening.no_plan")}</strong>
            </p>
            <ul>
              {infeasible.conflict.map((line, index) => (
                <li key={line}>
                  <Sentence told={demandTold(infeasible.demands?.[index], line, names)} />
                </li>
              ))}
            </ul>
            <p>
              {say("evening.way_out")} <Sentence told={wayOutTold(infeasible.ways_out, infeasible.way_out, names)} />
            </p>
          </div>
        ) : (
          <EveningRibbon plan={plan} start={evening.start} doings={doingsOf(evening, catalogue, trial, plan)} />
        )}
        <Legend plan={plan} />
        <EveningSlip squad={squad} evening={evening} catalogue={catalogue} trial={trial} kept={kept} />
      </div>
      <div class="aside">
        <p class="done-by" aria-live="polite">
          <strong>{plan.time && say("evening.done_by", { finish: plan.time.finish, late: plan.time.finish_nine_in_ten })}</strong>
        </p>
        <Steps trial={trial} />
        <Stepper label={say("evening.minutes")} value={trial.tried.minutes ?? evening.minutes} bounds={kMinutes} onChange={(minutes) => trial.try({ minutes })} />
        <Stepper label={say("evening.turnout")} value={trial.tried.turnout ?? plan.turnout} bounds={kTurnout} onChange={(turnout) => trial.try({ turnout })} />
        {!infeasible && <EveningCost usual={usual} plan={plan} />}
        {!infeasible && <EveningPrices plan={plan} />}
        <NotIn evening={evening} trial={trial} plan={plan} />
        <KeepTry squad={squad} evening={evening} tried={trial.tried} placed={(ids) => placedIn(catalogue, ids)} kept={kept} />
      </div>
    </div>
  );
}
