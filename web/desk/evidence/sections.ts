// A report's sections with the ids that addresses name them by.
import type { Season } from "../../shared/api.ts";

export type Section = Season["sections"][number];
export type Block = Section["blocks"][number];
export interface Named {
  id: string; // 'what-somebody-should-look-at'
  section: Section;
}

const kLongest = 60; // an address' word has 64 letters

export function namedSections(season: Season): Named[] {
  const taken = new Map<string, number>();
  return season.sections.map((section) => {
    const word = section.heading.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").slice(0, kLongest).replace(/^-|-$/g, "");
    const before = taken.get(word) ?? 0;
    taken.set(word, before + 1);
    return { section, id: before === 0 ? word : `${word}-${before + 1}` };
  });
}
