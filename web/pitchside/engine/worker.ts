// The door in a worker of its own, so that a plan being made never holds up a thumb.
import { loadDoor } from "../../../wasm/load.mjs";

export interface ToWorker {
  door?: string; // the first message: where the module is
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

async function open(url: string): Promise<void> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  run = await loadDoor(await response.arrayBuffer());
}

port.onmessage = async (event) => {
  const { door, number, request } = event.data;
  try {
    if (door !== undefined) {
      await open(door);
      port.postMessage({ ready: true });
    } else if (number !== undefined && request !== undefined && run) {
      port.postMessage({ number, answer: run(request) });
    }
  } catch (error) {
    const broken = error instanceof Error ? error.message : String(error);
    port.postMessage(number === undefined ? { broken } : { number, broken });
  }
};
