// The coming evenings, tonight's first and largest.
import type { JSX } from "preact";
import type { HeldEvening } from "./evenings.ts";
import type { KeepingWords } from "./keeping_words.ts";
import { dayOf, type House } from "./open_house.ts";

function dayWords({ evening }: HeldEvening, words: KeepingWords, language: string): string {
  if (evening.day === dayOf(new Date())) return words.evenings.tonight;
  const noon = new Date(`${evening.day}T12:00:00`);
  return new Intl.DateTimeFormat(language, { weekday: "long", day: "numeric", month: "long" }).format(noon);
}

function EveningButton({ one, house, words, language }: { one: HeldEvening; house: House; words: KeepingWords; language: string }): JSX.Element {
  const { evening, held } = one;
  const tonight = evening.day === dayOf(new Date());
  return (
    <button type="button" class={tonight ? "evening main" : "evening"} onClick={() => void house.open(one)}>
      <strong>
        {dayWords(one, words, language)} {evening.start}
      </strong>
      <span>{held.package.squad.name}</span>
      <span>{evening.days_to_match === 0 ? words.evenings.match_day : evening.strip}</span>
    </button>
  );
}

export function EveningList({ house, words, language }: { house: House; words: KeepingWords; language: string }): JSX.Element {
  const evenings = house.evenings.value;
  return (
    <section class="evenings">
      {evenings.length === 0 ? <p>{words.evenings.none}</p> : null}
      {evenings.map((one) => (
        <EveningButton key={one.key} one={one} house={house} words={words} language={language} />
      ))}
      {house.locked.value ? <p role="alert">{words.names_locked}</p> : null}
    </section>
  );
}
