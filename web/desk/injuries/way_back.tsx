// The way back in steps: what was entered of each, and at which gate somebody is waited for. Nothing here opens a gate but a
// named clinician's clearance, and what was entered too early the rules refuse: the server's word above says what holds.
import { useState } from "preact/hooks";
import { moment } from "../../shared/words/words.ts";
import type { Said } from "../api/answer.ts";
import { newEntry } from "../api/enter.ts";
import { ClinicianDialog } from "./clinician_dialog.tsx";
import { DayDialog } from "./day_dialog.tsx";
import { heldOf, kCourses, type Way, type WayStep, waysOf } from "./holding.ts";
import { enterForGood, enterWithUndo } from "./take_back.ts";
import { gateWords, say, stepWords } from "./words.ts";

const kHeadFirst = new Set(["head", "neck", ""]); // such hurts the general way may not carry

interface WayProps {
  timeline: Said<"timeline">;
  again: () => Promise<unknown>;
}

function Step({ step, way }: { step: WayStep; way: Way }) {
  return (
    <li aria-current={way.next === step ? "step" : undefined}>
      {step.gate ? (
        <p class="gate">
          {step.gate_by ? say("way.gate_given", { gate: gateWords(step.gate), who: `\u2068${step.gate_by}\u2069` }) : say("way.gate_waits", { gate: gateWords(step.gate) })}
        </p>
      ) : null}
      <span class="step">{stepWords(step.step)}</span>
      {step.begun ? <span class="soft">, {say("way.begun", { when: moment(step.begun) })}</span> : null}
    </li>
  );
}

function Steps({ way, player, again }: { way: Way; player: string; again: () => Promise<unknown> }) {
  const [shows, setShows] = useState<"" | "gate" | "step">("");
  const { next } = way;
  const waits = next && next.gate !== "" && next.gate_by === "";
  const names = way.carries.length > 0 ? way.carries : [way.id];
  return (
    <>
      <h3>{say(`course.${way.course}`)}</h3>
      <p class="soft">{say("way.opened", { when: moment(way.opened) })}</p>
      <ul class="steps">
        {way.steps.map((step) => (
          <Step key={step.step} step={step} way={way} />
        ))}
      </ul>
      {next ? (
        <p class="row not-on-paper">
          {waits ? (
            <button type="button" onClick={() => setShows("gate")}>
              {say("way.enter_gate", { gate: gateWords(next.gate) })}
            </button>
          ) : (
            <button type="button" onClick={() => setShows("step")}>
              {say("way.begin", { step: stepWords(next.step) })}
            </button>
          )}
        </p>
      ) : (
        <p>{say("way.done")}</p>
      )}
      {shows === "gate" && next ? (
        <ClinicianDialog
          title={gateWords(next.gate)}
          what={say("way.gate_what")}
          onClose={() => setShows("")}
          act={(who) => enterWithUndo(newEntry("clearance", { player, names, course: way.id, gate: next.gate, ...who }), say("told.cleared"), again)}
        />
      ) : null}
      {shows === "step" && next ? (
        <DayDialog title={stepWords(next.step)} button={say("way.enter_step")} onClose={() => setShows("")} act={() => enterWithUndo(newEntry("step-begun", { player, course: way.id, step: next.step }), say("told.step"), again)}>
          <p>{say("way.step_what")}</p>
        </DayDialog>
      ) : null}
    </>
  );
}

export function WayBack({ timeline, again }: WayProps) {
  const [opens, setOpens] = useState<(typeof kCourses)[number] | undefined>();
  const ways = waysOf(timeline.entries);
  const { player } = timeline;
  const hurts = heldOf(timeline.entries).filter(({ kind }) => kind === "hurt");
  const carried = hurts.filter(({ places: [place = ""] }) => kHeadFirst.has(place) === (opens === "concussion"));
  return (
    <section class="sheet" aria-labelledby="way">
      <h2 id="way">{say("way.title")}</h2>
      {ways.map((way) => (
        <Steps key={way.id} way={way} player={player} again={again} />
      ))}
      {ways.length === 0 ? <p>{say("way.none")}</p> : null}
      <p class="row not-on-paper">
        {kCourses.map((course) => (
          <button key={course} type="button" onClick={() => setOpens(course)}>
            {say("way.open", { course: say(`course.${course}`) })}
          </button>
        ))}
      </p>
      {opens ? (
        <DayDialog
          title={say(`course.${opens}`)}
          button={say("way.enter_open")}
          onClose={() => setOpens(undefined)}
          act={() => enterForGood(newEntry("course-opened", { player, course: opens, ...(carried.length > 0 ? { carries: carried.map(({ id }) => id) } : {}) }), say("told.course"), again)}
        >
          <p>{say("way.open_what", { count: carried.length })}</p>
        </DayDialog>
      ) : null}
    </section>
  );
}
