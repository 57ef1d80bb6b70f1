// The phone's own way back closes what lies over the evening, and does not leave the app.
import { useEffect } from "preact/hooks";

export function useWayBack(open: boolean, close: () => void): void {
  useEffect(() => {
    if (!open) return undefined;
    let went = false;
    history.pushState({ open: true }, "");
    const back = () => {
      went = true;
      close();
    };
    window.addEventListener("popstate", back);
    return () => {
      window.removeEventListener("popstate", back);
      if (!went) history.back(); // closed by its button: its place in the history goes too
    };
  }, [open]);
}
