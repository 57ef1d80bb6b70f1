// Two leads began with the same document. Key by key: what only one of them changed is as that one has it; what both changed
// is as mine, and named. Pure.
export type Content = Record<string, unknown>;

export interface Together {
  content: Content;
  both: string[]; // keys that both changed, each in another way
}

// The order of keys says nothing.
function written(value: unknown): string {
  return JSON.stringify(value, (_, one: unknown) => (one && typeof one === "object" && !Array.isArray(one) ? Object.fromEntries(Object.entries(one).sort(([a], [c]) => (a < c ? -1 : 1))) : one)) ?? "";
}
const same = (one: unknown, other: unknown): boolean => written(one) === written(other);

// Rows whose order says nothing: mine that are new are put behind theirs. Undefined where both changed or took out the same one.
function rowsTogether(base: unknown, mine: unknown, theirs: unknown): unknown[] | undefined {
  if (![base ?? [], mine ?? [], theirs ?? []].every(Array.isArray)) return undefined;
  const [was, own, other] = [base ?? [], mine ?? [], theirs ?? []] as [unknown[], unknown[], unknown[]];
  const has = (rows: unknown[], row: unknown) => rows.some((one) => same(one, row));
  const gone = was.filter((row) => !has(own, row));
  if (gone.some((row) => !has(other, row))) return undefined;
  const fresh = own.filter((row) => !has(was, row) && !has(other, row));
  return [...other.filter((row) => !has(gone, row)), ...fresh];
}

// rows: keys of such rows.
export function putTogether(base: Content, mine: Content, theirs: Content, rows: readonly string[] = []): Together {
  const content: Content = {};
  const both: string[] = [];
  for (const key of new Set([...Object.keys(theirs), ...Object.keys(mine)])) {
    const theirs_stands = same(mine[key], base[key]);
    const contested = !theirs_stands && !same(theirs[key], base[key]) && !same(mine[key], theirs[key]);
    const together = contested && rows.includes(key) ? rowsTogether(base[key], mine[key], theirs[key]) : undefined;
    if (contested && !together) both.push(key);
    const value = together ?? (theirs_stands ? theirs[key] : mine[key]);
    if (value !== undefined) content[key] = value;
  }
  return { content, both };
}
