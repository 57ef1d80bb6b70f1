// Asks the server. A session that is over, a code that is wanted and a server that has its hands full are dealt with here,
// and the same request goes on after them; whoever asked gets what they asked for, or words.
import { apiPlaces } from "../../shared/api_places.ts";
import { type Answer, type BodyOf, type Operation, type Refusal, refusal, refusalOf, type Said, silence, type ValuesOf } from "./answer.ts";
import { comeIn, showCode, stillHere } from "./coming_in.ts";
import { noSignal, waitedFor } from "./line.ts";

const kMostWaits = 5; // of one request, for a server that is busy
const kUsualWaitSeconds = 2;
const kMostWaitSeconds = 30; // longer ones are told, not sat out

const kWaitsOut = new Set(["too-fast", "busy", "store-busy"]);

export function addressOf(operation: Operation, values: Record<string, unknown>): string {
  return apiPlaces[operation][1].replace(/\{(\??)(\w+)\}/g, (_, query: string, name: string) => {
    const value = values[name];
    if (query === "") return encodeURIComponent(String(value));
    return value === undefined ? "" : `?${name}=${encodeURIComponent(String(value))}`;
  });
}

// Once, with nothing done about what the answer is. For what must not wait for anybody: coming in itself. stop: for what is
// only read and takes long; the answer is then the refusal 'stopped'.
export async function askOnce<Name extends Operation>(operation: Name, values: ValuesOf<Name>, body?: BodyOf<Name>, stop?: AbortSignal): Promise<Answer<Name>> {
  const [method] = apiPlaces[operation];
  const post = { body: JSON.stringify(body ?? {}), headers: { "Content-Type": "application/json", "Lanework-Request": "1" } };
  let response: Response;
  let said: unknown;
  try {
    response = await fetch(addressOf(operation, values as Record<string, unknown>), { method, cache: "no-store", credentials: "same-origin", redirect: "error", ...(method === "POST" ? post : {}), ...(stop ? { signal: stop } : {}) });
    said = await response.json().catch(() => undefined);
  } catch {
    if (stop?.aborted) return refusal("stopped");
    noSignal.value = true;
    return silence(method);
  }
  if (stop?.aborted) return refusal("stopped");
  noSignal.value = false;
  if (response.ok && said !== undefined) {
    if (operation !== "sign-out") stillHere();
    return { ok: true, said: said as Said<Name> };
  }
  return refusalOf(response.status, said, response.headers.get("Retry-After"));
}

// True where the same request may be made again.
export async function mended({ refused, seconds = kUsualWaitSeconds }: Refusal, waits: number): Promise<boolean> {
  if (refused === "sign-in-needed" || refused === "second-factor-needed") return comeIn(refused);
  if (refused === "step-up-needed") return showCode();
  if (!kWaitsOut.has(refused) || waits >= kMostWaits || seconds > kMostWaitSeconds) return false;
  await waitedFor(seconds);
  return true;
}

export async function ask<Name extends Operation>(operation: Name, values: ValuesOf<Name>, body?: BodyOf<Name>, stop?: AbortSignal): Promise<Answer<Name>> {
  for (let waits = 0; ; waits++) {
    const answer = await askOnce(operation, values, body, stop);
    if (answer.ok || !(await mended(answer, waits))) return answer;
  }
}
