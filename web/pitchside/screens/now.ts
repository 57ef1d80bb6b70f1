// The wall clock, a few times a second while somebody looks.
import { useEffect, useState } from "preact/hooks";

export function useNow(going: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    setNow(Date.now());
    const tick = () => setNow(Date.now());
    const timer = going ? setInterval(tick, 200) : undefined;
    document.addEventListener("visibilitychange", tick);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", tick);
    };
  }, [going]);
  return now;
}
