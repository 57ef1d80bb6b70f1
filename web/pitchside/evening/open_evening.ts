// An evening of the package, before anybody touched it: what is known stands already.
import type { Evening, EveningPackage } from "../package/evening_package.ts";
import { newEvening, type EveningState } from "./evening_state.ts";
import { awayAsKnown, lateAsKnown } from "./request.ts";

export function openEvening(pack: EveningPackage, evening: Evening): EveningState {
  const state = newEvening(pack.squad.id, evening.day, evening.start, awayAsKnown(evening));
  return { ...state, facts: { ...state.facts, late: lateAsKnown(evening) } };
}
