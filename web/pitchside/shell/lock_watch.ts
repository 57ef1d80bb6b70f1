// Locks the app when it has been out of sight for two minutes, unless a session runs. A phone that sleeps runs no timer,
// so it is looked at again when the app comes back into view, before anything of it can be seen.
import type { Keep } from "../keep/keep.ts";

const kAwayMilliseconds = 120_000; // ../shared/reference/trust.md, section 4: our own proposal there
const kLookEveryMilliseconds = 15_000;

export function watchLock(keep: Keep, now: () => number = () => Date.now()): void {
  let since: number | undefined;
  let timer: ReturnType<typeof setInterval> | undefined;

  function lockWhenDue(): void {
    const away = since === undefined ? 0 : now() - since;
    // A clock that was put back meanwhile says nothing of how long it was.
    if ((away >= kAwayMilliseconds || away < 0) && keep.lock.mayClose) void keep.lock.close();
  }

  function seen(): void {
    if (document.visibilityState === "hidden") {
      since ??= now();
      timer ??= setInterval(lockWhenDue, kLookEveryMilliseconds);
      return;
    }
    lockWhenDue();
    clearInterval(timer);
    timer = undefined;
    since = undefined;
  }

  document.addEventListener("visibilitychange", seen);
  seen();
}
