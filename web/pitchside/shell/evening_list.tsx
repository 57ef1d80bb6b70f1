// The coming evenings: tonight's as what to tap now, the week's by their days, the rest folded away.
import type { JSX } from "preact";
import { dayOf } from "../evening/day.ts";
import { keyOf, type HeldEvening } from "./evenings.ts";
import type { KeepingWords } from "./keeping_words.ts";
import type { House } from "./open_house.ts";

const kSoonDays = 8;
const kScaleMinutes = 45; // the length of the line on which slots are drawn

const noonOf = (day: string): Date => new Date(`${day}T12:00:00`);
const part = (day: string, language: string, options: Intl.DateTimeFormatOptions): string => new Intl.DateTimeFormat(language, options).format(noonOf(day));

function endOf(start: string, minutes: number): string {
  const [hours = 0, past = 0] = start.split(":").map(Number);
  const end = (hours * 60 + past + minutes) % 1440;
  return `${String(Math.floor(end / 60)).padStart(2, "0")}:${String(end % 60).padStart(2, "0")}`;
}

interface Shown {
  house: House;
  words: KeepingWords;
  language: string;
}

function Slot({ minutes, words }: { minutes: number; words: KeepingWords }): JSX.Element {
  const scale = Math.max(kScaleMinutes, minutes);
  return (
    <span class="slot">
      <span>{words.evenings.minutes.replace("{minutes}", String(minutes))}</span>
      <svg viewBox={`0 0 ${scale} 4`} preserveAspectRatio="none" aria-hidden="true">
        <line x1="0" x2={scale} y1="3.5" y2="3.5" vector-effect="non-scaling-stroke" />
        <rect width={minutes} height="4" />
      </svg>
    </span>
  );
}

function EveningButton({ one, house, words, described, tonight = false }: Omit<Shown, "language"> & { one: HeldEvening; described?: string; tonight?: boolean }): JSX.Element {
  const { evening, held } = one;
  const written = tonight && house.finished.value.has(one.key); // nothing to do there any more
  return (
    <button type="button" class={tonight && !written ? "evening main" : "evening"} aria-describedby={described} onClick={() => void house.open(one)}>
      {tonight ? <span class="day">{words.evenings.tonight}</span> : null}
      <span class="time">
        {evening.start}–{endOf(evening.start, evening.minutes)}
      </span>
      <span class="squad">{held.package.squad.name}</span>
      <span class="place">{evening.strip}</span>
      {evening.days_to_match === 0 ? <span class="match">{words.evenings.match_day}</span> : null}
      {written ? <span class="written">{words.evenings.written}</span> : <Slot minutes={evening.minutes} words={words} />}
    </button>
  );
}

function Days({ evenings, language, ...shown }: Shown & { evenings: HeldEvening[] }): JSX.Element {
  const days = [...new Set(evenings.map(({ evening }) => evening.day))];
  return (
    <ul class="days">
      {days.map((day) => (
        <li key={day}>
          <p class="date" id={`day-${day}`}>
            <span>{part(day, language, { weekday: "short" })}</span>
            <strong>{part(day, language, { day: "numeric" })}</strong>
            <span>{part(day, language, { month: "short" })}</span>
          </p>
          <div class="on">
            {evenings
              .filter(({ evening }) => evening.day === day)
              .map((one) => (
                <EveningButton key={keyOf(one.held.package.squad.id, one.evening)} one={one} described={`day-${day}`} {...shown} />
              ))}
          </div>
        </li>
      ))}
    </ul>
  );
}

export function EveningList({ house, words, language }: Shown): JSX.Element {
  const all = house.evenings.value;
  const today = dayOf(new Date());
  const last = new Date(noonOf(today));
  last.setDate(last.getDate() + kSoonDays);
  const [tonight, coming] = [all.filter(({ evening }) => evening.day === today), all.filter(({ evening }) => evening.day !== today)];
  const soon = coming.filter(({ evening }) => evening.day < dayOf(last));
  const later = coming.slice(soon.length);
  return (
    <section class="evenings">
      {all.length === 0 ? <p>{words.evenings.none}</p> : null}
      {house.locked.value ? <p role="alert">{words.names_locked}</p> : null}
      {tonight.map((one) => (
        <EveningButton key={one.key} one={one} house={house} words={words} tonight />
      ))}
      {soon.length === 0 ? null : (
        <>
          <h2>{words.evenings.coming}</h2>
          <Days evenings={soon} house={house} words={words} language={language} />
        </>
      )}
      {later.length === 0 ? null : (
        <details>
          <summary>{words.evenings.later}</summary>
          <Days evenings={later} house={house} words={words} language={language} />
        </details>
      )}
    </section>
  );
}
