// Asks the server for a file, which the browser then puts with the downloads. A session that is over and a code that is
// wanted are dealt with as for everything else that is asked.
import { apiPlaces } from "../../shared/api_places.ts";
import { type BodyOf, type Operation, type Refusal, refusal, refusalOf, silence, type ValuesOf } from "./answer.ts";
import { addressOf, mended } from "./ask.ts";
import { stillHere } from "./coming_in.ts";
import { noSignal } from "./line.ts";

async function fetched<Name extends Operation>(operation: Name, values: ValuesOf<Name>, body?: BodyOf<Name>): Promise<Blob | Refusal> {
  const [method] = apiPlaces[operation];
  const post = { body: JSON.stringify(body ?? {}), headers: { "Content-Type": "application/json", "Lanework-Request": "1" } };
  try {
    const response = await fetch(addressOf(operation, values as Record<string, unknown>), { method, cache: "no-store", credentials: "same-origin", redirect: "error", ...(method === "POST" ? post : {}) });
    noSignal.value = false;
    if (!response.ok) return refusalOf(response.status, await response.json().catch(() => undefined), response.headers.get("Retry-After"));
    stillHere();
    // An answer in the place of a file, such as 'nothing is on record', is told and not saved.
    if (response.headers.get("Content-Type")?.startsWith("application/json")) return refusal("nothing-there");
    return await response.blob();
  } catch {
    noSignal.value = true;
    return silence(method);
  }
}

export function saveAs(name: string, blob: Blob): void {
  const place = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = place;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(place), 60_000); // some browsers fetch it after the click is over
}

// name: of the file, without anybody's name in it. Undefined where it is with the downloads.
export async function askForFile<Name extends Operation>(name: string, operation: Name, values: ValuesOf<Name>, body?: BodyOf<Name>): Promise<Refusal | undefined> {
  for (let waits = 0; ; waits++) {
    const answer = await fetched(operation, values, body);
    if (answer instanceof Blob) {
      saveAs(name, answer);
      return undefined;
    }
    if (!(await mended(answer, waits))) return answer;
  }
}
