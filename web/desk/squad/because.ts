// Why a session changed or an evening falls out, in the language that is set, from the codes beside the server's English
// sentence (docs/formats/block.md, 'Codes of reasons'); of a code that is not known here, the sentence itself.
import { duration, type Names, type Told } from "../../shared/evening/reason_words.ts";
import { list, weekday } from "../../shared/words/words.ts";
import { many, say } from "./words.ts";

export interface Because {
  code: string;
  seconds?: number;
  days_to_match?: number;
  days_to_match_before?: number;
  turnout?: number;
  turnout_before?: number;
  drills?: string[];
  eccentric?: string[];
  all_new?: boolean;
  families?: { family: string; seconds: number }[];
  after?: PastBecause[];
  name?: string;
  strip?: string;
}
interface PastBecause {
  code: string;
  date?: string;
  week?: number;
  count?: number;
}

const namesOf = (names: Names, drills: string[] = []): string => list(drills.map((drill) => names.drill(drill)));

function daysTo(days: number): string {
  return days === 0 ? say("because.today") : days === 1 ? say("because.tomorrow") : many("because_in_days", days);
}

const kPastSessions = ["missed-session", "cut-session", "session-without-word", "session-half-did", "session-few-did", "shorter-session", "session-with-less"] as const;

function pastWords({ code, date = "", week = 0, count = 0 }: PastBecause): string | undefined {
  const known = kPastSessions.find((each) => each === code);
  if (known) return say(`because.past.${known}`, { day: weekday(date) });
  if (code === "missed-week") return say("because.past.missed-week", { week });
  return code === "sessions" ? many("because_sessions", count, { week }) : undefined;
}

function wanting(what: "behind" | "owed", { families = [], after = [] }: Because, names: Names): string | undefined {
  const past = after.map(pastWords);
  if (past.includes(undefined)) return undefined;
  const key = families.length === 1 ? "because.family_alone" : "because.family";
  const short = list(families.map(({ family, seconds }) => say(key, { family: names.family(family), time: duration(seconds) })));
  const tail = past.length > 0 ? say("because.after", { past: list(past as string[]) }) : what === "behind" ? say("because.after_nothing") : "";
  return many(`because_${what}`, families.length, { families: short }) + tail;
}

// More than three would not be read.
function longerWords({ drills = [], all_new = false }: Because, names: Names): string {
  const who = drills.length > 3 ? many("because_of_its_drills", drills.length) : namesOf(names, drills);
  return many(all_new ? "because_longer_new" : "because_longer", drills.length, { drills: who });
}

function fixedWords({ drills = [], eccentric = [] }: Because, names: Names): string {
  const by_lead = drills.length > 0 ? [many("because_fixed", drills.length, { drills: namesOf(names, drills) })] : [];
  return [...by_lead, ...(eccentric.length > 0 ? [many("because_eccentric", eccentric.length, { drills: namesOf(names, eccentric) })] : [])].join(", ");
}

function matchWords({ days_to_match: now = 0, days_to_match_before: then }: Because): string {
  return then === undefined ? say("because.match", { when: daysTo(now) }) : say("because.match_not", { when: daysTo(now), before: daysTo(then) });
}

const kPlain = ["new-session", "other-time", "no-match", "rung-confirmed", "less-time", "too-much", "week-changed", "away", "out-of-season", "match-warm-up"] as const;

function becauseWords(because: Because, names: Names): string | undefined {
  const { code, seconds = 0, turnout = 0, turnout_before: before = 0 } = because;
  const plain = kPlain.find((each) => each === code);
  if (plain) return say(`because.${plain}`);
  switch (code) {
    case "slot-longer":
    case "slot-shorter":
      return say(`because.${code}`, { time: duration(seconds) });
    case "match":
      return matchWords(because);
    case "turnout":
      return say("because.turnout", { now: turnout, before });
    case "closed":
      return many("because_closed", because.drills?.length ?? 0, { drills: namesOf(names, because.drills) });
    case "fixed":
      return fixedWords(because, names);
    case "more-time":
      return longerWords(because, names);
    case "behind":
    case "owed":
      return wanting(code, because, names);
    case "holiday":
      return because.name;
    case "no-lane":
      return say("because.no-lane", { strip: because.strip ?? "" });
    default:
      return undefined;
  }
}

export function becauseTold(because: Because | undefined, why: string, names: Names): Told {
  const words = because && becauseWords(because, names);
  return words ? { words, english: false } : { words: why, english: true };
}
