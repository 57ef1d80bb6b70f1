// 'Keep for this squad': writes what stands, asks for a plan with it, and offers to take it back. What another lead wrote of
// the same thing meanwhile is shown, and this lead decides.
import { useEffect, useRef, useState } from "preact/hooks";
import { list } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { undo } from "../shell/undo.ts";
import { nameOfDrill, rungWords } from "./drill_names.ts";
import { keepStanding, type Others, readBooks, type ToKeep } from "./keep_standing.ts";
import type { ClubDocument } from "./own_routine.ts";
import type { Contested } from "./standing.ts";
import { say, slotWords } from "./words.ts";

interface KeepProps {
  squad: string;
  wanted: ToKeep;
  words: string; // of the button
  label?: string; // where several stand on a page
  done: string; // what was kept, said
  plan: () => void;
}

// How it stands now, in words. Of a pair no name is said: what is asked is whether the two are kept apart.
function standsWords({ part, key }: Contested, { locks, rungs, minutes, apart }: Others["now"]): string {
  if (part === "minutes") return say("keep.is_minutes", { slot: slotWords(key), minutes: minutes?.[key] ?? 0 });
  if (part === "apart") return say(apart?.[key] ? "keep.is_apart" : "keep.is_together");
  const drill = nameOfDrill(key);
  const rung = rungs?.[key];
  if (part === "rungs" && rung) return say("keep.is_rung", { drill, rung: rungWords(key, rung.rung) });
  const lock = locks?.[key];
  return say(lock === "pin" ? "keep.is_pin" : lock === "ban" ? "keep.is_ban" : "keep.is_free", { drill });
}

export function KeepButton({ squad, wanted, words, label, done, plan }: KeepProps) {
  // As it was when the page was opened: what is written later by somebody else is told, and not lost.
  const seen = useRef<ClubDocument[] | undefined>(undefined);
  const [sends, setSends] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [others, setOthers] = useState<Others | undefined>();
  useEffect(() => {
    void readBooks(squad).then((books) => {
      if (Array.isArray(books)) seen.current = books;
    });
  }, [squad]);
  const keep = async (standing: ToKeep, from: typeof seen.current, said: string, back: boolean): Promise<void> => {
    setSends(true);
    const kept = await keepStanding(squad, standing, from);
    seen.current = undefined; // from now on as it is
    setSends(false);
    setOthers(undefined);
    setRefused(undefined);
    if (!kept.kept) {
      if ("refused" in kept) setRefused(kept.refused);
      else setOthers(kept.contested);
      return;
    }
    const told = kept.merged ? `${said} ${say("keep.merged")}` : said;
    announce(told);
    plan();
    if (back) undo.offer({ words: told, undo: () => keep(kept.before, undefined, say("keep.taken_back"), false) });
  };
  return (
    <div class="keep not-on-paper">
      <button type="button" aria-disabled={sends} {...(label ? { "aria-label": label } : {})} onClick={() => void (sends || keep(wanted, seen.current, done, true))}>
        {words}
      </button>
      {others ? (
        <div class="refused" role="alert">
          <p>{say("keep.others", { what: list([...others.keys.map((one) => standsWords(one, others.now)), ...(others.order ? [say("keep.is_order")] : [])]) })}</p>
          <p class="row">
            <button type="button" onClick={() => void keep(wanted, undefined, done, true)}>
              {say("keep.mine")}
            </button>
            <button type="button" onClick={() => setOthers(undefined)}>
              {say("keep.theirs")}
            </button>
          </p>
        </div>
      ) : null}
      {refused ? <Refused refusal={refused} /> : null}
    </div>
  );
}
