// Calls off a plan that waits. False where a worker has it already: then it is made.
import { ask } from "../api/ask.ts";

export async function withdraw(number: number): Promise<boolean> {
  const answer = await ask("withdraw-planning", { number: String(number) }, {});
  return answer.ok;
}
