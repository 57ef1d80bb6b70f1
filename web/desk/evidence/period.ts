// Which days a report is of, and the periods that a lead usually wants.
import type { Content } from "../set_up/club_draft.ts";

export interface Period {
  from: string;
  to: string;
}
export type PeriodFault = "no_day" | "order" | "too_long";

const kMostDays = 3 * 366; // as core/records/season.cpp

const dayOf = (time: Date): string => time.toISOString().slice(0, 10);
const noonOf = (day: string): number => Date.parse(`${day}T12:00:00Z`);

export function isDay(text: string | undefined): text is string {
  return text !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(noonOf(text)) && dayOf(new Date(noonOf(text))) === text;
}

export function daysAfter(day: string, days: number): string {
  return dayOf(new Date(noonOf(day) + days * 86_400_000));
}

// By the field it is about.
export function faultsOf(from: string | undefined, to: string | undefined): Partial<Record<keyof Period, PeriodFault>> {
  const faults = { ...(isDay(from) ? {} : { from: "no_day" as const }), ...(isDay(to) ? {} : { to: "no_day" as const }) };
  if (!isDay(from) || !isDay(to)) return faults;
  if (to < from) return { to: "order" };
  return noonOf(to) - noonOf(from) >= kMostDays * 86_400_000 ? { to: "too_long" } : {};
}

// What the club wrote down; where today is not in it, or nothing is written, from the last 1 August.
export function seasonSoFar(club: Content | undefined, today: string): Period {
  const { from, to } = (club?.["season"] ?? {}) as { from?: unknown; to?: unknown };
  if (typeof from === "string" && isDay(from) && from <= today && (typeof to !== "string" || today <= to)) return { from, to: today };
  const august = `${today.slice(0, 4)}-08-01`;
  return { from: august <= today ? august : `${Number(today.slice(0, 4)) - 1}-08-01`, to: today };
}

export const lastFourWeeks = (today: string): Period => ({ from: daysAfter(today, -27), to: today });
