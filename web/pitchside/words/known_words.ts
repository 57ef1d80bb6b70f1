// 'Sunday 20:10', as the club's server says it, in the language that is set.
import { language } from "./words.ts";

const kDays = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
const kFirstSunday = Date.UTC(2023, 0, 1, 12);

export function knownWords(when: string): string {
  const day = kDays.findIndex((name) => when.startsWith(name));
  if (day < 0 || language.value === "en") return when;
  const word = new Intl.DateTimeFormat(language.value, { weekday: "long", timeZone: "UTC" }).format(kFirstSunday + day * 86_400_000);
  return when.replace(kDays[day]!, word);
}
