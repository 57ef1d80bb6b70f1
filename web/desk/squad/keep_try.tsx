// Nothing of a try is kept but what the lead keeps, by one button: what it is stands above it.
import { useEffect, useState } from "preact/hooks";
import { KeepButton } from "./keep_button.tsx";
import { readBooks, shippedRoutines, type ToKeep } from "./keep_standing.ts";
import type { ClubDocument } from "./own_routine.ts";
import type { Placed } from "./places_in_order.ts";
import type { Content } from "./standing.ts";
import { kNothingTried, type PocketEvening, type Tried } from "./tried.ts";
import { toKeep } from "./tried_to_keep.ts";
import { many, say, slotWords } from "./words.ts";

interface Books {
  documents: ClubDocument[];
  shipped: Content[];
}

// Read with the first try, and again where something was kept meanwhile.
function useBooks(squad: string, wanted: boolean): [Books | undefined, () => void] {
  const [books, setBooks] = useState<Books | undefined>();
  const read = () => {
    void Promise.all([readBooks(squad), shippedRoutines()]).then(([documents, shipped]) => Array.isArray(documents) && setBooks({ documents, shipped }));
  };
  useEffect(() => {
    if (wanted && !books) read();
  }, [squad, wanted]);
  return [books, read];
}

// 'drills to be in or left out, the order, the minutes of Tuesday, 18:00'
function keptWords({ locks, order, minutes, apart }: ToKeep): string[] {
  const slot = Object.keys(minutes ?? {})[0];
  return [
    ...(locks ? [many("drills_kept", Object.keys(locks).length)] : []),
    ...(order ? [say("keep.the_order")] : []),
    ...(slot !== undefined ? [say("keep.the_minutes", { slot: slotWords(slot), minutes: minutes?.[slot] ?? 0 })] : []),
    ...(apart ? [many("pairs_kept", Object.keys(apart).length)] : []),
  ];
}

interface KeepTryProps {
  squad: string;
  evening: PocketEvening;
  tried: Tried;
  placed: (ids: string[]) => Placed[];
  kept: () => void;
}

export function KeepTry({ squad, evening, tried, placed, kept }: KeepTryProps) {
  const [books, read] = useBooks(squad, tried !== kNothingTried);
  const wanted = toKeep(squad, evening, tried, placed, books?.documents, books?.shipped);
  const told = keptWords(wanted);
  const again = () => {
    read();
    kept();
  };
  return (
    <section aria-label={say("keep.words")}>
      {told.length > 0 ? (
        <>
          <p>{say("keep.what")}</p>
          <ul>
            {told.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <KeepButton squad={squad} wanted={wanted} words={say("keep.words")} done={say("keep.done")} plan={again} />
        </>
      ) : null}
      <p class="soft">
        {say("keep.only")} {say("evening.rules")}
      </p>
    </section>
  );
}
