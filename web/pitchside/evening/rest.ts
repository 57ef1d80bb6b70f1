// What is left of a running session, planned into the seconds that are left. What was done travels along as pinned, as it
// was done: so its loads count against tonight's ceilings, and its families are covered. Nothing new is taken in.
import type { PlanAnswer, PlanItem, Silence } from "../../shared/engine/answers.ts";
import type { DoorRequest } from "../../shared/engine/engine.ts";
import type { EveningPackage } from "../package/evening_package.ts";
import type { EveningState, Facts } from "./evening_state.ts";
import { fitInto, type Fitted, weightsOf } from "./last_minutes.ts";
import { between, kLeastMinutes, kMostMinutes, requestFor, table } from "./request.ts";
import { secondsOf } from "./where.ts";

const kTries = 4; // of a minute less each

interface Parts {
  done: PlanItem[]; // with the one under way
  rest: PlanItem[];
}

function partsOf({ plan, run, marks }: EveningState): Parts | undefined {
  if (!plan || !run) return undefined;
  const skipped = (drill: string) => (marks[drill] ?? []).filter((mark) => mark === "done" || mark === "skipped").pop() === "skipped";
  const at = run.item + 1;
  const done = plan.items.slice(0, at).filter(({ drill }, index) => index === run.item || !skipped(drill));
  return { done, rest: plan.items.slice(at) };
}

const sum = (items: PlanItem[]): number => items.reduce((seconds, item) => seconds + secondsOf(item), 0);
const asDone = ({ drill, rung, sets, amount }: PlanItem) => ({ drill, rung, sets, amount });

type PlanRequest = DoorRequest & { request: "plan" };

// Of the drills of a part of the session, as they stand, and no others.
function requestOf(pack: EveningPackage, state: EveningState, items: PlanItem[], pinned: PlanItem[], minutes: number): PlanRequest | undefined {
  const slot = between(minutes, kLeastMinutes, kMostMinutes);
  const stay = new Set(items.map(({ drill }) => drill));
  const drills = pack.catalogue["drills"];
  const ids = Array.isArray(drills) ? drills.map((drill) => table(drill)["id"]) : [];
  const bans = ids.filter((id): id is string => typeof id === "string" && !stay.has(id));
  const facts: Facts = { ...state.facts, late: 0, pins: [], minutes: slot, bans };
  const request = requestFor("plan", pack, { ...state, facts });
  if (!request) return undefined;
  request["routine"] = { ...table(request["routine"]), minutes: slot, drill: items.map(({ drill: id, rung, sets, amount }) => ({ id, rung, sets, amount })) };
  if (pinned.length > 0) {
    const squad = table(request["squad"]);
    const tonight = table(squad["tonight"]);
    const known = Array.isArray(tonight["pins"]) ? tonight["pins"].map(table) : [];
    const others = known.filter((pin) => !pinned.some(({ drill }) => drill === pin["drill"]));
    request["squad"] = { ...squad, tonight: { ...tonight, pins: [...pinned.map(asDone), ...others] } };
  }
  return request;
}

// Of the plan's margin what the rest needs: evenings differ by their parts, and parts that are over differ no more.
function marginOf(plan: PlanAnswer, seconds: number): number {
  return plan.margin_seconds * Math.sqrt(Math.min(1, seconds / Math.max(1, plan.planned_seconds)));
}

// minutes: with those that what was done took. Nothing where nothing is left to come.
export function requestForRest(pack: EveningPackage, state: EveningState, minutes: number): PlanRequest | undefined {
  const parts = partsOf(state);
  if (!parts || parts.rest.length === 0) return undefined;
  return requestOf(pack, state, [...parts.done, ...parts.rest], parts.done, minutes);
}

// Where what was done cannot stand as it was, such as a rung that was made harder than tonight's: the rest by itself.
function requestForRestAlone(pack: EveningPackage, state: EveningState, seconds: number): PlanRequest | undefined {
  const rest = partsOf(state)?.rest ?? [];
  return rest.length === 0 ? undefined : requestOf(pack, state, rest, [], Math.floor(seconds / 60));
}

type Ask = (request: PlanRequest) => Promise<PlanAnswer | Silence>;

// seconds: from the end of the drill under way. Without drills where none fits any more.
export async function planRest(pack: EveningPackage, state: EveningState, seconds: number, ask: Ask): Promise<Fitted> {
  const { plan } = state;
  const parts = partsOf(state);
  if (!plan || !parts) return { items: [], seconds: 0 };
  const { done, rest } = parts;
  const asked = async (request: PlanRequest | undefined): Promise<PlanItem[] | undefined> => {
    const answer = request && (await ask(request));
    if (answer?.answer !== "plan" || answer.outcome !== "optimal") return undefined;
    return answer.items.filter(({ drill }) => rest.some((item) => item.drill === drill));
  };
  // The door wants whole minutes, counts what was done anew, and holds a margin for it: from above, until it fits.
  const over = plan.margin_seconds - marginOf(plan, Math.min(seconds, sum(rest)));
  let minutes = Math.ceil((sum(done) + seconds + over) / 60);
  let planned: PlanItem[] | undefined;
  for (let tries = 0; tries < kTries; tries++, minutes--) {
    planned = await asked(requestForRest(pack, state, minutes));
    if (!planned || sum(planned) + marginOf(plan, sum(planned)) <= seconds) break;
  }
  if (!planned && seconds >= 60 * kLeastMinutes) planned = await asked(requestForRestAlone(pack, state, seconds));
  if (planned && planned.length > 0 && sum(planned) <= seconds) return { items: planned, seconds: sum(planned) };
  // Too little time for the door: of what the ceilings leave, what matters most.
  const allowed = (await asked(requestForRest(pack, state, kMostMinutes))) ?? rest;
  return fitInto(allowed, seconds, weightsOf(pack));
}
