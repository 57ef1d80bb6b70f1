// Sends the outbox until it is empty or something is in the way, and says what that was. An entry leaves the outbox by
// its verdict and by nothing else (docs/formats/sync.md).
import type { Keep } from "../keep/keep.ts";
import { type Answer, ask } from "./answer.ts";
import { chunkOf, kMostEntries } from "./chunk.ts";
import { heardIn } from "./verdicts_in.ts";

// Keys of words: 'keeping.trouble' in words/en.json.
export type Trouble =
  | "no-signal"
  | "pair-anew"
  | "revoked"
  | "not-your-role"
  | "update-first"
  | "server-busy"
  | "server-full"
  | "too-fast"
  | "app-mistake"
  | "too-large"
  | "phone-full";

export interface Outcome {
  trouble?: Trouble;
  waitSeconds?: number; // ask not before
}

const kClient = 1;
const kUsualWait: Record<number, number> = { 429: 10, 503: 5, 507: 600 };
const kLongestWait = 3600;

// What a refusal means, to whatever question it was given.
export async function refusal(answer: Answer, keep: Keep): Promise<Outcome> {
  if (answer.from === "nobody") return { trouble: "no-signal" };
  const wait = Math.min(answer.retryAfterSeconds ?? kUsualWait[answer.status] ?? 0, kLongestWait);
  switch (answer.status) {
    case 401:
      if (answer.body.error === "revoked") {
        await keep.revoked();
        return { trouble: "revoked" };
      }
      if (answer.body.error !== "sign-in-needed") return { trouble: "no-signal" };
      await keep.unknownToServer();
      return { trouble: "pair-anew" };
    case 403:
      return { trouble: "not-your-role" };
    case 413:
      return { trouble: "too-large" };
    case 426:
      return { trouble: "update-first" };
    case 429:
      return { trouble: "too-fast", waitSeconds: wait };
    case 507:
      return { trouble: "server-full", waitSeconds: wait };
    case 400:
    case 404:
    case 405:
    case 415:
      return { trouble: "app-mistake" };
    default:
      return { trouble: "server-busy", waitSeconds: wait };
  }
}

export async function exchange(keep: Keep): Promise<Outcome> {
  let most = kMostEntries;
  for (;;) {
    const device = keep.books.value.device;
    if (!device) return {};
    const rows = chunkOf(await keep.outbox(most), most);
    // Nothing is asked back: a phone plans from its packages, and need not hold what others entered.
    const { ledger, after } = device;
    const body = JSON.stringify({ client: kClient, ...(ledger === undefined ? {} : { ledger }), after, most: 0, entries: rows.map(({ entry }) => entry) });
    const answer = await ask({ path: "/api/sync", secret: device.secret, body });
    if (answer.from === "server" && answer.status === 413 && rows.length > 1) {
      most = Math.ceil(rows.length / 2);
      continue;
    }
    const lastWords = answer.from === "server" && answer.status === 401 && answer.body.error === "revoked";
    if (answer.from === "nobody" || (answer.status !== 200 && !lastWords)) return refusal(answer, keep);
    const heard = heardIn(answer.body, rows, device.device);
    if (!heard && lastWords) return refusal(answer, keep);
    if (!heard) return { trouble: typeof answer.body.ledger === "string" ? "update-first" : "no-signal" };
    await keep.takeVerdicts(heard);
    if (keep.books.value.waiting === 0) return heard.revoked ? { trouble: "revoked" } : {};
  }
}
