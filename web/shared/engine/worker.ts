// The door in a worker of its own, so that a plan being made never holds up a thumb.
import { loadDoor } from "../../../wasm/load.mjs";

export interface ToWorker {
  door?: string; // the first message: where the module is
  hold?: string; // the catalogue for the questions after it
  number?: number;
  request?: string;
}
export interface FromWorker {
  ready?: true;
  number?: number;
  answer?: string;
  broken?: string;
}

interface Port {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
}
const port = self as unknown as Port;
let run: ((request: string) => string) | undefined;
let not_held: string | undefined; // what the door said of a catalogue that it could not take

async function open(url: string): Promise<void> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  run = await loadDoor(await response.arrayBuffer());
}

port.onmessage = async (event) => {
  const { door, hold, number, request } = event.data;
  try {
    if (door !== undefined) {
      await open(door);
      port.postMessage({ ready: true });
    } else if (hold !== undefined && run) {
      const answer = run(hold);
      not_held = (JSON.parse(answer) as { answer: string }).answer === "held" ? undefined : answer;
    } else if (number !== undefined && request !== undefined && run) {
      port.postMessage({ number, answer: not_held ?? run(request) });
    }
  } catch (error) {
    const broken = error instanceof Error ? error.message : String(error);
    port.postMessage(number === undefined ? { broken } : { number, broken });
  }
};
