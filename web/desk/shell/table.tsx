// A table that is sorted by its headings, with the mouse or the keyboard. Numbers stand right, with figures of one width.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { language } from "../../shared/words/words.ts";
import { announce } from "./announce.ts";
import { say } from "./words.ts";

export interface Column<Row> {
  key: string;
  heading: string;
  cell: (row: Row) => ComponentChildren;
  value?: (row: Row) => string | number; // to sort by; without it the column is not sorted. Nothing known: "" or NaN, and last
  numeric?: boolean;
  names?: boolean; // the row's own heading, for whoever reads across
}
export interface Sorting {
  by: string; // a column's key
  down: boolean;
}

interface TableProps<Row> {
  caption: string; // read out, and shown where show_caption
  show_caption?: boolean;
  columns: Column<Row>[];
  rows: Row[];
  rowKey: (row: Row) => string;
  sorting?: Sorting; // at first; without it the rows stay as they come
  onSort?: (sorting: Sorting) => void; // for an address that keeps it
}

function compared(left: string | number, right: string | number, collator: Intl.Collator): number {
  if (typeof left === "number" && typeof right === "number") return left - right;
  return collator.compare(String(left), String(right));
}

export function sorted<Row>(rows: Row[], columns: Column<Row>[], { by, down }: Sorting): Row[] {
  const value = columns.find(({ key }) => key === by)?.value;
  if (!value) return rows;
  const collator = new Intl.Collator(language.value, { numeric: true });
  const unknown = (row: Row) => value(row) === "" || Number.isNaN(value(row));
  const known = rows.filter((row) => !unknown(row)).sort((left, right) => compared(value(left), value(right), collator) * (down ? -1 : 1));
  return [...known, ...rows.filter(unknown)];
}

export function Table<Row>({ caption, show_caption = false, columns, rows, rowKey, sorting, onSort }: TableProps<Row>) {
  const [by, setBy] = useState<Sorting>(sorting ?? { by: "", down: false });
  const sort = (column: Column<Row>) => {
    const next = { by: column.key, down: by.by === column.key && !by.down };
    setBy(next);
    onSort?.(next);
    announce(say(next.down ? "table.sorted_down" : "table.sorted_up", { column: column.heading }));
  };
  const shown = sorted(rows, columns, by);
  return (
    <div class="table" tabIndex={0} role="region" aria-label={caption}>
      <table>
        <caption class={show_caption ? "" : "out-of-sight"}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <Heading key={column.key} column={column} by={by} sort={sort} />
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={rowKey(row)}>
              {columns.map(({ key, cell, numeric, names }) =>
                names ? (
                  <th key={key} scope="row">
                    {cell(row)}
                  </th>
                ) : (
                  <td key={key} class={numeric ? "number" : ""}>
                    {cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Heading<Row>({ column, by, sort }: { column: Column<Row>; by: Sorting; sort: (column: Column<Row>) => void }) {
  const style = column.numeric ? "number" : "";
  if (!column.value) {
    return (
      <th scope="col" class={style}>
        <span class="heading">{column.heading}</span>
      </th>
    );
  }
  const here = by.by === column.key;
  return (
    <th scope="col" class={style} aria-sort={here ? (by.down ? "descending" : "ascending") : "none"}>
      <button type="button" class="sorts" onClick={() => sort(column)}>
        {column.heading}
        <span class="way" aria-hidden="true">
          {here ? (by.down ? "▼" : "▲") : ""}
        </span>
      </button>
      <span class="on-paper">{column.heading}</span>
    </th>
  );
}
