// Which squads an account is charged with, in words.
import type { Charge, SquadRow } from "../../shared/api.ts";
import { list, wholeDay } from "../../shared/words/words.ts";
import { say } from "./words.ts";

const nameOf = (squads: SquadRow[], id: string): string => squads.find((squad) => squad.id === id)?.name ?? id;

// 'U13 Kestrels', or 'U13 Kestrels (stands in until 3 December 2026)'.
export function chargeWords(charge: Charge, squads: SquadRow[]): string {
  const squad = nameOf(squads, charge.squad);
  if (charge.until === undefined) return squad;
  return say(charge.substitute ? "charges.stands_in" : "charges.until", { squad, until: wholeDay(charge.until) });
}

export function chargesWords(charges: Charge[], squads: SquadRow[]): string {
  return charges.length === 0 ? say("charges.none") : list(charges.map((charge) => chargeWords(charge, squads)));
}
