// Writes a change of what stands into the squad's document. Where somebody else wrote meanwhile, the two are put together,
// unless both wrote of the same drill: then nothing is written, and whoever asked decides.
import type { components, Fault } from "../../shared/api.ts";
import { faultWords, type Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { contested, type Standing, standingOf, withStanding } from "./standing.ts";
import { say } from "./words.ts";

type ClubDocument = components["schemas"]["ClubDocument"];

export type Kept = { kept: true; before: Standing; merged: boolean } | { kept: false; refused: Refusal } | { kept: false; contested: { drills: string[]; now: Standing } };

const kTries = 4; // against others that write at the same time

export async function readDocument(squad: string): Promise<ClubDocument | Refusal> {
  const answer = await ask("club-documents", {});
  if (!answer.ok) return answer;
  const path = `squads/${squad}.toml`;
  return answer.said.documents.find((one) => one.path === path) ?? { ok: false, refused: "not-found", words: say("keep.no_document"), faults: [] };
}

const isRefusal = (one: ClubDocument | Refusal): one is Refusal => "refused" in one;

function toldOf(refusal: Refusal): Refusal {
  if (refusal.refused !== "club-not-sound") return refusal;
  const faults = refusal.faults.map((fault: Fault & { file?: string }) => `${fault.file ?? ""} ${faultWords(fault)}`.trim()).join(" ");
  return { ...refusal, words: say("keep.not_sound", { faults }) };
}

// seen: the document as whoever asks has seen it; without it, as it is now.
export async function keepStanding(squad: string, wanted: Standing, seen?: ClubDocument): Promise<Kept> {
  let document = seen ?? (await readDocument(squad));
  if (isRefusal(document)) return { kept: false, refused: document };
  const first = standingOf(document.content ?? {}, wanted);
  let merged = false;
  for (let tries = 0; ; tries++) {
    const content = (document.content ?? {}) as Record<string, unknown>;
    const before = standingOf(content, wanted);
    const change = { path: document.path, ...(document.digest ? { instead_of: document.digest } : {}), content: withStanding(content, wanted) as Record<string, never> };
    const answer = await ask("change-club-documents", {}, { changes: [change] });
    if (answer.ok) return { kept: true, before, merged };
    if (answer.refused !== "changed-meanwhile" || tries >= kTries) return { kept: false, refused: toldOf(answer) };
    const again = await readDocument(squad);
    if (isRefusal(again)) return { kept: false, refused: again };
    const now = standingOf(again.content ?? {}, wanted);
    const drills = contested(wanted, first, now);
    if (drills.length > 0) return { kept: false, contested: { drills, now } };
    document = again;
    merged = true;
  }
}
