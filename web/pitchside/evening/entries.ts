// Entries of the ledger that an evening makes (docs/formats/ledger.md), without id, sequence and time, which whoever
// keeps them adds.
import type { DidIt, Mark } from "./evening_state.ts";

interface OfSession {
  squad: string;
  day: string;
  start: string;
}

export type NewEntry =
  | ({ kind: "session-started" } & OfSession)
  | ({ kind: "drill-marked"; drill: string; mark: Mark } & OfSession)
  | ({ kind: "attendance"; there: number; players?: string[] } & OfSession)
  | ({ kind: "wrap-up"; happened: "held" | "cut-short" | "missed"; did_it?: DidIt; minutes?: number } & OfSession)
  | { kind: "hurt"; player: string; place?: string; signs?: string[] }
  | { kind: "soreness"; player: string; place?: string; before: number };
