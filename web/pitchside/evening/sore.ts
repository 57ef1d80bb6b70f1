// What a sore player does tonight, by the club's pain rule (catalogue/care/pain.toml, own judgement): it holds back and
// refers, and never says what it is.
import type { Sore } from "./evening_state.ts";

const kJoinsInUpTo = 2;
const kSwapsUpTo = 3;
const kReferAtOnce = ["head", "neck", "chest"];

export function takesPart(sore: Sore): "joins in" | "swaps" | "sits out" {
  if (sore.place !== undefined && kReferAtOnce.includes(sore.place)) return "sits out";
  if (sore.points <= kJoinsInUpTo) return "joins in";
  return sore.points <= kSwapsUpTo ? "swaps" : "sits out";
}

// Areas of the body, as docs/formats/drill.md names them, from the top.
export const kPlaces = [
  "head", "neck", "shoulder", "elbow", "wrist-and-hand", "chest", "low-back", "hip-and-groin", "front-thigh",
  "back-thigh", "knee", "lower-leg", "ankle", "foot",
] as const;
export type Place = (typeof kPlaces)[number];
