// 'Keep for this squad': writes what stands, asks for a plan with it, and offers to take it back. What another lead wrote of
// the same drill meanwhile is shown, and this lead decides.
import { useEffect, useRef, useState } from "preact/hooks";
import type { components } from "../../shared/api.ts";
import { list } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { undo } from "../shell/undo.ts";
import { nameOfDrill, rungWords } from "./drill_names.ts";
import { keepStanding, readDocument } from "./keep_standing.ts";
import type { Standing } from "./standing.ts";
import { say } from "./words.ts";

interface KeepProps {
  squad: string;
  wanted: Standing;
  words: string; // of the button
  label?: string; // where several stand on a page
  done: string; // what was kept, said
  plan: () => void;
}

function standsWords({ locks, rungs }: Standing, drill: string): string {
  const lock = locks[drill];
  if (lock !== undefined) return say(lock === "pin" ? "keep.is_pin" : lock === "ban" ? "keep.is_ban" : "keep.is_free", { drill: nameOfDrill(drill) });
  const rung = rungs[drill];
  return rung ? say("keep.is_rung", { drill: nameOfDrill(drill), rung: rungWords(drill, rung.rung) }) : say("keep.is_free", { drill: nameOfDrill(drill) });
}

export function KeepButton({ squad, wanted, words, label, done, plan }: KeepProps) {
  // As it was when the page was opened: what is written later by somebody else is told, and not lost.
  const seen = useRef<components["schemas"]["ClubDocument"] | undefined>(undefined);
  const [sends, setSends] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [others, setOthers] = useState<{ drills: string[]; now: Standing } | undefined>();
  useEffect(() => {
    void readDocument(squad).then((document) => {
      if (!("refused" in document)) seen.current = document;
    });
  }, [squad]);
  const keep = async (standing: Standing, from: typeof seen.current, said: string, back: boolean): Promise<void> => {
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
          <p>{say("keep.others", { what: list(others.drills.map((drill) => standsWords(others.now, drill))) })}</p>
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
