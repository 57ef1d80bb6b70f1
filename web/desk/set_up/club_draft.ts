// What is being written of the club: the documents as the server has them, and over them what was typed and not saved yet.
// It stays while one looks at another screen, and nowhere but in this page. Saving is one change, whole or not at all
// (docs/model/club_documents.md).
import { computed, signal } from "@preact/signals";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { type Content, putTogether } from "../api/put_together.ts";

export type { Content } from "../api/put_together.ts";

interface There {
  digest: string;
  content?: Content; // not of a roster: what stands in it is never told
}
type Written = { content: Content } | { text: string } | { gone: true };
// over: what was there when it was begun. What somebody else puts there later is not overwritten unseen.
type Draft = Written & { over: There | undefined };

const kList = /^roster[^/]*\.csv$/;
const there = signal<Map<string, There>>(new Map());
const drafts = signal<Map<string, Draft>>(new Map());

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
  drafts.value = new Map(drafts.peek()).set(path, { ...written, over: overOf(path) });
}

function overOf(path: string): There | undefined {
  const draft = drafts.peek().get(path);
  return draft ? draft.over : there.peek().get(path);
}

// The keys that are given; one that is undefined goes.
export function change(path: string, keys: Content): void {
  const content = Object.fromEntries(Object.entries({ ...contentOf(path), ...keys }).filter(([, value]) => value !== undefined));
  write(path, { content });
}

export function remove(path: string): void {
  const next = new Map(drafts.peek());
  const over = overOf(path);
  if (over ?? there.peek().get(path)) next.set(path, { gone: true, over });
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

// One document of which somebody else saved another meanwhile.
export interface Met {
  path: string;
  both: string[]; // keys that both changed: mine stand
  theirs: Content | undefined; // none: it is a list of players, or one of the two took it out
}
const kRowsOfNoOrder = ["strip", "holiday", "week", "match"];

type Change = { path: string; instead_of?: string; content?: Content; text?: string };
export interface Saved {
  refused?: Refusal;
  met?: Met[]; // what somebody else saved meanwhile, put together with what was typed
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

// Somebody else was first: what both wrote is put together over what is there now, and nothing is saved before it was seen.
function meet(): Met[] {
  const met: Met[] = [];
  const next = new Map(drafts.peek());
  for (const [path, draft] of drafts.peek()) {
    const theirs = there.peek().get(path);
    if (draft.over?.digest === theirs?.digest) continue;
    const { met: one, draft: now } = metWith(path, draft, theirs);
    met.push(one);
    next.set(path, now);
  }
  drafts.value = next;
  return met;
}

function metWith(path: string, draft: Draft, theirs: There | undefined): { met: Met; draft: Draft } {
  if (!("content" in draft) || !theirs?.content) return { met: { path, both: [], theirs: undefined }, draft: { ...draft, over: theirs } };
  const { content, both } = putTogether(draft.over?.content ?? {}, draft.content, theirs.content, kRowsOfNoOrder);
  return { met: { path, both, theirs: theirs.content }, draft: { content, over: theirs } };
}

export async function saveClub(): Promise<Saved> {
  const before = new Map(there.peek());
  const changes = [...drafts.peek()].map(([path, { over, ...written }]) => ({ path, ...(over ? { instead_of: over.digest } : {}), ...("gone" in written ? {} : written) }));
  const lists = await listsOf(changes.map(({ path }) => path));
  const refused = await send(changes);
  if (refused?.refused === "changed-meanwhile") {
    const silent = await readClub();
    return silent ? { refused: silent } : { refused, met: meet() };
  }
  if (refused) return { refused };
  forgetDrafts();
  const back = changes.map(({ path }) => ({ path, before: before.get(path), list: lists.get(path) }));
  if (back.some((one) => one.before !== undefined && one.before.content === undefined && one.list === undefined)) return {};
  // Against what was saved just now: what came after it is not undone with it.
  const changes_back = back.map((one) => ({ path: one.path, ...insteadOf(one.path), ...(one.before?.content ? { content: one.before.content } : {}), ...(one.list === undefined ? {} : { text: one.list }) }));
  return { undo: () => send(changes_back) };
}
