// What stands behind the pairing screen until an evening is opened: what waits, when the club was last reached, what is
// in the way.
import type { ComponentChildren, JSX } from "preact";
import type { Keep } from "../keep/keep.ts";
import type { Sync } from "../sync/sync.ts";
import type { KeepingWords } from "./keeping_words.ts";
import type { Renewal } from "./renewal.ts";

function waitingWords(words: KeepingWords, count: number): string {
  if (count === 0) return words.waiting.none;
  return count === 1 ? words.waiting.one : words.waiting.many.replace("{count}", String(count));
}

interface SyncShown {
  sync: Sync;
  words: KeepingWords;
  language: string;
  children?: ComponentChildren; // beside the button that sends
}

export function SyncLine({ sync, words, language, children }: SyncShown): JSX.Element {
  const { waiting, sending, contact, trouble } = sync.status.value;
  const when = contact === undefined ? "" : new Intl.DateTimeFormat(language, { weekday: "long", hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(contact);
  return (
    <section class="sync-line">
      <p role="status">{sending ? words.sending : waitingWords(words, waiting)}</p>
      <p>{contact === undefined ? words.contact.never : words.contact.at.replace("{when}", when)}</p>
      {trouble === undefined ? null : <p role="alert">{words.trouble[trouble]}</p>}
      <div class="row">
        <button type="button" onClick={() => void sync.sendNow()}>
          {words.send}
        </button>
        {children}
      </div>
    </section>
  );
}

// Shown only where no session is running.
export function RenewalLine({ renewal, words }: { renewal: Renewal; words: KeepingWords }): JSX.Element | null {
  if (!renewal.waits.value) return null;
  return (
    <section class="renewal-line">
      <p role="status">{words.newer}</p>
      <button type="button" onClick={() => renewal.takeOver()}>
        {words.renew}
      </button>
    </section>
  );
}

// Another tab writes: here one can only look, or take over.
export function TabLine({ keep, words }: { keep: Keep; words: KeepingWords }): JSX.Element | null {
  if (keep.closed.value) return <p role="alert">{words.reload}</p>;
  if (keep.writes.value) return null;
  return (
    <section class="tab-line">
      <p role="status">{words.read_only}</p>
      <button type="button" onClick={() => keep.takeOver()}>
        {words.take_over}
      </button>
    </section>
  );
}

// What became of an entry that its owner must hear about.
export function ToldLines({ keep, words }: { keep: Keep; words: KeepingWords }): JSX.Element | null {
  const told = keep.books.value.told.flatMap((row) => {
    const said = row.verdict === "other-content" || row.verdict === "kept-aside" || row.verdict === "no-consent" ? words.told[row.verdict] : undefined;
    return said === undefined ? [] : [{ sequence: row.sequence, said, why: row.why }];
  });
  if (told.length === 0) return null;
  return (
    <section class="told">
      {told.map(({ sequence, said, why }) => (
        <div key={sequence} role="status">
          <p>{said}</p>
          {why ? <p>{why}</p> : null}
          <button type="button" onClick={() => void keep.sawTold(sequence)}>
            {words.told.seen}
          </button>
        </div>
      ))}
    </section>
  );
}
