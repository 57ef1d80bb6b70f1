// The club's own drills: documents of its folder (docs/model/club_documents.md), each with the digest that a change is made
// against, and what a change of them is.
import type { BodyOf, Said } from "../api/answer.ts";
import type { DrillDocument } from "./drill_document.ts";
import { tomlOf } from "./edit/write_toml.ts";

export type Change = BodyOf<"change-club-documents">["changes"][number];
type Documents = Said<"club-documents">["documents"];

export interface OwnDrill {
  digest: string;
  drill: DrillDocument;
}
export interface ClubFolder {
  drills: Map<string, OwnDrill>; // by id
  squads: { path: string; digest: string; content: Record<string, unknown> }[];
}

const kDrill = /^drills\/([a-z0-9-]+)\.toml$/;
const kHere = ".."; // from squads/ the club's folder itself, which holds drills/
export const pathOfDrill = (id: string): string => `drills/${id}.toml`;

export function folderOf(documents: Documents): ClubFolder {
  const folder: ClubFolder = { drills: new Map(), squads: [] };
  for (const { path, digest, content } of documents) {
    const id = kDrill.exec(path)?.[1];
    if (digest === undefined || content === undefined) continue;
    if (id !== undefined) folder.drills.set(id, { digest, drill: content as unknown as DrillDocument });
    else if (path.startsWith("squads/")) folder.squads.push({ path, digest, content: content as Record<string, unknown> });
  }
  return folder;
}

// The contract says a table of any content in a word that the types take for an empty one.
const table = (content: Record<string, unknown>) => content as Record<string, never>;

// The file, and with the first one every squad that names no catalogue of its own is told of the folder, so that its plans
// may use it.
export function savingChanges(folder: ClubFolder, drill: DrillDocument, instead_of: string | undefined): Change[] {
  const unwired = folder.squads.filter(({ content }) => content.catalogue === undefined);
  return [
    { path: pathOfDrill(drill.id), text: tomlOf(drill), ...(instead_of === undefined ? {} : { instead_of }) },
    ...unwired.map(({ path, digest, content }) => ({ path, instead_of: digest, content: table({ ...content, catalogue: kHere }) })),
  ];
}

// Back to what was there. The squads stay told of the folder, unless there was none of its drills before.
export function undoingChanges(before: ClubFolder, id: string, changed: Documents): Change[] {
  const was = before.drills.get(id);
  const first = before.drills.size === 0;
  return changed.flatMap(({ path, digest }): Change[] => {
    const against = digest === undefined ? {} : { instead_of: digest };
    if (path === pathOfDrill(id)) return [{ path, ...against, ...(was ? { text: tomlOf(was.drill) } : {}) }];
    const squad = before.squads.find((one) => one.path === path);
    return first && squad ? [{ path, ...against, content: table(squad.content) }] : [];
  });
}

export interface Merged {
  drill: DrillDocument;
  both: string[]; // fields that both changed, and otherwise: mine stand
}

// Two leads began with the same drill. Field by field: what only one of them changed is as that one has it.
export function merged(base: DrillDocument, mine: DrillDocument, theirs: DrillDocument): Merged {
  const [b, m, t] = [base, mine, theirs].map((one) => one as unknown as Record<string, unknown>) as [Record<string, unknown>, Record<string, unknown>, Record<string, unknown>];
  const same = (one: unknown, other: unknown) => written(one) === written(other);
  const drill: Record<string, unknown> = {};
  const both: string[] = [];
  for (const key of new Set([...Object.keys(m), ...Object.keys(t)])) {
    const theirs_stands = same(m[key], b[key]);
    if (!theirs_stands && !same(t[key], b[key]) && !same(m[key], t[key])) both.push(key);
    const value = theirs_stands ? t[key] : m[key];
    if (value !== undefined) drill[key] = value;
  }
  return { drill: drill as unknown as DrillDocument, both };
}

// The order of keys says nothing.
function written(value: unknown): string {
  return JSON.stringify(value, (_, one: unknown) => (one && typeof one === "object" && !Array.isArray(one) ? Object.fromEntries(Object.entries(one).sort(([a], [c]) => (a < c ? -1 : 1))) : one)) ?? "";
}
