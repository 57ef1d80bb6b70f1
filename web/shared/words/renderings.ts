// The shipped drills in another language than the catalogue's own English: fetched when that language is chosen, and not
// before. What is not rendered, or could not be fetched, is shown in English.
import { signal } from "@preact/signals";
import { language, type Language } from "./words.ts";

export interface DrillWords {
  name: string;
  how: string;
  rungs: Record<string, string>; // by the rung's key
  cues: string[]; // in the catalogue's order, like all here
  watch: { fault: string; cue: string }[];
  stop_if: string[];
}
type Rendering = Record<string, DrillWords>;

const rendered = signal<Partial<Record<Language, Rendering>>>({});

// A page that no service worker serves yet asks once more when one does: only then does it hold the file.
export async function fetchRendering(of: Language, url: string): Promise<void> {
  if (rendered.peek()[of]) return;
  const workers = navigator.serviceWorker;
  if (workers && !workers.controller) workers.addEventListener("controllerchange", () => void fetch(url), { once: true });
  try {
    const response = await fetch(url);
    if (response.ok) rendered.value = { ...rendered.peek(), [of]: (await response.json()) as Rendering };
  } catch {
    // No signal: the next opening tries again.
  }
}

export function drillWords(drill: string): DrillWords | undefined {
  return rendered.value[language.value]?.[drill];
}
