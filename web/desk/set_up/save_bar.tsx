// What was typed and not saved; saved all together, with what is wrong by what it is of, and undone as one. Then the next step.
import { useState } from "preact/hooks";
import type { Fault } from "../../shared/api.ts";
import { list } from "../../shared/words/words.ts";
import { faultWords, type Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { hashOf } from "../shell/route.ts";
import { undo } from "../shell/undo.ts";
import { contentOf, forgetDrafts, type Met, paths, saveClub, unsaved } from "./club_draft.ts";
import { kClub } from "./club_step.tsx";
import { MetMeanwhile } from "./met.tsx";
import { kRoster, listed, putAway, readKnown, rosterFaults, sheet, use } from "./players_sheet.ts";
import { many, say } from "./words.ts";

export type Step = "season" | "places" | "players" | "squads" | "routines" | "then" | "turn";
const kFirstRow = 2; // of the list of players, below its headings
const kMostFaults = 50;

function stepOf(path: string): Step {
  if (path === kClub) return "season";
  if (path === kRoster) return "players";
  if (path.startsWith("strips/")) return "places";
  return path.startsWith("routines/") ? "routines" : "squads";
}

// What a document is called here: nobody need know of files.
function nameOfDocument(path: string): string {
  const step = stepOf(path);
  if (step === "season" || step === "players") return say(`step.${step}`);
  return String(contentOf(path)?.name ?? path);
}

type FaultOfFile = Fault & { file?: string; line?: number };

function FaultLine({ fault, here }: { fault: FaultOfFile; here: Step }) {
  const path = paths.value.find((one) => one === fault.file || one.endsWith(`/${fault.file ?? ""}`)) ?? fault.file;
  const name = path === undefined ? "" : nameOfDocument(path);
  const where = path === kRoster && fault.line !== undefined && fault.line >= kFirstRow ? say("save.row", { what: name, row: fault.line - kFirstRow + 1 }) : name;
  const step = path === undefined ? here : stepOf(path);
  return (
    <li>
      {where ? (
        <>
          <bdi>{where}</bdi>:{" "}
        </>
      ) : null}
      <bdi>{faultWords(fault)}</bdi> {step === here ? null : <a href={hashOf("set-up", step)}>{say("save.mend", { step: say(`step.${step}`) })}</a>}
    </li>
  );
}

function forget(): void {
  const before = sheet.value;
  const restore = forgetDrafts();
  putAway();
  listed.value = new Map();
  undo.offer({
    words: say("save.forgotten"),
    undo: () => {
      restore();
      if (before) use(before);
    },
  });
}

export function SaveBar({ here, next }: { here: Step; next: Step | undefined }) {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [met, setMet] = useState<Met[]>([]);
  const [saves, setSaves] = useState(false);
  const waiting = unsaved.value;
  const save = async () => {
    if (saves) return;
    setSaves(true);
    const { refused: why, met: others = [], undo: back } = await saveClub();
    // Who keeps their history is told against the list that is there now.
    if (others.some(({ path }) => path === kRoster)) await readKnown();
    setSaves(false);
    setRefused(why);
    setMet(others);
    rosterFaults.value = (why?.faults ?? []).filter((fault: FaultOfFile) => fault.file === kRoster);
    if (why) return;
    putAway();
    if (back) undo.offer({ words: say("save.done"), undo: async () => setRefused(await back()) });
    else announce(say("save.done"));
  };
  return (
    <section class="sheet" aria-label={say("save.about")}>
      {refused ? <Refused refusal={refused} /> : null}
      {refused && waiting.length > 0 ? <MetMeanwhile met={met} nameOf={nameOfDocument} /> : null}
      {refused && refused.faults.length > 0 ? (
        <ul>
          {refused.faults.slice(0, kMostFaults).map((fault, at) => (
            <FaultLine key={at} fault={fault} here={here} />
          ))}
        </ul>
      ) : null}
      <p role="status">
        <bdi>{waiting.length === 0 ? say("save.nothing") : many("unsaved", waiting.length, { files: list(waiting.slice(0, 6).map(nameOfDocument)) })}</bdi>
      </p>
      <p class="row">
        {waiting.length > 0 ? (
          <>
            <button type="button" class="main" aria-disabled={saves} onClick={() => void save()}>
              {say("save.save")}
            </button>
            <button type="button" onClick={forget}>
              {say("save.forget")}
            </button>
          </>
        ) : null}
        {next ? (
          <a class="as-button" href={hashOf("set-up", next)}>
            {say("save.next", { step: say(`step.${next}`) })}
          </a>
        ) : null}
      </p>
    </section>
  );
}
