// The words about what is kept and sent, as words/en.json has them under 'keeping'.
import type { VerdictWord } from "../keep/form.ts";
import type { Refusal } from "../keep/step.ts";
import type { Trouble } from "../sync/exchange.ts";

export interface KeepingWords {
  waiting: { none: string; one: string; many: string };
  contact: { never: string; at: string };
  send: string;
  sending: string;
  read_only: string;
  take_over: string;
  reload: string;
  newer: string;
  renew: string;
  names_locked: string;
  evenings: { tonight: string; match_day: string; none: string; back: string };
  refused: Record<Refusal, string>;
  told: Record<Exclude<VerdictWord, "stored" | "known" | "dropped"> | "seen", string>;
  trouble: Record<Trouble, string>;
}
