// Fetches what the phone may hold of each squad. An answer that does not come keeps the old package; a squad that is
// no longer the owner's goes from the phone at once.
import type { EveningPackage } from "../package/evening_package.ts";
import type { Keep } from "../keep/keep.ts";
import { ask } from "./answer.ts";
import { type Outcome, refusal } from "./exchange.ts";

const kPackageVersion = 1;

function squadsIn(body: Record<string, unknown>): string[] | undefined {
  if (!Array.isArray(body.squads)) return undefined;
  const ids = body.squads.map((row: unknown) => (typeof row === "object" && row !== null ? (row as { id?: unknown }).id : undefined));
  return ids.every((id) => typeof id === "string") ? (ids as string[]) : undefined;
}

// The server's own words are trusted beyond that; the reader of a package is the door.
function isPackage(body: Record<string, unknown>, squad: string): boolean {
  const { squad: of, lease_until, roster, evenings } = body;
  const id = typeof of === "object" && of !== null ? (of as { id?: unknown }).id : undefined;
  return id === squad && typeof lease_until === "string" && !Number.isNaN(Date.parse(lease_until)) && Array.isArray(roster) && Array.isArray(evenings);
}

export async function fetchPackages(keep: Keep): Promise<Outcome> {
  const secret = keep.books.value.device?.secret;
  if (secret === undefined) return {};
  const list = await ask({ path: "/api/device/squads", secret });
  if (list.from === "nobody" || list.status !== 200) return refusal(list, keep);
  const squads = squadsIn(list.body);
  if (!squads) return { trouble: "no-signal" };
  await keep.trimPackages(squads);
  if (!keep.lock.people) return {}; // what comes is sealed under a key that is not there while the app is locked
  let outcome: Outcome = {};
  for (const squad of squads) {
    const answer = await ask({ path: `/api/device/squads/${encodeURIComponent(squad)}/evenings`, secret });
    if (answer.from === "server" && answer.status === 404) continue;
    if (answer.from === "nobody" || answer.status !== 200) return refusal(answer, keep);
    if (typeof answer.body.version === "number" && answer.body.version > kPackageVersion) outcome = { trouble: "update-first" };
    else if (!isPackage(answer.body, squad)) outcome = { trouble: "no-signal" };
    else if ((await keep.keepPackage(squad, answer.body as unknown as EveningPackage)) === "no-room") outcome = { trouble: "phone-full" };
  }
  return outcome;
}
