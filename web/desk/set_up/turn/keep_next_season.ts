// Writes the next season as one change of the club's documents, and offers to take it back as one.
import type { Refusal } from "../../api/answer.ts";
import { ask } from "../../api/ask.ts";
import { undo } from "../../shell/undo.ts";
import { readClub } from "../club_draft.ts";
import { changesOf, type DocumentChange, type Moves, type NextSeason } from "./next_season.ts";
import { say } from "./words.ts";

async function send(changes: DocumentChange[]): Promise<Refusal | undefined> {
  const answer = await ask("change-club-documents", {}, { changes });
  if (!answer.ok) return answer;
  await readClub();
  return undefined;
}

// Against what is there now: what somebody changed after it is not undone unseen.
async function takeBack(next: NextSeason, changed: DocumentChange[], was: Map<string, string>): Promise<Refusal | undefined> {
  const before = new Map(next.back.map((one) => [one.path, one.text]));
  return send(
    changed.map(({ path }) => {
      const digest = was.get(path);
      const text = before.get(path);
      return { path, ...(digest === undefined ? {} : { instead_of: digest }), ...(text === undefined ? {} : { text }) };
    }),
  );
}

// back: it was taken back, or why not.
export async function keepNextSeason(next: NextSeason, moves: Moves, back: (refused: Refusal | undefined) => void): Promise<Refusal | undefined> {
  const changes = changesOf(next, moves);
  const refused = await send(changes);
  if (refused) return refused;
  const answer = await ask("club-documents", {});
  const digests = new Map(answer.ok ? answer.said.documents.flatMap(({ path, digest }) => (digest === undefined ? [] : [[path, digest] as const])) : []);
  undo.offer({ words: say("kept_short"), undo: async () => back(await takeBack(next, changes, digests)) });
  return undefined;
}
