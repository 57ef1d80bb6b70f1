// Writes a change of what stands into the squad's document, and its order into a routine of its own. Where somebody else
// wrote meanwhile, the two are put together, unless both wrote of the same thing: then nothing is written, and whoever asked
// decides.
import type { Fault } from "../../shared/api.ts";
import { faultWords, type Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { changesOf, isContested, orderOf, pathOfSquad, type ClubDocument, type Order } from "./own_routine.ts";
import { contested, type Content, type Contested, standingOf, type Wanted, withStanding } from "./standing.ts";
import { say } from "./words.ts";

export interface ToKeep extends Wanted {
  order?: Order;
}

// What is contested, and how it stands now.
export interface Others {
  keys: Contested[];
  order: boolean;
  now: Wanted;
}
export type Kept = { kept: true; before: ToKeep; merged: boolean } | { kept: false; refused: Refusal } | { kept: false; contested: Others };

const kTries = 4; // against others that write at the same time

export async function readBooks(squad: string): Promise<ClubDocument[] | Refusal> {
  const answer = await ask("club-documents", {});
  if (!answer.ok) return answer;
  const known = answer.said.documents.some(({ path }) => path === pathOfSquad(squad));
  return known ? answer.said.documents : { ok: false, refused: "not-found", words: say("keep.no_document"), faults: [] };
}

// The shipped routines, from which a squad's own is made.
export async function shippedRoutines(): Promise<Content[]> {
  const answer = await ask("catalogue", {});
  return answer.ok ? (answer.said.routines as unknown as Content[]) : [];
}

function toldOf(refusal: Refusal): Refusal {
  if (refusal.refused !== "club-not-sound") return refusal;
  const faults = refusal.faults.map((fault: Fault & { file?: string }) => `${fault.file ?? ""} ${faultWords(fault)}`.trim()).join(" ");
  return { ...refusal, words: say("keep.not_sound", { faults }) };
}

const contentOf = (squad: string, books: ClubDocument[]): Content => (books.find(({ path }) => path === pathOfSquad(squad))?.content ?? {}) as Content;

// seen: the documents as whoever asks has seen them; without them, as they are now.
export async function keepStanding(squad: string, wanted: ToKeep, seen?: ClubDocument[]): Promise<Kept> {
  const { order } = wanted;
  const shipped = order ? await shippedRoutines() : [];
  let books = seen ?? (await readBooks(squad));
  if (!Array.isArray(books)) return { kept: false, refused: books };
  const standsIn = (documents: ClubDocument[]): ToKeep => {
    const own = order && orderOf(squad, documents, shipped);
    return { ...standingOf(contentOf(squad, documents), wanted), ...(own ? { order: own } : {}) };
  };
  const first = standsIn(books);
  let merged = false;
  for (let tries = 0; ; tries++) {
    const digest = books.find(({ path }) => path === pathOfSquad(squad))?.digest;
    const standing = withStanding(contentOf(squad, books), wanted);
    const { content, more } = order ? changesOf(squad, order, standing, books, shipped) : { content: standing, more: [] };
    const own = { path: pathOfSquad(squad), ...(digest ? { instead_of: digest } : {}), content: content as Record<string, never> };
    const answer = await ask("change-club-documents", {}, { changes: [own, ...more] });
    if (answer.ok) return { kept: true, before: standsIn(books), merged };
    if (answer.refused !== "changed-meanwhile" || tries >= kTries) return { kept: false, refused: toldOf(answer) };
    const again = await readBooks(squad);
    if (!Array.isArray(again)) return { kept: false, refused: again };
    const now = standsIn(again);
    const keys = contested(wanted, first, now);
    const other_order = order !== undefined && isContested(order, first.order, now.order);
    if (keys.length > 0 || other_order) return { kept: false, contested: { keys, order: other_order, now } };
    books = again;
    merged = true;
  }
}
