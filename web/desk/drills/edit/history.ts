// What was done to a document, so that it can be undone and done again. Strokes of one kind on one thing, such as the
// letters of a name or a joint being dragged, are one step.
export interface History<Document> {
  now: Document;
  before: Document[];
  after: Document[];
  kind: string | undefined; // of the last step, while it may still grow
}
const kMostSteps = 200;

export const beginning = <Document>(now: Document): History<Document> => ({ now, before: [], after: [], kind: undefined });

export function done<Document>(history: History<Document>, now: Document, kind?: string): History<Document> {
  if (now === history.now) return history;
  if (kind !== undefined && kind === history.kind) return { ...history, now, after: [] };
  return { now, before: [...history.before, history.now].slice(-kMostSteps), after: [], kind };
}

// The stroke is over: the next is a step of its own.
export const settled = <Document>(history: History<Document>): History<Document> => ({ ...history, kind: undefined });

export function undone<Document>(history: History<Document>): History<Document> {
  const now = history.before[history.before.length - 1];
  if (now === undefined) return history;
  return { now, before: history.before.slice(0, -1), after: [history.now, ...history.after], kind: undefined };
}

export function redone<Document>(history: History<Document>): History<Document> {
  const [now, ...after] = history.after;
  if (now === undefined) return history;
  return { now, before: [...history.before, history.now], after, kind: undefined };
}
