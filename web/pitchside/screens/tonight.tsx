// Tonight: what is known, how many are there and for how long, the session drawn to time, what is different, and one thing
// to do next. The numbers stand above what follows from them, so that no button moves under the thumb that taps it.
import { dayOf } from "../evening/day.ts";
import type { EveningState } from "../evening/evening_state.ts";
import { timeAfter } from "../../shared/evening/time_after.ts";
import { eveningOf, kLeastMinutes } from "../evening/request.ts";
import { knownWords } from "../words/known_words.ts";
import { say, weekday } from "../words/words.ts";
import { demandTold, wayOutTold } from "../../shared/evening/reason_words.ts";
import { Changes, Sentence } from "./changes.tsx";
import { DrillList } from "./drill_list.tsx";
import { namesOf } from "./drill_words.ts";
import { FirstEveningOffer } from "./first_evening.tsx";
import { Head, HurtButton, Stepper } from "./parts.tsx";
import { knownAt, type Pitch } from "./pitch.ts";
import { Ribbon } from "./ribbon.tsx";
import { Ground, Missing, SoreNote, WhoIsHere } from "./tonight_facts.tsx";

function Known({ pitch }: { pitch: Pitch }) {
  const known_at = knownAt(pitch);
  return (
    <p>
      <span class="soft">{known_at ? say("tonight.known", { when: knownWords(known_at) }) : say("tonight.never_known")}</span>{" "}
      <strong>{say("tonight.ask")}</strong>
    </p>
  );
}

function Planned({ pitch, state, starts }: { pitch: Pitch; state: EveningState; starts: string }) {
  const { plan } = state;
  const trouble = pitch.trouble.value;
  if (trouble) {
    return (
      <p role="alert">
        <strong>{say("tonight.no_plan")}</strong> {trouble}
      </p>
    );
  }
  if (!plan) return <p role="status">{say("say.working")}</p>;
  if (plan.infeasible) {
    const { conflict, demands, way_out, ways_out } = plan.infeasible;
    const names = namesOf(pitch.pack);
    const way = wayOutTold(ways_out, way_out, names);
    return (
      <div role="alert">
        <p class="large">
          <strong>{say("tonight.no_plan")}</strong>
        </p>
        <ul>
          {conflict.map((line, index) => (
            <li key={line}>
              <Sentence told={demandTold(demands?.[index], line, names)} />
            </li>
          ))}
        </ul>
        <p lang={way.english ? "en" : undefined}>{say("tonight.way_out", { way: way.words })}</p>
      </div>
    );
  }
  return (
    <>
      <Ribbon plan={plan} start={starts} />
      <p class={pitch.planning.value ? "large soft" : "large"} aria-live="polite" aria-busy={pitch.planning.value}>
        <strong>
          {plan.time && say("tonight.done_by", { finish: plan.time.finish, late: plan.time.finish_nine_in_ten })}
        </strong>
      </p>
      {(state.facts.minutes ?? kLeastMinutes) < kLeastMinutes && <p class="soft">{say("tonight.under_five")}</p>}
      <Changes pitch={pitch} />
    </>
  );
}

export function TonightScreen({ pitch }: { pitch: Pitch }) {
  const state = pitch.evening.value;
  const { facts, plan } = state;
  const evening = eveningOf(pitch.pack, state);
  const title = state.day === dayOf(new Date()) ? say("tonight.title") : weekday(state.day);
  if (!evening) {
    return (
      <>
        <Head title={title} />
        <main>
          <p>{say("tonight.no_evening")}</p>
        </main>
      </>
    );
  }
  const change = (facts: Partial<EveningState["facts"]>) => pitch.happen({ event: "facts", facts });
  const minutes = facts.minutes ?? evening.minutes;
  const starts = timeAfter(evening.start, Math.max(0, evening.minutes - minutes));
  const players = facts.turnout ?? plan?.turnout ?? pitch.pack.roster.length;
  const planned = plan?.outcome === "optimal" && !pitch.trouble.value;
  return (
    <>
      <Head title={title}>
        <HurtButton pitch={pitch} />
        <p>
          {pitch.pack.squad.name}, {evening.strip}
        </p>
      </Head>
      <main>
        <FirstEveningOffer pitch={pitch} />
        <Known pitch={pitch} />
        <Stepper label={say("tonight.players")} value={players} least={2} most={40} onChange={(turnout) => change({ turnout })} />
        <Stepper label={say("tonight.minutes")} value={minutes} least={1} most={60} onChange={(value) => change({ minutes: value })} />
        <Stepper label={say("tonight.late")} value={facts.late} least={0} most={Math.max(0, players - 1)} onChange={(late) => change({ late })} />
        <Planned pitch={pitch} state={state} starts={starts} />
        <Ground pitch={pitch} evening={evening} />
        <Missing pitch={pitch} />
        <WhoIsHere pitch={pitch} />
        <SoreNote pitch={pitch} />
        <DrillList pitch={pitch} />
        <div class="row" style={{ marginTop: "0.9rem" }}>
          <button type="button" onClick={() => (pitch.overlay.value = "slip")}>
            {say("tonight.slip")}
          </button>
          <button type="button" onClick={() => (pitch.overlay.value = "settings")}>
            {say("tonight.settings")}
          </button>
        </div>
        <p class="soft">{say("say.local_rules")}</p>
      </main>
      <footer class="bar">
        <button type="button" class="main" disabled={!planned} onClick={() => pitch.happen({ event: "go", screen: "lay-out" })}>
          {say("tonight.lay_out")}
        </button>
      </footer>
    </>
  );
}
