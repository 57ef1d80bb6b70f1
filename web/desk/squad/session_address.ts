// A session in an address: '2026-12-01-18.00', since an address has no colons.
import { isDay } from "../week/days.ts";

export function sessionInAddress({ date, start }: { date: string; start: string }): string {
  return `${date}-${start.replace(":", ".")}`;
}

export function sessionOfAddress(text: string | undefined): { date: string; start: string } | undefined {
  const [, date, hours, minutes] = /^(\d{4}-\d{2}-\d{2})-(\d{2})\.(\d{2})$/.exec(text ?? "") ?? [];
  return date !== undefined && isDay(date) ? { date, start: `${hours}:${minutes}` } : undefined;
}
