// What a coach set on this phone. Kept on it, and nowhere else.
import type { Language } from "../words/words.ts";

export interface Preferences {
  voice: boolean;
  sound: boolean;
  vibration: boolean;
  sun: boolean;
  left_handed: boolean;
  still: boolean; // pictures do not move
  language: Language;
  first_evening: "new" | "put-away" | "read"; // whether the pages for a first evening are offered
}

export function firstPreferences(languages: readonly string[]): Preferences {
  const spanish = languages[0]?.toLowerCase().startsWith("es") ?? false;
  return {
    voice: false, // a phone that speaks unasked is a nuisance
    sound: true,
    vibration: true,
    sun: false,
    left_handed: false,
    still: false,
    language: spanish ? "es" : "en",
    first_evening: "new",
  };
}
