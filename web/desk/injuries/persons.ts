// Names and the next look at some players, one question to the server each: every one stands in the book of reads.
import { ask } from "../api/ask.ts";
import { lookAgain } from "./holding.ts";

export type Persons = Map<string, { name: string; look_again: string }>;

const kMost = 60; // of one click; the server takes 240 requests a minute

export async function personsOf(players: string[]): Promise<Persons> {
  const each = [...new Set(players)].slice(0, kMost);
  const answers = await Promise.all(each.map((player) => ask("timeline", { player })));
  return new Map(answers.flatMap((answer) => (answer.ok ? [[answer.said.player, { name: answer.said.name, look_again: lookAgain(answer.said.entries) }] as const] : [])));
}
