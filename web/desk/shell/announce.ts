// What changed, for whoever does not see it change. One sentence at a time; the same one twice is said twice.
import { signal } from "@preact/signals";

export const announced = signal({ words: "", times: 0 });

export function announce(words: string): void {
  announced.value = { words, times: announced.peek().times + 1 };
}
