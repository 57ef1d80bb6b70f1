// Takes an evening one event further: the state after it, and the entries of the ledger it makes. Nothing else changes
// an evening, so what was entered is entered once.
import type { PlanItem } from "../../shared/engine/answers.ts";
import type { NewEntry } from "../keep/entry.ts";
import { correcting, standing, takenBack, withIds } from "./entered.ts";
import type { EveningState, Mark, Run } from "./evening_state.ts";
import type { EveningEvent, NewRung } from "./events.ts";
import { millisecondsInItem } from "./where.ts";

// A second tap of the same wet finger must not pass over the next drill.
const kDoubleTapMilliseconds = 900;

export interface Step {
  state: EveningState;
  entries: NewEntry[];
}

const still = (state: EveningState): Step => ({ state, entries: [] });

function session(state: EveningState): { squad: string; day: string; start: string } {
  return { squad: state.squad, day: state.day, start: state.start };
}

// The club keeps one mark a drill, the latest (core/ledger/fold.h). So of a drill that was gone back to, done and
// skipped are said again where easier or harder came after them; and of those two the later is said.
function stands(marks: Mark[], mark: Mark): boolean {
  const rungs = marks.filter((each) => each === "easier" || each === "harder");
  if (mark === "easier" || mark === "harder") return rungs.pop() === mark;
  return mark === "needs-help" ? marks.includes(mark) : marks[marks.length - 1] === mark;
}

function marked(state: EveningState, drill: string, mark: Mark): Step {
  const marks = state.marks[drill] ?? [];
  if (stands(marks, mark)) return still(state);
  return {
    state: { ...state, marks: { ...state.marks, [drill]: [...marks.filter((each) => each !== mark), mark] } },
    entries: [{ kind: "drill-marked", ...session(state), drill, mark }],
  };
}

function start(state: EveningState, at: number): Step {
  if (state.run) return still({ ...state, screen: "run" });
  if (!state.plan || state.plan.items.length === 0) return still(state);
  const run: Run = {
    began: at,
    ends: at + state.plan.slot_seconds * 1000,
    item: 0,
    item_since: at,
    counted: 0,
    paused: false,
    paused_total: 0,
  };
  return { state: { ...state, screen: "run", run }, entries: [{ kind: "session-started", ...session(state) }] };
}

function goneOn(run: Run, at: number): Run {
  const { paused_since, ...rest } = run;
  const stood = paused_since === undefined ? 0 : Math.max(0, at - paused_since);
  return { ...rest, paused: false, item_since: at, paused_total: run.paused_total + stood };
}

function atItem(state: EveningState, run: Run, item: number, at: number): EveningState {
  const moved = { ...goneOn(run, at), item, counted: 0 };
  const over = item >= (state.plan?.items.length ?? 0);
  return over ? wrapping({ ...state, run: moved }) : { ...state, run: moved };
}

function wrapping(state: EveningState): EveningState {
  const there = state.wrap_up.there || (state.plan?.turnout ?? 0);
  return { ...state, screen: "wrap-up", wrap_up: { ...state.wrap_up, there } };
}

function leave(state: EveningState, item: number, mark: "done" | "skipped", at: number): Step {
  const { run, plan } = state;
  const current = plan?.items[item];
  if (!run || !current || run.item !== item) return still(state);
  if (!run.paused && millisecondsInItem(run, at) < kDoubleTapMilliseconds) return still(state);
  const after = marked(state, current.drill, mark);
  return { state: atItem(after.state, run, item + 1, at), entries: after.entries };
}

function onRung(state: EveningState, item: number, mark: "easier" | "harder", rung?: NewRung): Step {
  const current = state.plan?.items[item];
  if (!state.plan || !current || state.run?.item !== item) return still(state);
  const after = marked(state, current.drill, mark);
  if (!rung) return after;
  const changed: PlanItem = { ...current, rung: rung.key, rung_words: rung.words };
  const items = state.plan.items.map((each, at) => (at === item ? changed : each));
  return { state: { ...after.state, plan: { ...state.plan, items } }, entries: after.entries };
}

// The drills that were left go, those of the answer come; seconds of the new ones are counted on from here.
function restPlanned(state: EveningState, rest: PlanItem[]): EveningState {
  const { run, plan } = state;
  if (!run || !plan || rest.length === 0) return state;
  return { ...state, plan: { ...plan, items: [...plan.items.slice(0, run.item + 1), ...rest] } };
}

