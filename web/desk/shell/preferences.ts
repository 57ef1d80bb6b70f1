// What somebody set on this computer: the only thing that the desk leaves in the browser, and nothing of it is about anybody.
import { effect, signal } from "@preact/signals";
import { language, type Language } from "../../shared/words/words.ts";

const kPlace = "lanework-desk";

interface Kept {
  language?: Language;
  without_names?: boolean;
}

function kept(): Kept {
  try {
    return JSON.parse(localStorage.getItem(kPlace) ?? "{}") as Kept;
  } catch {
    return {};
  }
}

// For a wall that others look at: no name stands anywhere. It outlives a reload, since the projector does too.
export const withoutNames = signal(false);

export function readPreferences(): void {
  const { language: chosen, without_names } = kept();
  language.value = chosen === "es" || chosen === "en" ? chosen : navigator.languages[0]?.toLowerCase().startsWith("es") ? "es" : "en";
  withoutNames.value = without_names === true;
  effect(() => {
    document.documentElement.lang = language.value;
    document.body.classList.toggle("without-names", withoutNames.value);
    try {
      localStorage.setItem(kPlace, JSON.stringify({ language: language.value, without_names: withoutNames.value } satisfies Kept));
    } catch {
      // A window that keeps nothing: the choice holds until it is closed.
    }
  });
}
