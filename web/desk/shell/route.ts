// Where one is in the desk: '#/squad/u13-kestrels?session=3' and back. An address holds ids and never names, so that it may
// be sent to somebody, or stand in a history, and tell nothing.
import { computed, signal } from "@preact/signals";

// The screens, and what the second part of an address means there.
interface OfScreens {
  week: { monday?: string }; // '2026-11-23'
  squad: { squad?: string };
  drills: { drill?: string };
  people: { player?: string };
  coaches: { account?: string };
  injuries: { injury?: string };
  evidence: { page?: string };
  "set-up": { step?: string };
  releases: { release?: string };
  account: { part?: string }; // one's own: password, second factor, sessions
}
export type ScreenName = keyof OfScreens;
// further: what is chosen on a screen, such as a filter or an open row; ids and words of ours only.
export type RouteOf<Name extends ScreenName> = { screen: Name; further: Record<string, string> } & OfScreens[Name];
export type Route = { [Name in ScreenName]: RouteOf<Name> }[ScreenName];

const kParts: { [Name in ScreenName]: keyof OfScreens[Name] & string } = {
  week: "monday",
  squad: "squad",
  drills: "drill",
  people: "player",
  coaches: "account",
  injuries: "injury",
  evidence: "page",
  "set-up": "step",
  releases: "release",
  account: "part",
};

const isScreen = (word: string): word is ScreenName => Object.hasOwn(kParts, word);
const kId = /^[\w.-]{1,64}$/;

// Of what stands after the '#'; undefined where that is no address of the desk.
export function parseRoute(hash: string): Route | undefined {
  const [path = "", question = ""] = hash.replace(/^#/, "").split("?");
  const [before, screen, part, ...more] = path.split("/");
  if (before !== "" || screen === undefined || !isScreen(screen) || more.length > 0) return undefined;
  if (part !== undefined && part !== "" && !kId.test(part)) return undefined;
  if (screen === "week" && part && !isDay(part)) return undefined;
  const further = Object.fromEntries([...new URLSearchParams(question)].filter(([key, value]) => kId.test(key) && kId.test(value)));
  return { screen, further, ...(part ? { [kParts[screen]]: part } : {}) } as Route;
}

function isDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(`${text}T12:00:00Z`));
}

// '#/squad/u13-kestrels?session=3'
export function hashOf<Name extends ScreenName>(screen: Name, part?: string, further: Record<string, string> = {}): string {
  const question = new URLSearchParams(further).toString();
  return `#/${screen}${part ? `/${part}` : ""}${question ? `?${question}` : ""}`;
}

const hash = signal(globalThis.location?.hash ?? "");
globalThis.addEventListener?.("hashchange", () => (hash.value = location.hash));

export const route = computed(() => parseRoute(hash.value));
export const atTheDoor = computed(() => hash.value === "" || hash.value === "#" || hash.value === "#/");

// replace: for what is not worth a step back, such as a letter more in a filter.
export function go(to: string, { replace = false } = {}): void {
  if (!replace) {
    location.hash = to;
    return;
  }
  history.replaceState(null, "", to);
  hash.value = location.hash;
}
