// A list in the form: each row a group of fields, which can be moved, taken away and added to.
import type { ComponentChildren } from "preact";
import { announce } from "../../shell/announce.ts";
import { apart, say } from "../words.ts";
import { FaultsBelow, useDraft } from "./fields.tsx";
import { idOfPath, moved, valueAt, withValue } from "./paths.ts";

interface RowsProps<Row> {
  path: string;
  title: string;
  named: (row: Row) => string; // the row in words, for its legend and its buttons
  least: number;
  most: number;
  fresh: () => Row;
  add: string;
  ordered?: boolean;
  compact?: boolean; // a row on one line
  remove?: (index: number) => void; // in place of taking the row out
  children: (path: string, index: number) => ComponentChildren;
}

export function Rows<Row>({ path, title, named, least, most, fresh, add, ordered, compact, remove, children }: RowsProps<Row>) {
  const draft = useDraft();
  const rows = (valueAt(draft.history.value.now, path) as Row[] | undefined) ?? [];
  const set = (next: Row[]) => draft.change((drill) => withValue(drill, path, next.length === 0 && least === 0 ? undefined : next));
  const move = (index: number, by: -1 | 1) => {
    set(moved(rows, index, by));
    announce(say(by < 0 ? "rows.was_moved_up" : "rows.was_moved_down"));
  };
  const take = (index: number) => {
    if (remove) remove(index);
    else set(rows.filter((_, at) => at !== index));
    announce(say("rows.was_removed"));
    document.getElementById(`${idOfPath(path)}-add`)?.focus();
  };
  return (
    <section class={`rows${compact ? " compact" : ""}`} id={idOfPath(path)} tabIndex={-1} aria-label={title}>
      <h3>{title}</h3>
      {rows.map((row, index) => (
        <fieldset key={index}>
          <legend class={compact ? "out-of-sight" : ""}><bdi>{named(row) || say("rows.nameless")}</bdi></legend>
          <div class="fields">{children(`${path}.${index + 1}`, index)}</div>
          <p class="row row-buttons">
            {ordered ? (
              <>
                <button type="button" disabled={index === 0} onClick={() => move(index, -1)}>
                  {say("rows.up")}<span class="out-of-sight"> {apart(named(row))}</span>
                </button>
                <button type="button" disabled={index === rows.length - 1} onClick={() => move(index, 1)}>
                  {say("rows.down")}<span class="out-of-sight"> {apart(named(row))}</span>
                </button>
              </>
            ) : null}
            <button type="button" disabled={rows.length <= least} onClick={() => take(index)}>
              {say("rows.remove")}<span class="out-of-sight"> {apart(named(row))}</span>
            </button>
          </p>
        </fieldset>
      ))}
      <FaultsBelow path={path} />
      <button id={`${idOfPath(path)}-add`} type="button" disabled={rows.length >= most} onClick={() => set([...rows, fresh()])}>
        {add}
      </button>
    </section>
  );
}
