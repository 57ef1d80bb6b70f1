// What families answered, of one child, as the server tells it: whether each purpose stands, and what the child itself said.
import type { Said } from "../api/answer.ts";

export type Consents = Said<"consents">["players"][number];

export const kPurposes = ["training", "injury-record", "statistics"] as const;

// Of the child itself: what it said last to any of the purposes.
export function childSaid({ consents }: Consents): "given" | "withheld" | "never-asked" {
  const own = consents.filter(({ by }) => by === "player");
  if (own.length === 0) return "never-asked";
  return own.every(({ answer }) => answer === "given") ? "given" : "withheld";
}

export const isMissing = ({ stands }: Consents): boolean => kPurposes.some((purpose) => stands[purpose] === "never-asked");
export const isWithheld = ({ stands }: Consents): boolean => kPurposes.some((purpose) => stands[purpose] === "withheld");
