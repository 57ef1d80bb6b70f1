// What stands in a release by key, in the language that is shown: the rows of its tables, and its remarks.
import type { ReleaseRow } from "../../shared/api.ts";
import { wholeDay } from "../../shared/words/words.ts";
import { termWords } from "../injuries/terms.ts";
import { say } from "./words.ts";

export type CountedBy = "squads" | "settings" | "regions";

// A squad's name is the club's own; settings and regions are words of ours.
export function rowWords(by: CountedBy, { key, name }: ReleaseRow): string {
  if (by === "squads") return name;
  if (key === "not-stated") return say("injuries.not_stated");
  return termWords(by === "settings" ? "setting" : "region", key);
}

const kChangedSince = /^Since the release of (\d{4}-\d\d-\d\d) to (\d{4}-\d\d-\d\d), entries about its days were added, corrected or erased\./;

// The server keeps the sentence as it was given out (core/release/make_release.cpp); undefined where it is another one.
export function remarkWords(line: string): string | undefined {
  const [, from, until] = kChangedSince.exec(line) ?? [];
  return from && until ? say("changed_since", { from: wholeDay(from), until: wholeDay(until) }) : undefined;
}
