// What coaches are asked when a season is over: few questions of our own, answered in a talk and written down by the lead
// (docs/model/coach_survey.md). An answer is a line, its key first.
import type { Coach } from "./coach.ts";

export const kForm = "season-end-2026-11"; // the questions, so that a later form is told from this one
export const kMostLetters = 150; // of a line, with its key, as the ledger takes it

export const kChoices = { time: ["always", "mostly", "seldom"], showing: ["all", "most", "some"], again: ["yes", "with-changes", "no"] } as const;
export const kTexts = ["leaves-out", "keeps", "wish"] as const;

export type ChoiceKey = keyof typeof kChoices;
export type TextKey = (typeof kTexts)[number];
export type Answers = Partial<Record<ChoiceKey | TextKey, string>>;
export type Asked = Coach["asked"][number];

export const kChoiceKeys = Object.keys(kChoices) as ChoiceKey[];
const kKeys: readonly string[] = [...kChoiceKeys, ...kTexts];

// What was left open is no line.
export function linesOf(answers: Answers): string[] {
  return kKeys.flatMap((key) => {
    const answer = answers[key as ChoiceKey | TextKey]?.trim().replace(/\s+/g, " ");
    return answer ? [`${key} ${answer}`] : [];
  });
}

export function answersIn({ answers = [] }: Asked): Answers {
  const out: Answers = {};
  for (const line of answers) {
    const at = line.indexOf(" ");
    const key = line.slice(0, at);
    if (at > 0 && kKeys.includes(key)) out[key as ChoiceKey | TextKey] = line.slice(at + 1);
  }
  return out;
}

export function isChoice<Key extends ChoiceKey>(key: Key, word: string | undefined): word is (typeof kChoices)[Key][number] {
  return word !== undefined && (kChoices[key] as readonly string[]).includes(word);
}

// The latest of this form, of each coach who answered it.
export function latestOf({ asked }: Coach): Asked | undefined {
  return asked.filter(({ form }) => form === kForm).sort((left, right) => right.day.localeCompare(left.day))[0];
}
