// A field of a document by its path, as faults name it: 'rung.1.change', the first of a list being 1.
export type Value = string | number | boolean | Value[] | Table | undefined;
export interface Table {
  [key: string]: Value;
}

// Of the field on the screen.
export const idOfPath = (path: string): string => `field-${path.replaceAll(".", "-")}`;

const keyOf = (part: string): string | number => (/^\d+$/.test(part) ? Number(part) - 1 : part);

export function valueAt(document: unknown, path: string): unknown {
  let at = document;
  for (const part of path.split(".")) {
    if (typeof at !== "object" || at === null) return undefined;
    at = (at as Record<string | number, unknown>)[keyOf(part)];
  }
  return at;
}

// undefined takes the field away; what lies on the way and is not there is made.
export function withValue<Document>(document: Document, path: string, value: unknown): Document {
  const [first = "", ...rest] = path.split(".");
  const key = keyOf(first);
  const inner = rest.length === 0 ? value : withValue((document as Record<string | number, unknown> | undefined)?.[key] ?? {}, rest.join("."), value);
  if (typeof key === "number") {
    const list = [...((document as unknown[] | undefined) ?? [])];
    list[key] = inner;
    return list as Document;
  }
  const { [key]: _, ...others } = (document ?? {}) as Record<string, unknown>;
  if (inner === undefined) return others as Document;
  // In its place, so that a document that is typed back to what it was is that document.
  const there = Object.hasOwn((document ?? {}) as object, key);
  return (there ? { ...(document as object), [key]: inner } : { ...others, [key]: inner }) as Document;
}

export function moved<T>(list: T[], index: number, by: number): T[] {
  const to = index + by;
  const one = list[index];
  if (one === undefined || to < 0 || to >= list.length) return list;
  const rest = list.filter((_, at) => at !== index);
  return [...rest.slice(0, to), one, ...rest.slice(to)];
}
