// The squad's evening after this one, as far as the package reaches.
import type { Evening, EveningPackage } from "../package/evening_package.ts";
import type { EveningState } from "./evening_state.ts";

export function nextEvening(pack: EveningPackage, { day, start }: EveningState): Evening | undefined {
  const at = (one: { day: string; start: string }): string => `${one.day} ${one.start}`;
  const later = pack.evenings.filter((evening) => at(evening) > at({ day, start }));
  return later.sort((one, other) => (at(one) < at(other) ? -1 : 1))[0];
}
