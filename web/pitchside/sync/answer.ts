// One question to the server, and whether what came back is the server's at all: a hotel's page that answers 200 with
// HTML is no contact, and no more than no signal.

export type Answer =
  | { from: "server"; status: number; body: Record<string, unknown>; retryAfterSeconds: number | undefined }
  | { from: "nobody" };

const kPatienceMilliseconds = 30_000;

export interface Question {
  path: string;
  secret?: string;
  body?: string; // JSON; with it the question is a POST
}

async function read(response: Response): Promise<Answer> {
  const type = response.headers.get("content-type") ?? "";
  if (!/^application\/json\b/.test(type)) return { from: "nobody" };
  const body: unknown = await response.json();
  if (typeof body !== "object" || body === null || Array.isArray(body)) return { from: "nobody" };
  const table = body as Record<string, unknown>;
  const refused = typeof table.error === "string" && typeof table.what === "string";
  if (!response.ok && !refused) return { from: "nobody" }; // a proxy's own words
  const seconds = Number(response.headers.get("retry-after") ?? Number.NaN);
  return { from: "server", status: response.status, body: table, retryAfterSeconds: Number.isFinite(seconds) ? seconds : undefined };
}

export async function ask({ path, secret, body }: Question): Promise<Answer> {
  const headers: Record<string, string> = {};
  if (secret !== undefined) headers.Authorization = `Bearer ${secret}`;
  if (body !== undefined) Object.assign(headers, { "Content-Type": "application/json", "Lanework-Request": "1" });
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), kPatienceMilliseconds);
  try {
    const init: RequestInit = { headers, signal: patience.signal, credentials: "omit", cache: "no-store", redirect: "error", referrerPolicy: "no-referrer" };
    return await read(await fetch(path, body === undefined ? init : { ...init, method: "POST", body }));
  } catch {
    return { from: "nobody" };
  } finally {
    clearTimeout(timer);
  }
}
