// Who is signed in, and what requests wait for: that somebody signs in, or shows the second factor's code once more. The
// screens of the shell look at these and answer them (../shell/sign_in.tsx, ../shell/step_up.tsx).
import { signal } from "@preact/signals";
import type { Me } from "../../shared/api.ts";

export type Door = "closed" | "sign-in" | "code"; // closed: nobody is asked for anything

export const me = signal<Me | undefined>(undefined);
export const door = signal<Door>("closed");
export const codeWanted = signal(false);

let in_again: ((came: boolean) => void)[] = [];
let shown: ((did: boolean) => void)[] = [];
let idle: ReturnType<typeof setTimeout> | undefined;

export function comeIn(why: "sign-in-needed" | "second-factor-needed"): Promise<boolean> {
  if (door.peek() === "closed") door.value = why === "sign-in-needed" ? "sign-in" : "code";
  return new Promise((resolve) => in_again.push(resolve));
}

// Somebody else than before sees nothing of what is open: the page begins anew.
export function cameIn(who: Me): void {
  const before = me.peek();
  if (before && before.account !== who.account) return location.reload();
  me.value = who;
  stillHere();
  door.value = "closed";
  const waiting = in_again;
  in_again = [];
  for (const go_on of waiting) go_on(true);
}

export function showCode(): Promise<boolean> {
  codeWanted.value = true;
  return new Promise((resolve) => shown.push(resolve));
}

export function codeShown(did: boolean): void {
  codeWanted.value = false;
  const waiting = shown;
  shown = [];
  for (const go_on of waiting) go_on(did);
}

// The server ends a session that nobody uses; what is on the screen is covered at the same time, not at the next click.
export function stillHere(): void {
  const who = me.peek();
  if (!who) return;
  clearTimeout(idle);
  const left = Math.min(who.ends_without_a_request_after_seconds, (Date.parse(who.ends_at) - Date.now()) / 1000);
  idle = setTimeout(() => {
    if (door.peek() === "closed") door.value = "sign-in";
  }, Math.max(0, left) * 1000);
}
