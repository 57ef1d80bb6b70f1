// What is being written of the club: the documents as the server has them, and over them what was typed and not saved yet.
// It stays while one looks at another screen, and nowhere but in this page. Saving is one change, whole or not at all
// (docs/model/club_documents.md).
import { computed, signal } from "@preact/signals";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";

export type Content = Record<string, unknown>;
interface There {
  digest: string;
  content?: Content; // not of a roster: what stands in it is never told
}
type Written = { content: Content } | { text: string } | { gone: true };

const kList = /^roster[^/]*\.csv$/;
const there = signal<Map<string, There>>(new Map());
const drafts = signal<Map<string, Written>>(new Map());

export const unsaved = computed(() => [...drafts.value.keys()]);
// Those that are to go are none any more.
export const paths = computed(() => [...new Set([...there.value.keys(), ...drafts.value.keys()])].filter((path) => !isGone(drafts.value.get(path))).sort());

function isGone(written: Written | undefined): boolean {
  return written !== undefined && "gone" in written;
}

function know(documents: Said<"club-documents">["documents"]): void {
  const now = new Map(there.peek());
  for (const { path, digest, content } of documents) {
    if (digest === undefined) now.delete(path);
    else now.set(path, { digest, ...(content ? { content: content as Content } : {}) });
  }
  there.value = now;
}

export async function readClub(): Promise<Refusal | undefined> {
  const answer = await ask("club-documents", {});
  if (!answer.ok) return answer;
  there.value = new Map();
  know(answer.said.documents);
  return undefined;
}

export function contentOf(path: string): Content | undefined {
  const draft = drafts.value.get(path);
  if (draft) return "content" in draft ? draft.content : undefined;
  return there.value.get(path)?.content;
}

export function write(path: string, written: Written): void {
  drafts.value = new Map(drafts.peek()).set(path, written);
}

// The keys that are given; one that is undefined goes.
export function change(path: string, keys: Content): void {
  const content = Object.fromEntries(Object.entries({ ...contentOf(path), ...keys }).filter(([, value]) => value !== undefined));
  write(path, { content });
}

export function remove(path: string): void {
  const next = new Map(drafts.peek());
  if (there.peek().has(path)) next.set(path, { gone: true });
  else next.delete(path);
  drafts.value = next;
}

// What brings the drafts back as they are now.
export function draftsAsTheyAre(): () => void {
  const now = drafts.peek();
  return () => (drafts.value = now);
}

// Gives what brings them back.
export function forgetDrafts(): () => void {
  const restore = draftsAsTheyAre();
  drafts.value = new Map();
  return restore;
}

type Change = { path: string; instead_of?: string; content?: Content; text?: string };
export interface Saved {
  refused?: Refusal;
  undo?: () => Promise<Refusal | undefined>; // not there where what was before could not be read
}

async function send(changes: Change[]): Promise<Refusal | undefined> {
  const answer = await ask("change-club-documents", {}, { changes: changes as never });
  if (!answer.ok) return answer;
  await readClub();
  return undefined;
}

const insteadOf = (path: string): { instead_of?: string } => {
  const digest = there.peek().get(path)?.digest;
  return digest === undefined ? {} : { instead_of: digest };
};

// A list of players is told whole to nobody who only looks; whoever puts another in its place has it until that can be undone.
// A line in the book of reads.
async function listsOf(paths_changed: string[]): Promise<Map<string, string>> {
  const texts = new Map<string, string>();
  for (const path of paths_changed.filter((one) => kList.test(one) && there.peek().has(one))) {
    const answer = await ask("roster", { roster: path });
    if (answer.ok) texts.set(path, answer.said.text);
  }
  return texts;
}

export async function saveClub(): Promise<Saved> {
  const before = new Map(there.peek());
  const changes = [...drafts.peek()].map(([path, written]) => ({ path, ...insteadOf(path), ...("gone" in written ? {} : written) }));
  const lists = await listsOf(changes.map(({ path }) => path));
  const refused = await send(changes);
  // Somebody else was first: what is there now is read, what was typed stays, and saving again goes over what was seen.
  if (refused?.refused === "changed-meanwhile") await readClub();
  if (refused) return { refused };
  forgetDrafts();
  const back = changes.map(({ path }) => ({ path, before: before.get(path), list: lists.get(path) }));
  if (back.some((one) => one.before !== undefined && one.before.content === undefined && one.list === undefined)) return {};
  // Against what was saved just now: what came after it is not undone with it.
  const changes_back = back.map((one) => ({ path: one.path, ...insteadOf(one.path), ...(one.before?.content ? { content: one.before.content } : {}), ...(one.list === undefined ? {} : { text: one.list }) }));
  return { undo: () => send(changes_back) };
}
