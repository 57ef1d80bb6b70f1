// Rows of one kind in a document, such as evenings, matches and holidays: each with its fields and a way to take it out.
import type { ComponentChildren } from "preact";
import type { Content } from "./club_draft.ts";
import { say } from "./words.ts";

interface RowsProps {
  rows: Content[];
  legend: (number: number) => string;
  add: string;
  fresh: Content;
  fields: (row: Content, set: (keys: Content) => void) => ComponentChildren;
  onChange: (rows: Content[]) => void;
}

export const rowsOf = (value: unknown): Content[] => (Array.isArray(value) ? (value as Content[]) : []);

export function Rows({ rows, legend, add, fresh, fields, onChange }: RowsProps) {
  const set = (at: number, keys: Content) => onChange(rows.map((one, index) => (index === at ? { ...one, ...keys } : one)));
  return (
    <>
      {rows.map((row, at) => (
        <fieldset key={at} class="row top one-row">
          <legend>{legend(at + 1)}</legend>
          {fields(row, (keys) => set(at, keys))}
          <button type="button" aria-label={say("remove_of", { what: legend(at + 1) })} onClick={() => onChange(rows.filter((_, index) => index !== at))}>
            {say("remove")}
          </button>
        </fieldset>
      ))}
      <p>
        <button type="button" onClick={() => onChange([...rows, fresh])}>
          {add}
        </button>
      </p>
    </>
  );
}
