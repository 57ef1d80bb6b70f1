// What every screen stands on: the package, the evening, the door, and how the evening goes on. Made by openPitch;
// kept and sent by whoever opened it.
import { computed, effect, signal, type ReadonlySignal, type Signal } from "@preact/signals";
import type { FigureAnswer, PlanAnswer, Silence } from "../../shared/engine/answers.ts";
import type { Engine } from "../../shared/engine/engine.ts";
import { drillDocument } from "../evening/drill.ts";
import type { Unlocked } from "../keep/lock.ts";
import type { Entry, NewEntry } from "../keep/entry.ts";
import type { EveningState } from "../evening/evening_state.ts";
import type { EveningEvent } from "../evening/events.ts";
import { cutTo, weightsOf, type Fitted } from "../evening/last_minutes.ts";
import { alternativeOf, candidatesFor, kEnough, kMostAsked, nearest, swapped, type Alternative } from "../evening/nearest.ts";
import { timeAfter } from "../../shared/evening/time_after.ts";
import { eveningOf, kLeastMinutes, requestFor } from "../evening/request.ts";
import { planRest } from "../evening/rest.ts";
import { step } from "../evening/step.ts";
import type { EveningPackage } from "../package/evening_package.ts";
import { fetchRendering } from "../../shared/words/renderings.ts";
import { language, type Language } from "../words/words.ts";
import type { Preferences } from "./preferences.ts";

const kSpreadFollowsMilliseconds = 120;

export type Overlay = "none" | "hurt" | "slip" | "settings" | "change-code" | "first-evening";

export interface Pitch {
  pack: EveningPackage;
  engine: Engine;
  evening: ReadonlySignal<EveningState>;
  preferences: Signal<Preferences>;
  overlay: Signal<Overlay>;
  planning: ReadonlySignal<boolean>;
  trouble: ReadonlySignal<string>; // why there is no plan, in one sentence; empty where there is one
  names_shown: ReadonlySignal<boolean>;
  waiting: ReadonlySignal<number> | undefined; // entries that the club does not have yet
  happen(event: EveningEvent): void;
  figure(drill: string, rung: string): Promise<FigureAnswer | undefined>;
  nearest(drill: string): Promise<Alternative[]>; // what could stand in for it tonight
  planRest(seconds: number): Promise<Fitted>; // without drills where none fits any more
  changeCode: ((old: string, fresh: string) => Promise<Unlocked>) | undefined; // where there is a lock
  close(): void;
}

// How old what holds players back is: as the evening's permissions say it, else what was entered last.
export function knownAt(pitch: Pitch): string | undefined {
  const as_known = eveningOf(pitch.pack, pitch.evening.value)?.documents.permissions?.as_known;
  return typeof as_known === "string" ? as_known : pitch.pack.known_at;
}

export interface PitchKeeper {
  pack: EveningPackage;
  engine: Engine;
  evening: EveningState; // as it was kept, or of openEvening
  preferences: Preferences;
  waiting?: ReadonlySignal<number>;
  renderings?: Partial<Record<Language, string>>; // where the drills' words of a language are
  // After each event: what to keep, what was entered. Gives the entries back with their ids, so that they can be corrected.
  keep(evening: EveningState, entries: NewEntry[]): Promise<Entry[]>;
  keepPreferences(preferences: Preferences): void;
  changeCode?: Pitch["changeCode"];
}

export function openPitch(keeper: PitchKeeper): Pitch {
  const { pack, engine } = keeper;
  const evening = signal(keeper.evening);
  const preferences = signal(keeper.preferences);
  const planning = signal(false);
  const trouble = signal("");
  const figures = new Map<string, FigureAnswer | undefined>();

  function happen(event: EveningEvent): void {
    const after = step(evening.peek(), event);
    if (after.state === evening.peek() && after.entries.length === 0) return;
    evening.value = after.state;
    const kept = keeper.keep(after.state, after.entries);
    if (after.entries.length > 0) void kept.then((entries) => entries.length > 0 && happen({ event: "kept", entries }));
  }

  const facts = computed(() => JSON.stringify([evening.value.facts, evening.value.hurt]));
  const running = computed(() => evening.value.run !== undefined);
  // The door plans five minutes at least; fewer are cut out of those.
  function cut(answer: PlanAnswer): PlanAnswer {
    const { minutes } = evening.peek().facts;
    const whole = eveningOf(pack, evening.peek());
    if (minutes === undefined || minutes >= kLeastMinutes || !whole) return answer;
    return cutTo(answer, minutes, weightsOf(pack), (after) => timeAfter(whole.start, whole.minutes - minutes + after));
  }

  let asked = 0;
  // At once with the finish by formula; the simulated evenings follow when nothing else is asked.
  async function plan(): Promise<void> {
    const request = requestFor("plan", pack, evening.peek());
    if (!request) return;
    asked += 1;
    const mine = asked;
    planning.value = true;
    take(await engine.ask({ ...request, spread: "formula" }, "formula"), mine);
    await new Promise((resolve) => setTimeout(resolve, kSpreadFollowsMilliseconds));
    if (mine === asked && !running.peek()) take(await engine.ask(request), mine);
  }

  function take(answer: PlanAnswer | Silence, mine: number): void {
    if (mine !== asked) return; // a newer question is on its way
    planning.value = false;
    if (answer.answer === "plan") {
      trouble.value = "";
      happen({ event: "planned", plan: cut(answer) });
    } else if (answer.answer === "faults") {
      trouble.value = answer.faults[0]?.sentence ?? "";
    } else if (answer.answer === "broken") {
      trouble.value = answer.why;
    }
  }

  const stops = [
    effect(() => {
      void facts.value;
      if (!running.value) void plan();
    }),
    effect(() => {
      language.value = preferences.value.language;
      const url = keeper.renderings?.[preferences.value.language];
      if (url) void fetchRendering(preferences.value.language, url);
      keeper.keepPreferences(preferences.value);
    }),
  ];

  return {
    pack,
    engine,
    evening,
    preferences,
    overlay: signal<Overlay>("none"),
    planning,
    trouble,
    names_shown: computed(() => evening.value && Date.parse(pack.lease_until) > Date.now()),
    waiting: keeper.waiting,
    happen,
    async figure(drill, rung) {
      const key = `${drill}/${rung}`;
      const document = drillDocument(pack, drill);
      if (figures.has(key) || !document) return figures.get(key);
      const answer = await engine.ask({ request: "figure", drill: document, rung, frames: 24, props: true });
      if (answer.answer === "dropped") return undefined;
      figures.set(key, answer.answer === "figure" ? answer : undefined);
      return figures.get(key);
    },
    async nearest(drill) {
      const state = evening.peek();
      const found: Alternative[] = [];
      for (const candidate of candidatesFor(pack, state, drill).slice(0, kMostAsked)) {
        const facts = { ...state.facts, ...swapped(state.facts, drill, candidate.drill) };
        const request = requestFor("plan", pack, { ...state, facts });
        const answer = request && (await engine.ask({ ...request, spread: "formula" }, "nearest"));
        if (evening.peek().facts !== state.facts) return [];
        const plan = answer?.answer === "plan" ? cut(answer) : undefined;
        const alternative = state.plan && plan && alternativeOf(state.plan, plan, drill, candidate);
        if (alternative) found.push(alternative);
        if (found.length >= kEnough) break;
      }
      return nearest(found);
    },
    planRest(seconds) {
      return planRest(pack, evening.peek(), seconds, (request) => engine.ask({ ...request, spread: "formula" }, "rest"));
    },
    changeCode: keeper.changeCode,
    close() {
      for (const stop of stops) stop();
    },
  };
}
