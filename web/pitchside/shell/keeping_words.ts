// The words about what is kept and sent, as words/en.json has them under 'keeping'.
import type { VerdictWord } from "../keep/form.ts";
import type { WeakCode } from "../keep/code.ts";
import type { Refusal } from "../keep/step.ts";
import type { Trouble } from "../sync/exchange.ts";

export interface LockWords {
  choose_title: string;
  choose_how: string;
  code: string;
  again: string;
  letters: string;
  show: string;
  keep: string;
  differs: string;
  weak: Record<WeakCode, string>;
  title: string;
  open: string;
  opening: string;
  wrong: string;
  wait: string;
  forgotten: string;
  forgotten_how: string;
  link: string;
  gone: string;
  hurt_then: string;
  now: string;
}

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
  evenings: { tonight: string; match_day: string; none: string; back: string; coming: string; later: string; minutes: string; written: string };
  lock: LockWords;
  rescue: { title: string; what: string; again: string; save: string };
  newer_form: { title: string; what: string; look: string };
  refused: Record<Refusal, string>;
  told: Record<Exclude<VerdictWord, "stored" | "known" | "dropped"> | "seen", string>;
  trouble: Record<Trouble, string>;
}
