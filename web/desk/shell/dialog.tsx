// A question over the screen, as the browser has it: it takes the keyboard, Escape closes it, and the focus goes back to
// where it was. What was typed in it stays as long as it is mounted.
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { say } from "./words.ts";

interface DialogProps {
  title: string;
  onClose: () => void;
  wide?: boolean;
  children: ComponentChildren;
}

export function Dialog({ title, onClose, wide = false, children }: DialogProps) {
  const at = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = at.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  const cancelled = (event: Event) => {
    event.preventDefault(); // whoever opened it closes it, by no longer showing it
    onClose();
  };
  return (
    <dialog ref={at} class={wide ? "wide" : ""} aria-labelledby={id} onCancel={cancelled}>
      <header>
        <h2 id={id}>{title}</h2>
        <button type="button" class="quiet" onClick={onClose}>
          {say("close")}
        </button>
      </header>
      {children}
    </dialog>
  );
}
