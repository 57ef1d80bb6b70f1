// Days as text, '2026-11-26', counted without a clock's zone: a day has no hour that summer time could take away.
const kDayMilliseconds = 86_400_000;

const at = (day: string): number => Date.parse(`${day}T00:00:00Z`);

export function dayAfter(day: string, days: number): string {
  return new Date(at(day) + days * kDayMilliseconds).toISOString().slice(0, 10);
}

// Monday is 1, as in a block's answer.
export function weekdayOf(day: string): number {
  return new Date(at(day)).getUTCDay() || 7;
}

export function mondayOf(day: string): string {
  return dayAfter(day, 1 - weekdayOf(day));
}

export function weekFrom(monday: string): string[] {
  return Array.from({ length: 7 }, (_, days) => dayAfter(monday, days));
}

// Also false of '2026-02-31', which the browser would read as a day of March.
export function isDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(at(text)) && dayAfter(text, 0) === text;
}

// '2026-11-26 18:05' where the reader is: what has begun by then is over or under way.
export function momentOf(now: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${day} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
