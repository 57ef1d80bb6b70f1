// What happens to an evening. `at` is wall-clock milliseconds.
import type { PlanAnswer, PlanItem } from "../../shared/engine/answers.ts";
import type { Entry } from "../keep/entry.ts";
import type { DidIt, Facts, Sore } from "./evening_state.ts";

export interface NewRung {
  key: string;
  words: string;
}

export type EveningEvent =
  | { event: "facts"; facts: Partial<Facts> }
  | { event: "sore"; sore: Sore }
  | { event: "planned"; plan: PlanAnswer }
  | { event: "rest-planned"; items: PlanItem[] } // after the current one
  | { event: "go"; screen: "tonight" | "lay-out" | "run" | "wrap-up" }
  | { event: "start"; at: number }
  | { event: "done"; item: number; at: number }
  | { event: "skip"; item: number; at: number }
  | { event: "easier"; item: number; rung?: NewRung }
  | { event: "harder"; item: number; rung?: NewRung }
  | { event: "back"; item: number; at: number }
  | { event: "pause"; at: number }
  | { event: "go-on"; at: number }
  | { event: "sheet-opened"; player: string } // whom to call at home
  | { event: "hurt"; player: string; place?: string; signs?: string[] }
  | { event: "there"; count: number }
  | { event: "did-it"; did_it: DidIt }
  | { event: "needs-help"; drill: string; yes: boolean }
  | { event: "kept"; entries: Entry[] } // by whoever keeps them, with their ids
  | { event: "take-back"; id: string } // a hurt, a soreness
  | { event: "correct-wrap-up" }
  | { event: "wrapped-up"; at: number; players?: string[] }; // by id, where somebody ticked names
