// Enters what lets somebody do more, or holds them back, and offers to take it back where the rules allow it
// (docs/care/entries.md).
import type { Refusal } from "../api/answer.ts";
import { enter, type NewEntry, newEntry } from "../api/enter.ts";
import { announce } from "../shell/announce.ts";
import { undo } from "../shell/undo.ts";
import { say } from "./words.ts";

// A lifting, a clearance and a step are withdrawn; a restriction is lifted.
const usualBack = (entry: NewEntry): NewEntry =>
  entry.kind === "restriction" ? newEntry("lifted", { player: entry.player, names: [entry.id] }) : newEntry("withdrawn", { player: entry.player, corrects: entry.id });

// back: what takes it back, where that is not the usual.
export async function enterWithUndo(entry: NewEntry, words: string, again: () => Promise<unknown>, back = usualBack(entry)): Promise<Refusal | undefined> {
  const why = await enter([entry]);
  if (why) return why;
  await again();
  offer(back, words, again);
  return undefined;
}

// What stays once it is entered.
export async function enterForGood(entry: NewEntry, words: string, again: () => Promise<unknown>): Promise<Refusal | undefined> {
  const why = await enter([entry]);
  if (why) return why;
  await again();
  announce(words);
  return undefined;
}

function offer(back: NewEntry, words: string, again: () => Promise<unknown>): void {
  undo.offer({
    words,
    undo: async () => {
      const not = await enter([back]);
      announce(not ? not.words : say("told.undone"));
      await again();
    },
  });
}
