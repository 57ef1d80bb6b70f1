// '30 seconds', '2 minutes': how long the next try waits.
export function durationWords(milliseconds: number, language: string): string {
  const seconds = Math.ceil(milliseconds / 1000);
  const [value, unit] = seconds < 60 ? [seconds, "second"] : [Math.ceil(seconds / 60), "minute"];
  return new Intl.NumberFormat(language, { style: "unit", unit, unitDisplay: "long" }).format(value);
}