function wrappedUp(state: EveningState, at: number, players?: string[]): Step {
  if (state.wrap_up.sent) return still(state);
  const { there, did_it } = state.wrap_up;
  const ran = state.run;
  const left = ran && state.plan ? state.plan.items.length - ran.item : 0;
  // Held with nobody doing it is a warm-up that was missed; only the lead's calendar misses a whole session.
  const happened = left > 0 && did_it !== "nobody" ? "cut-short" : "held";
  const attendance: NewEntry = { kind: "attendance", ...session(state), there };
  if (players) attendance.players = players;
  const wrap: NewEntry = { kind: "wrap-up", ...session(state), happened };
  if (did_it) wrap.did_it = did_it;
  const minutes = state.wrap_up.minutes ?? (ran && Math.min(1440, Math.max(0, Math.round((at - ran.began) / 60000))));
  if (minutes !== undefined) wrap.minutes = minutes;
  const entries = [attendance, wrap].map((entry) => correcting(state, entry)).filter((entry) => entry !== undefined);
  const wrap_up = { ...state.wrap_up, sent: true, ...(minutes === undefined ? {} : { minutes }) };
  let after: EveningState = { ...state, screen: "finished", wrap_up };
  for (const drill of Object.keys(state.marks)) {
    const wrong = state.wrap_up.needs_help.includes(drill) ? undefined : standing(after, "drill-marked", drill, "needs-help");
    if (!wrong) continue;
    const marks = (after.marks[drill] ?? []).filter((mark) => mark !== "needs-help");
    after = { ...takenBack(after, wrong.id), marks: { ...after.marks, [drill]: marks } };
    entries.push({ kind: "taken-back", ...session(state), corrects: wrong.id });
  }
  for (const drill of state.wrap_up.needs_help) {
    const help = marked(after, drill, "needs-help");
    after = help.state;
    entries.push(...help.entries);
  }
  return { state: after, entries };
}

export function step(state: EveningState, event: EveningEvent): Step {
  const { run } = state;
  switch (event.event) {
    case "facts":
      return still({ ...state, facts: { ...state.facts, ...event.facts } });
    case "sore": {
      const { player, points, place } = event.sore;
      const entry: NewEntry = { kind: "soreness", player, before: points };
      if (place) entry.place = place;
      const known = state.facts.sore.some(
        (sore) => sore.player === player && sore.points === points && sore.place === place,
      );
      if (known) return still(state);
      return { state: { ...state, facts: { ...state.facts, sore: [...state.facts.sore, event.sore] } }, entries: [entry] };
    }
    case "planned": {
      if (run) return still(state); // a plan under way is not exchanged under the coach's feet
      const before = state.plan && state.plan.outcome === "optimal" ? state.plan : state.before;
      const after = { ...state, plan: event.plan };
      return still(before ? { ...after, before } : after);
    }
    case "rest-planned":
      return still(restPlanned(state, event.items));
    case "go":
      return still(event.screen === "wrap-up" ? wrapping(state) : { ...state, screen: event.screen });
    case "start":
      return start(state, event.at);
    case "done":
      return leave(state, event.item, "done", event.at);
    case "skip":
      return leave(state, event.item, "skipped", event.at);
    case "easier":
    case "harder":
      return onRung(state, event.item, event.event, event.rung);
    case "back":
      if (!run || run.item !== event.item || event.item === 0) return still(state);
      return still({ ...atItem(state, run, event.item - 1, event.at), screen: "run" });
    case "pause":
      if (!run || run.paused) return still(state);
      return still({
        ...state,
        run: { ...run, counted: millisecondsInItem(run, event.at), paused: true, paused_since: event.at },
      });
    case "go-on":
      return still(run?.paused ? { ...state, run: goneOn(run, event.at) } : state);
    case "hurt": {
      const entry: NewEntry = { kind: "hurt", player: event.player };
      if (event.place) entry.place = event.place;
      if (event.signs && event.signs.length > 0) entry.signs = event.signs;
      const hurt = state.hurt.includes(event.player) ? state.hurt : [...state.hurt, event.player];
      return { state: { ...state, hurt }, entries: [entry] };
    }
    case "sheet-opened":
      return { state, entries: [{ kind: "emergency-sheet-opened", player: event.player }] };
    case "kept":
      return still(withIds(state, event.entries));
    case "take-back": {
      // As in core/care: taking back lessens no caution. The player stays held back until the lead lifts it.
      const wrong = state.entered?.find(({ id, taken_back }) => id === event.id && !taken_back);
      if (wrong?.kind !== "hurt" && wrong?.kind !== "soreness") return still(state);
      return {
        state: takenBack(state, wrong.id),
        entries: [{ kind: "withdrawn", player: wrong.about, corrects: wrong.id }],
      };
    }
    case "correct-wrap-up":
      if (!state.wrap_up.sent || !standing(state, "wrap-up")) return still(state);
      return still({ ...state, screen: "wrap-up", wrap_up: { ...state.wrap_up, sent: false } });
    case "there":
      return still({ ...state, wrap_up: { ...state.wrap_up, there: Math.min(200, Math.max(0, event.count)) } });
    case "did-it":
      return still({ ...state, wrap_up: { ...state.wrap_up, did_it: event.did_it } });
    case "needs-help": {
      const others = state.wrap_up.needs_help.filter((drill) => drill !== event.drill);
      const needs_help = event.yes ? [...others, event.drill] : others;
      return still({ ...state, wrap_up: { ...state.wrap_up, needs_help } });
    }
    case "wrapped-up":
      return wrappedUp(state, event.at, event.players);
  }
}
