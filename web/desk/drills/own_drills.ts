// The club's own drills: documents of its folder (docs/model/club_documents.md), each with the digest that a change is made
// against, and what a change of them is.
import type { BodyOf, Said } from "../api/answer.ts";
import { type Content, putTogether } from "../api/put_together.ts";
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

// Field by field; what both changed is as mine.
export function merged(base: DrillDocument, mine: DrillDocument, theirs: DrillDocument): Merged {
  const [was, own, other] = [base, mine, theirs].map((one) => one as unknown as Content) as [Content, Content, Content];
  const { content, both } = putTogether(was, own, other);
  return { drill: content as unknown as DrillDocument, both };
}
