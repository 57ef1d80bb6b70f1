// Names of players: asked for once, all of them, which is one line in the book of reads.
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";

export type Persons = Map<string, string>; // by the player's id

export async function personsOf(): Promise<Persons | Refusal> {
  const answer = await ask("players", {});
  return answer.ok ? new Map(answer.said.players.map(({ player, name }) => [player, name] as const)) : answer;
}
