// What is printed for coaches, as PDF in a page of its own: the card that lies on the grass, without names, and the slip
// with names for the coach's pocket, which stands in the book of reads.
import { dayAfter, mondayOf, momentOf } from "../week/days.ts";
import { say } from "./words.ts";

// '2026-12-01-1815' as addresses of the server name an evening.
export const eveningInPath = ({ date, start }: { date: string; start: string }): string => `${date}-${start.slice(0, 5).replace(":", "")}`;

function Paper({ href, words }: { href: string; words: string }) {
  return (
    <a href={href} target="_blank" rel="noopener" type="application/pdf">
      {words}
    </a>
  );
}

const placeOf = (squad: string): string => `/api/squads/${encodeURIComponent(squad)}`;

export function PaperOfEvening({ squad, at }: { squad: string; at: { date: string; start: string } }) {
  const evening = eveningInPath(at);
  return (
    <p class="row paper not-on-paper">
      <span>{say("paper.evening")}</span>
      <Paper href={`${placeOf(squad)}/card/${evening}`} words={say("paper.card")} />
      <Paper href={`${placeOf(squad)}/slip/${evening}`} words={say("paper.slip")} />
      <span class="soft">{say("paper.noted")}</span>
    </p>
  );
}

// days: of the block's sessions. Cards only of weeks that have one to come. The calendar is a file: it does not follow later plans.
export function PaperOfWeeks({ squad, days }: { squad: string; days: string[] }) {
  const today = momentOf(new Date()).slice(0, 10);
  const own = mondayOf(today);
  const to_come = [own, dayAfter(own, 7)].filter((monday) => days.some((day) => day >= today && mondayOf(day) === monday));
  return (
    <p class="row paper not-on-paper">
      {to_come.length > 0 && <span>{say("paper.cards")}</span>}
      {to_come.map((monday) => (
        <Paper key={monday} href={`${placeOf(squad)}/cards/${monday}`} words={say(monday === own ? "paper.this_week" : "paper.next_week")} />
      ))}
      <a href={`${placeOf(squad)}/calendar`} download={`${squad}.ics`} type="text/calendar">
        {say("paper.calendar")}
      </a>
    </p>
  );
}
