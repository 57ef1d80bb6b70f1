// Keeps the screen on while a run goes. The lock ends when the page is hidden, so it is asked for again.
import { useEffect } from "preact/hooks";

export function useAwake(wanted: boolean): void {
  useEffect(() => {
    if (!wanted || !("wakeLock" in navigator)) return undefined;
    let lock: WakeLockSentinel | undefined;
    let over = false;
    const ask = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        const got = await navigator.wakeLock.request("screen");
        if (over) await got.release();
        else lock = got;
      } catch {
        // A phone low on power refuses; the run goes on, its clock does not need the screen.
      }
    };
    void ask();
    document.addEventListener("visibilitychange", ask);
    return () => {
      over = true;
      document.removeEventListener("visibilitychange", ask);
      void lock?.release();
    };
  }, [wanted]);
}
