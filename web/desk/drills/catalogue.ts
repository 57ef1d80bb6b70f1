// The club's catalogue, asked for once and kept while the desk is open: drills are nobody's secret and change seldom.
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { fetchRendering } from "../../shared/words/renderings.ts";
import { language } from "../../shared/words/words.ts";
import { spanishDrills } from "../shell/places.ts";
import { folderOf, type ClubFolder } from "./own_drills.ts";
import type { CatalogueDocument } from "./drill_document.ts";

export const catalogue = signal<CatalogueDocument | undefined>(undefined);
export const clubFolder = signal<ClubFolder | undefined>(undefined); // undefined where the server has none
export const refused = signal<Refusal | undefined>(undefined);
let asking = false;

export async function fetchCatalogue(): Promise<void> {
  if (asking) return;
  asking = true;
  const [answer, documents] = await Promise.all([ask("catalogue", {}), ask("club-documents", {})]);
  asking = false;
  refused.value = answer.ok ? undefined : answer;
  if (!answer.ok) return;
  clubFolder.value = documents.ok ? folderOf(documents.said.documents) : undefined;
  const given = answer.said.catalogue as unknown as CatalogueDocument;
  const own = [...(clubFolder.value?.drills.values() ?? [])].map(({ drill }) => drill);
  catalogue.value = { ...given, routines: answer.said.routines as unknown as CatalogueDocument["routines"] & object, drills: [...given.drills.filter(({ id }) => !clubFolder.value?.drills.has(id)), ...own] };
}

export function useCatalogue(): CatalogueDocument | undefined {
  useEffect(() => {
    if (!catalogue.peek()) void fetchCatalogue();
  }, []);
  useEffect(() => {
    if (language.value === "es") void fetchRendering("es", spanishDrills);
  }, [language.value]);
  return catalogue.value;
}
