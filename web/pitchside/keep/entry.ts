// An entry of the ledger as docs/formats/ledger.md has it: what a screen says happened, and what becomes of it once it
// has a name, a number and a time of its own.

interface AboutSession {
  squad: string;
  day: string; // 2026-12-01
  start: string; // 18:00
}

export type Mark = "done" | "skipped" | "easier" | "harder" | "needs-help";

export type NewEntry = { corrects?: string } & (
  | ({ kind: "session-started"; plan?: string } & AboutSession)
  | ({ kind: "drill-marked"; drill: string; mark: Mark } & AboutSession)
  | ({ kind: "attendance"; there: number; players?: string[] } & AboutSession)
  | ({
      kind: "wrap-up";
      happened: "held" | "cut-short" | "missed";
      did_it?: "most" | "half" | "few" | "nobody";
      minutes?: number;
      note?: string;
    } & AboutSession)
  | { kind: "emergency-sheet-opened"; player: string }
  | { kind: "hurt"; player: string; place?: string; signs?: string[] }
  | {
      kind: "soreness";
      player: string;
      place?: string;
      before?: number;
      during?: number;
      next_morning?: number;
      signs?: string[];
    }
  | ({ kind: "taken-back"; corrects: string } & AboutSession)
  | { kind: "withdrawn"; corrects: string; player: string }
);

export type Entry = NewEntry & { id: string; sequence: number; device_time: string };

const two = (number: number): string => String(number).padStart(2, "0");

// 2026-11-26T18:04:10+01:00: the phone's own clock with its offset, for people to read.
export function stampOf(now: Date): string {
  const offset = -now.getTimezoneOffset();
  const size = Math.abs(offset);
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  const time = `${two(now.getHours())}:${two(now.getMinutes())}:${two(now.getSeconds())}`;
  return `${day}T${time}${offset < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
