// The language that a chart is drawn in: its own few words, and how its numbers are written. Drawing is done in one go, so
// that it is said once, where it begins.
const kWords = {
  en: { nothing: "Nothing to show.", hours_behind: "Hours behind it", beyond: "an arrow: goes on beyond the edge", bare: "nothing to show", limit: "decision limit", alarm: "alarm" },
  es: { nothing: "Nada que mostrar.", hours_behind: "Las horas en que se apoya", beyond: "una flecha: sigue más allá del borde", bare: "nada que mostrar", limit: "límite de decisión", alarm: "aviso" },
};
export type Spoken = keyof typeof kWords;

export const isSpoken = (language: string): language is Spoken => Object.hasOwn(kWords, language);

let spoken: Spoken = "en";

export function speak(language: Spoken): void {
  spoken = language;
}
export const spokenNow = (): Spoken => spoken;
export const word = (which: keyof (typeof kWords)["en"]): string => kWords[spoken][which];
