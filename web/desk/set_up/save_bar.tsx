// What was typed and not saved; saved all together, with what is wrong by file, line and field, and undone as one.
import { useState } from "preact/hooks";
import type { Fault } from "../../shared/api.ts";
import { list } from "../../shared/words/words.ts";
import { faultWords, type Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { undo } from "../shell/undo.ts";
import { contentOf, forgetDrafts, saveClub, unsaved } from "./club_draft.ts";
import { kClub } from "./club_step.tsx";
import { kRoster } from "./players_step.tsx";
import { many, say } from "./words.ts";

// What a document is called here: nobody need know of files.
function nameOfDocument(path: string): string {
  if (path === kClub) return say("step.season");
  if (path === kRoster) return say("step.players");
  return String(contentOf(path)?.name ?? path);
}

type FaultOfFile = Fault & { file?: string; line?: number };

function FaultLine({ fault }: { fault: FaultOfFile }) {
  const where = fault.line ? say("save.line", { file: fault.file ?? "", line: fault.line }) : (fault.file ?? "");
  return (
    <li>
      {where ? `${where}: ` : ""}
      <bdi>{faultWords(fault)}</bdi>
    </li>
  );
}

export function SaveBar() {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [saves, setSaves] = useState(false);
  const waiting = unsaved.value;
  const save = async () => {
    setSaves(true);
    const { refused: why, undo: back } = await saveClub();
    setSaves(false);
    setRefused(why);
    if (why) return;
    if (back) undo.offer({ words: say("save.done"), undo: async () => setRefused(await back()) });
    else announce(say("save.done"));
  };
  return (
    <section class="sheet" aria-label={say("save.about")}>
      {refused ? <Refused refusal={refused} /> : null}
      {refused && refused.faults.length > 0 ? (
        <ul>
          {refused.faults.slice(0, 50).map((fault, at) => (
            <FaultLine key={at} fault={fault} />
          ))}
        </ul>
      ) : null}
      <p role="status">{waiting.length === 0 ? say("save.nothing") : many("unsaved", waiting.length, { files: list(waiting.slice(0, 6).map(nameOfDocument)) })}</p>
      {waiting.length > 0 ? (
        <p class="row">
          <button type="button" class="main" aria-disabled={saves} onClick={() => void save()}>
            {say("save.save")}
          </button>
          <button type="button" onClick={forgetDrafts}>
            {say("save.forget")}
          </button>
        </p>
      ) : null}
    </section>
  );
}
