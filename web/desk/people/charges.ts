// Which squads an account is charged with, in words.
import type { Charge, Role, SquadRow } from "../../shared/api.ts";
import { list, wholeDay } from "../../shared/words/words.ts";
import { say } from "./words.ts";

export const nameOf = (squads: SquadRow[], id: string): string => squads.find((squad) => squad.id === id)?.name ?? id;

// 'U13 Kestrels', or 'U13 Kestrels (stands in until 3 December 2026)'.
function chargeWords(charge: Charge, squads: SquadRow[]): string {
  const squad = nameOf(squads, charge.squad);
  if (charge.until === undefined) return squad;
  return say(charge.substitute ? "charges.stands_in" : "charges.until", { squad, until: wholeDay(charge.until) });
}

// A lead sees every squad, whatever is written; a board member and who runs the server see none.
export function chargesWords(role: Role, charges: Charge[], squads: SquadRow[]): string {
  if (role === "lead") return say("charges.all");
  return charges.length === 0 ? say("charges.none") : list(charges.map((charge) => chargeWords(charge, squads)).sort());
}

export const mayBeCharged = (role: Role): boolean => role === "coach" || role === "recorder";
