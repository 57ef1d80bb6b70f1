// What is typed of the club stands in this page alone: whoever reloads or closes it is asked by the browser first.
import { effect } from "@preact/signals";
import { unsaved } from "./club_draft.ts";

const askFirst = (event: BeforeUnloadEvent): void => event.preventDefault();

export function watchForLeaving(): () => void {
  return effect(() => {
    if (unsaved.value.length > 0) addEventListener("beforeunload", askFirst);
    else removeEventListener("beforeunload", askFirst);
  });
}
