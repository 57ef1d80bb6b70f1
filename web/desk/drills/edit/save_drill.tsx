// Saves the drill in the club's folder. Whoever comes second is told, what both wrote is put together, and they choose.
import { useState } from "preact/hooks";
import type { Refusal } from "../../api/answer.ts";
import { ask } from "../../api/ask.ts";
import { Refused } from "../../api/asked.tsx";
import { announce } from "../../shell/announce.ts";
import { go, hashOf } from "../../shell/route.ts";
import { undo } from "../../shell/undo.ts";
import { catalogue, clubFolder, fetchCatalogue } from "../catalogue.ts";
import type { DrillDocument } from "../drill_document.ts";
import { folderOf, merged, savingChanges, undoingChanges, type Change, type OwnDrill } from "../own_drills.ts";
import { apart, say, wordFor } from "../words.ts";
import { freshKey } from "./begin.ts";
import type { Draft } from "./draft.ts";

interface SaveProps {
  draft: Draft;
  shipped: DrillDocument | undefined; // it is one that comes with the program: saved, it becomes one of the club's own
}

interface Conflict {
  theirs: OwnDrill;
  both: string[];
}

// As it is saved: a drill that ships stays, and the club's lies beside it.
function asOwn(drill: DrillDocument, shipped: DrillDocument | undefined): DrillDocument {
  if (!shipped) return drill;
  const taken = (catalogue.peek()?.drills ?? []).map(({ id }) => id);
  return { ...drill, id: freshKey(`${shipped.id} own`, taken) };
}

export function SaveDrill({ draft, shipped }: SaveProps) {
  const drill = draft.history.value.now;
  const [saves, setSaves] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [conflict, setConflict] = useState<Conflict | undefined>();
  // What the change is made against: what was there when it was begun, or since.
  const [base, setBase] = useState<OwnDrill | undefined>(shipped ? undefined : clubFolder.peek()?.drills.get(drill.id));
  if (!clubFolder.value) return null;
  const sound = draft.faults.value?.length === 0 && !draft.checking.value;
  const nameless = shipped !== undefined && drill.name === shipped.name;

  async function save(): Promise<void> {
    const folder = clubFolder.peek();
    if (!folder || saves) return;
    const own = asOwn(drill, shipped);
    const here = location.hash;
    setSaves(true);
    setRefused(undefined);
    const answer = await ask("change-club-documents", {}, { changes: savingChanges(folder, own, base?.digest) });
    setSaves(false);
    if (answer.ok) {
      const back = undoingChanges(folder, own.id, answer.said.documents);
      draft.forget();
      await fetchCatalogue();
      undo.offer({ words: say("save.was_saved", { name: apart(own.name) }), undo: () => takeBack(back, own.id) });
      if (location.hash === here) go(hashOf("drills", own.id)); // whoever went on meanwhile stays there
    } else if (answer.refused === "changed-meanwhile") await meet(own.id);
    else setRefused(answer);
  }

  async function meet(id: string): Promise<void> {
    const there = await ask("club-documents", {});
    if (!there.ok) return setRefused(there);
    const folder = folderOf(there.said.documents);
    clubFolder.value = folder;
    const theirs = folder.drills.get(id);
    // Somebody else changed a squad, or took the drill away: what we have stands and can be saved again.
    const { drill: together, both } = theirs ? merged(base?.drill ?? theirs.drill, drill, theirs.drill) : { drill, both: [] };
    draft.change(() => together);
    setBase(theirs);
    setConflict(theirs ? { theirs, both } : undefined);
    announce(say("save.meanwhile"));
  }

  return (
    <section class="save">
      <button type="button" class="main" disabled={!sound || nameless || saves} onClick={() => void save()}>
        {say("save.save")}
      </button>
      <p class="soft">{say(nameless ? "save.another_name" : !sound ? "save.not_sound" : shipped ? "save.own_beside" : "save.what")}</p>
      {conflict ? <Meeting conflict={conflict} draft={draft} /> : null}
      {refused ? <Refused refusal={refused} again={() => void save()} /> : null}
    </section>
  );
}

async function takeBack(changes: Change[], id: string): Promise<void> {
  const answer = await ask("change-club-documents", {}, { changes });
  announce(answer.ok ? say("save.was_taken_back") : answer.words);
  await fetchCatalogue();
  if (answer.ok && !clubFolder.peek()?.drills.has(id)) go(hashOf("drills"));
}

function Meeting({ conflict: { theirs, both }, draft }: { conflict: Conflict; draft: Draft }) {
  const take = (key: string) => draft.change((mine) => ({ ...mine, [key]: theirs.drill[key as keyof DrillDocument] }));
  return (
    <div class="refused" role="alert">
      <p>{say("save.meanwhile")}</p>
      <p>{say(both.length > 0 ? "save.both" : "save.put_together")}</p>
      {both.map((key) => (
        <button key={key} type="button" onClick={() => take(key)}>
          {say("save.take_theirs", { field: wordFor("part_of_drill", key) })}
        </button>
      ))}
    </div>
  );
}
