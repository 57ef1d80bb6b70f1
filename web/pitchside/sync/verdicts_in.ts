// Reads what POST /api/sync answered; nothing of an answer that is not whole counts.
import type { VerdictWord, Waiting } from "../keep/form.ts";
import type { Heard, Verdict } from "../keep/verdicts.ts";

const kWords: readonly string[] = ["stored", "known", "other-content", "kept-aside", "no-consent", "dropped"] satisfies VerdictWord[];

function verdictOf(value: unknown, row: Waiting): Verdict | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const { id, verdict, why } = value as Record<string, unknown>;
  if (typeof verdict !== "string" || !kWords.includes(verdict)) return undefined;
  if (id !== undefined && id !== row.entry.id) return undefined; // one without an id goes by its place
  return { verdict: verdict as VerdictWord, ...(typeof why === "string" ? { why } : {}) };
}

export function heardIn(body: Record<string, unknown>, rows: Waiting[], device: string): Heard | undefined {
  const { ledger, now, after, begin_anew, error } = body;
  const given = body.verdicts ?? [];
  const time = typeof now === "string" ? Date.parse(now) : Number.NaN;
  if (typeof ledger !== "string" || Number.isNaN(time) || !Array.isArray(given) || given.length !== rows.length) return undefined;
  const verdicts: Verdict[] = [];
  for (const [index, row] of rows.entries()) {
    const verdict = verdictOf(given[index], row);
    if (!verdict) return undefined;
    verdicts.push(verdict);
  }
  return { device, rows, verdicts, now: time, ledger, after: typeof after === "number" ? after : 0, beginAnew: begin_anew === true, revoked: error === "revoked" };
}
