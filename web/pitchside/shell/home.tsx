// What stands behind the pairing screen until an evening is opened: what waits, when the club was last reached, what is
// in the way.
import type { JSX } from "preact";
import type { Sync } from "../sync/sync.ts";
import type { KeepingWords } from "./keeping_words.ts";

function waitingWords(words: KeepingWords, count: number): string {
  if (count === 0) return words.waiting.none;
  return count === 1 ? words.waiting.one : words.waiting.many.replace("{count}", String(count));
}

export function SyncLine({ sync, words, language }: { sync: Sync; words: KeepingWords; language: string }): JSX.Element {
  const { waiting, sending, contact, trouble } = sync.status.value;
  const when = contact === undefined ? "" : new Intl.DateTimeFormat(language, { weekday: "long", hour: "2-digit", minute: "2-digit" }).format(contact);
  return (
    <section class="sync-line">
      <p role="status">{sending ? words.sending : waitingWords(words, waiting)}</p>
      <p>{contact === undefined ? words.contact.never : words.contact.at.replace("{when}", when)}</p>
      {trouble === undefined ? null : <p role="alert">{words.trouble[trouble]}</p>}
      <button type="button" onClick={() => void sync.sendNow()}>
        {words.send}
      </button>
    </section>
  );
}
