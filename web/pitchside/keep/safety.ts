// What of a package is wanted when somebody is hurt, and may be read without the code: whom to call and where to go.
// Nothing of the children.
import type { ActionPlan, EveningPackage } from "../package/evening_package.ts";

export interface Safety {
  evenings: { day: string; start: string; strip: string }[];
  action_plans: ActionPlan[];
}

export function safetyOf(whole: EveningPackage): Safety {
  return { evenings: whole.evenings.map(({ day, start, strip }) => ({ day, start, strip })), action_plans: whole.action_plans };
}
