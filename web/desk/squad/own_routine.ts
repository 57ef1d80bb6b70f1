// The order in which a squad does its drills: a house routine of the squad's own, routines/SQUAD.toml, made from the one it
// has, with its lines in another order (docs/formats/catalogue.md, 'House routines').
import type { components } from "../../shared/api.ts";
import { same, type Content } from "./standing.ts";

export type ClubDocument = components["schemas"]["ClubDocument"];
export type Change = components["schemas"]["ChangeClubDocuments"]["changes"][number];

export interface Order {
  routine: string; // as the squad's document names it: an id, or a file
  drills: string[];
}

export const pathOfSquad = (squad: string): string => `squads/${squad}.toml`;
const pathOfOwn = (squad: string): string => `routines/${squad}.toml`;
export const ownRoutine = (squad: string): string => `../${pathOfOwn(squad)}`;

const at = (documents: ClubDocument[], path: string): ClubDocument | undefined => documents.find((one) => one.path === path);
const lines = (routine: Content): Content[] => (Array.isArray(routine["drill"]) ? (routine["drill"] as Content[]) : []);
const idOf = (line: Content): string => String(line["id"]);

// The routine's document, wherever it lies; absent where neither the club nor the catalogue has it.
function documentOf(name: string, documents: ClubDocument[], shipped: Content[]): Content | undefined {
  if (name.endsWith(".toml")) return at(documents, name.replace(/^(\.\.\/)+/, ""))?.content;
  return at(documents, `routines/${name}.toml`)?.content ?? shipped.find((routine) => routine["id"] === name);
}

export function orderOf(squad: string, documents: ClubDocument[], shipped: Content[]): Order | undefined {
  const name = (at(documents, pathOfSquad(squad))?.content as Content | undefined)?.["routine"];
  const routine = typeof name === "string" ? documentOf(name, documents, shipped) : undefined;
  return routine && { routine: String(name), drills: lines(routine).map(idOf) };
}

// The squad's document and its own routine as they are to be. Taken back, the squad names the routine it had, and its own goes.
export function changesOf(squad: string, order: Order, content: Content, documents: ClubDocument[], shipped: Content[]): { content: Content; more: Change[] } {
  const path = pathOfOwn(squad);
  const own = at(documents, path);
  const instead = own?.digest === undefined ? {} : { instead_of: own.digest };
  const after = { ...content, routine: order.routine };
  if (order.routine !== ownRoutine(squad)) return { content: after, more: own ? [{ path, ...instead }] : [] };
  const from = documentOf(String(content["routine"]), documents, shipped) ?? own?.content ?? {};
  const place = (line: Content): number => (order.drills.includes(idOf(line)) ? order.drills.indexOf(idOf(line)) : order.drills.length);
  const drill = [...lines(from)].sort((one, other) => place(one) - place(other));
  return { content: after, more: [{ path, ...instead, content: { ...from, id: squad, drill } as unknown as Record<string, never> }] };
}

export const isContested = (wanted: Order, before: Order | undefined, now: Order | undefined): boolean => !same(now, before) && !same(now, wanted);
