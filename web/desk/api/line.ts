// The line to the server: whether anybody answers, and whether the desk waits because the server asked it to.
import { signal } from "@preact/signals";

export const noSignal = signal(false);
export const waitsForServer = signal(0); // requests that wait now

export async function waitedFor(seconds: number): Promise<void> {
  waitsForServer.value += 1;
  await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
  waitsForServer.value -= 1;
}
