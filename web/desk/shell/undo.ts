// The last thing that was done, as long as it can be taken back: for everything that is not an erasure.
import { signal } from "@preact/signals";
import { announce } from "./announce.ts";

export interface Undoable {
  words: string; // what was done: 'Bram is charged with U13 Kestrels.'
  undo(): Promise<void> | void;
}

export const kUndoSeconds = 20;

const offered = signal<Undoable | undefined>(undefined);
let over: ReturnType<typeof setTimeout> | undefined;

function forget(): void {
  clearTimeout(over);
  offered.value = undefined;
}

// Not while somebody's hand or keyboard is on the bar.
function hold(): void {
  clearTimeout(over);
}

function letGo(): void {
  clearTimeout(over);
  over = setTimeout(forget, kUndoSeconds * 1000);
}

export const undo = {
  offered,
  offer(done: Undoable): void {
    offered.value = done;
    announce(done.words);
    letGo();
  },
  async take(): Promise<void> {
    const done = offered.peek();
    forget();
    await done?.undo();
  },
  forget,
  hold,
  letGo,
};
