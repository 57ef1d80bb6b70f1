// What the frame says beside the screen, over it and never in its way: what can be taken back, what is under way, and that
// nobody answers.
import { noSignal, waitsForServer } from "../api/line.ts";
import { announced } from "./announce.ts";
import { type Job, jobs } from "./jobs.ts";
import { undo } from "./undo.ts";
import { say } from "./words.ts";

export function Bars() {
  return (
    <div class="bars">
      <p class="out-of-sight" role="status" aria-live="polite">
        {announced.value.words}
        {announced.value.times % 2 ? "\u00a0" : ""}
      </p>
      {noSignal.value ? (
        <p class="bar act" role="alert">
          {say("no_signal")}
        </p>
      ) : null}
      {waitsForServer.value > 0 ? (
        <p class="bar" role="status">
          {say("waits")}
        </p>
      ) : null}
      {jobs.value.map((job) => (
        <JobBar key={job.number} job={job} />
      ))}
      <UndoBar />
    </div>
  );
}

function JobBar({ job }: { job: Job }) {
  return (
    <div class="bar">
      <label class="job">
        {job.words}
        <progress max={job.of} value={job.of === undefined ? undefined : job.done} />
      </label>
      {job.cancel ? (
        <button type="button" onClick={job.cancel}>
          {say("cancel_job")}
        </button>
      ) : null}
    </div>
  );
}

function UndoBar() {
  const done = undo.offered.value;
  if (!done) return null;
  return (
    <div class="bar" role="group" aria-label={say("undo.about")} onMouseEnter={undo.hold} onMouseLeave={undo.letGo} onFocusIn={undo.hold} onFocusOut={undo.letGo}>
      <bdi>{done.words}</bdi>
      <button type="button" onClick={() => void undo.take()}>
        {say("undo.take")}
      </button>
      <button type="button" class="quiet" onClick={undo.forget}>
        {say("close")}
      </button>
    </div>
  );
}

// Ctrl+Z, where it does not mean what is being typed.
export function watchForUndo(): void {
  document.addEventListener("keydown", (event) => {
    const typing = event.target instanceof Element && event.target.closest("input, textarea, select, [contenteditable]");
    if (event.key !== "z" || !(event.ctrlKey || event.metaKey) || event.shiftKey || typing || !undo.offered.peek()) return;
    event.preventDefault();
    void undo.take();
  });
}
