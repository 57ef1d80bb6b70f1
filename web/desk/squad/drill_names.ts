// Drills, rungs and families in words. The names are the catalogue's; a drill that it has not, or of which nothing was read
// yet, is told by its id, which is its name in short.
import { signal } from "@preact/signals";
import type { DoorTable, DoorValue } from "../../shared/engine/door_value.ts";
import { useEffect } from "preact/hooks";
import type { Names } from "../../shared/evening/reason_words.ts";
import { drillWords, fetchRendering } from "../../shared/words/renderings.ts";
import { language } from "../../shared/words/words.ts";
import { ask } from "../api/ask.ts";
import { spanishDrills } from "../shell/places.ts";
import { say, type Key } from "./words.ts";
import en from "./words/en.json";

const catalogue = signal<DoorTable>({});
export const namesAreSettled = signal(false); // the catalogue is there, or will not come now

function knowCatalogue(read: DoorTable): void {
  if (Array.isArray(read["drills"])) catalogue.value = read;
}

const tables = (value: DoorValue | undefined): DoorTable[] => (Array.isArray(value) ? (value as DoorTable[]) : []);

export function drillOf(id: string): DoorTable | undefined {
  return tables(catalogue.value["drills"]).find((drill) => drill["id"] === id);
}

export function familyOf(drill: string): string | undefined {
  const family = drillOf(drill)?.["family"];
  return typeof family === "string" ? family : undefined;
}

export function inWords(id: string): string {
  const words = id.replace(/-/g, " ");
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

export function nameOfDrill(id: string): string {
  return drillWords(id)?.name ?? (drillOf(id)?.["name"] as string | undefined) ?? inWords(id);
}

// What changes on that rung: 'knees down'.
export function rungWords(drill: string, rung: string): string {
  const own = tables(drillOf(drill)?.["rung"]).find((each) => each["key"] === rung);
  return drillWords(drill)?.rungs[rung] ?? (own?.["change"] as string | undefined) ?? rung.replace(/-/g, " ");
}

export function familyName(family: string): string {
  return Object.hasOwn(en.family, family) ? say(`family.${family}` as Key) : inWords(family);
}

let reading: Promise<unknown> | undefined;

// The catalogue, read once by the first screen that names drills, and their names in the language that is set.
export function useDrillNames(): void {
  const wanted = language.value;
  useEffect(() => {
    reading ??= ask("catalogue", {}).then((answer) => {
      if (answer.ok) knowCatalogue(answer.said.catalogue as unknown as DoorTable);
      else reading = undefined; // the next screen tries again
      namesAreSettled.value = true;
    });
    if (wanted === "es") void fetchRendering("es", spanishDrills);
  }, [wanted]);
}

export const names: Names = { drill: nameOfDrill, family: (key) => familyName(key).toLowerCase(), rung: rungWords };
