// A squad's players by how they join in today.
import type { components } from "../../shared/api.ts";

type Tonight = components["schemas"]["SquadTonight"];
type Word = NonNullable<Tonight["standing"][number]["word"]>;

const kWords: Word[] = ["joins in", "joins in with swaps", "sits out, see a clinician"];

export interface Joining {
  word: Word;
  players: { name: string; instructions: string[]; until: string | undefined }[];
}

// Whoever the server says nothing of joins in.
export function joiningOf({ roster, standing }: Pick<Tonight, "roster" | "standing">): Joining[] {
  const of = new Map(standing.map((each) => [each.player, each]));
  const groups = kWords.map((word): Joining => ({ word, players: [] }));
  for (const { player, name } of roster) {
    const own = of.get(player);
    const group = groups.find(({ word }) => word === (own?.word ?? "joins in"));
    group?.players.push({ name, instructions: own?.instructions ?? [], until: own?.until });
  }
  return groups;
}
