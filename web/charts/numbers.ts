// Numbers on axes: where the ticks stand and how they read.
import { ticks } from "d3";
import { type Spoken, spokenNow } from "./spoken.ts";

const formats = (language: Spoken) => ({
  plain: new Intl.NumberFormat(language, { maximumSignificantDigits: 4, useGrouping: "min2" }),
  huge: new Intl.NumberFormat(language, { maximumSignificantDigits: 3, notation: "compact", compactDisplay: "long" }),
  tiny: new Intl.NumberFormat(language, { maximumSignificantDigits: 3, notation: "scientific" }),
});
const kFormats = { en: formats("en"), es: formats("es") };

// Thousands stand apart in Spanish, as in the report's sentences: a point there would be read as a decimal one.
const apart = (parts: Intl.NumberFormatPart[]): string => parts.map(({ type, value }) => (type === "group" ? "\u00A0" : value)).join("");

export function numberText(value: number): string {
  const size = Math.abs(value);
  const language = spokenNow();
  const { plain, huge, tiny } = kFormats[language];
  if (size >= 1e6) return huge.format(value);
  if (size > 0 && size < 1e-5) return tiny.format(value);
  return language === "es" ? apart(plain.formatToParts(value)) : plain.format(value);
}

const kMantissas = [[1, 2, 5], [1, 3], [1]];

// Round numbers of a logarithmic axis, as many as there is room for; both ends may be left bare.
export function logTicks(low: number, high: number, most: number): number[] {
  const from = Math.floor(Math.log10(low));
  const to = Math.ceil(Math.log10(high));
  const within = (mantissas: number[], everyPower: number) => {
    const found: number[] = [];
    for (let power = from; power <= to; power += everyPower) {
      for (const mantissa of mantissas) {
        const value = Number(`${mantissa}e${power}`); // 3e-7 exactly as written; 3 * 10 ** -7 is not
        if (value >= low && value <= high) found.push(value);
      }
    }
    return found;
  };
  for (const mantissas of kMantissas) {
    const found = within(mantissas, 1);
    if (found.length <= most) return found;
  }
  return within([1], Math.ceil((to - from) / most));
}

export function ticksOf(low: number, high: number, most: number, log: boolean): number[] {
  if (log) return logTicks(low, high, most);
  return ticks(low, high, most);
}

// Ticks of what is counted: whole numbers only.
export function wholeTicks(high: number, most: number): number[] {
  return ticks(0, high, most).filter(Number.isInteger);
}
