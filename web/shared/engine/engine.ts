// Asks the door in its worker, which holds the catalogue, so that it is sent and read once. One question runs at a time;
// of questions of one kind that wait only the newest is asked, and one that runs for over two seconds while a newer waits
// is given up with its worker.
import type { DoorTable, DoorValue } from "./door_value.ts";
import type { CheckDrillAnswer, FigureAnswer, PlanAnswer, Silence, SlipAnswer } from "./answers.ts";
import type { FromWorker, ToWorker } from "./worker.ts";

const kPatienceMilliseconds = 2000;
const kHeld = "catalogue"; // the door's name for the one that it holds

interface Answers {
  plan: PlanAnswer;
  slip: SlipAnswer;
  figure: FigureAnswer;
  "check-drill": CheckDrillAnswer;
}
export type DoorRequest = DoorTable & { request: keyof Answers };
type Said = Answers[keyof Answers] | Silence;

export interface Engine {
  // kind: of what only the newest counts; as the request is called if not said.
  ask<R extends DoorRequest>(request: R, kind?: string): Promise<Answers[R["request"]] | Silence>;
  close(): void;
}

interface Question {
  number: number;
  kind: string;
  catalogue: DoorValue | undefined; // what it is asked of; compared by identity
  text: string;
  answered: (answer: Said) => void;
}

export interface EnginePlaces {
  worker: string; // of the bundled engine/worker.ts
  door: string; // of lanework.wasm
}

export function openEngine(places: EnginePlaces): Engine {
  const waiting: Question[] = [];
  let running: { question: Question; since: number } | undefined;
  let impatience: ReturnType<typeof setTimeout> | undefined;
  let worker: Worker;
  let ready = false;
  let held: DoorValue | undefined; // the catalogue that this worker has
  let numbers = 0;

  function settle(answer: Said): void {
    clearTimeout(impatience);
    impatience = undefined;
    const settled = running?.question;
    running = undefined;
    settled?.answered(answer);
    next();
  }

  function hear(said: FromWorker): void {
    if (said.ready) {
      ready = true;
      next();
    } else if (said.number === undefined) {
      // The module could not be had: whoever waits is told, and the next question tries again.
      for (const question of waiting.splice(0)) question.answered({ answer: "broken", why: said.broken ?? "" });
      worker.terminate();
      ready = false;
      started = false;
    } else if (said.number === running?.question.number) {
      if (said.answer !== undefined) return settle(JSON.parse(said.answer) as Said);
      const broken: Said = { answer: "broken", why: said.broken ?? "" };
      reload(); // a core that stopped cannot be asked again
      settle(broken);
    }
  }

  let started = false;
  function start(): void {
    started = true;
    ready = false;
    held = undefined;
    worker = new Worker(places.worker, { type: "module" });
    const own = worker;
    worker.onmessage = (event: MessageEvent<FromWorker>) => {
      if (own === worker) hear(event.data);
    };
    worker.onerror = (event) => {
      if (own === worker) hear({ broken: event.message });
    };
    worker.postMessage({ door: places.door } satisfies ToWorker);
  }

  function reload(): void {
    worker.terminate();
    start();
  }

  function next(): void {
    if (!started) {
      if (waiting.length > 0) start();
      return;
    }
    if (!ready || running) return;
    const question = waiting.shift();
    if (!question) return;
    running = { question, since: Date.now() };
    if (question.catalogue !== undefined && question.catalogue !== held) {
      held = question.catalogue;
      const hold = JSON.stringify({ request: "hold", name: kHeld, catalogue: held });
      worker.postMessage({ hold } satisfies ToWorker);
    }
    worker.postMessage({ number: question.number, request: question.text } satisfies ToWorker);
  }

  function giveUpWhenSlow(): void {
    if (!running || impatience !== undefined) return;
    const left = Math.max(0, kPatienceMilliseconds - (Date.now() - running.since));
    impatience = setTimeout(() => {
      reload();
      settle({ answer: "dropped" });
    }, left);
  }

  start();
  return {
    ask(request, kind = request.request) {
      return new Promise((resolve) => {
        const { catalogue, ...rest } = request;
        const older = waiting.findIndex((question) => question.kind === kind);
        if (older >= 0) waiting.splice(older, 1)[0]?.answered({ answer: "dropped" });
        numbers += 1;
        waiting.push({
          number: numbers,
          kind,
          catalogue,
          text: JSON.stringify(catalogue === undefined ? request : { ...rest, held: kHeld }),
          answered: resolve as (answer: Said) => void,
        });
        if (running?.question.kind === kind) giveUpWhenSlow();
        next();
      });
    },
    close() {
      clearTimeout(impatience);
      worker.terminate();
      started = false;
    },
  };
}
