// A table of the report, in the frame's own: sorted by its headings where it has rows enough for an order.
import type { components } from "../../shared/api.ts";
import { type Column, Table } from "../shell/table.tsx";

const kFewestToSort = 3;
const kShortRows = 12;
const kSlimColumns = 7;

type Cells = string[];

// '1.06 (0.483 to 2.00)' and '1,06 (0,483 a 2,00)' by their first number; '-' and 'not known' by none.
function valueOf(cell: string, numeric: boolean): string | number {
  return numeric ? Number.parseFloat(cell.replace(",", ".")) : cell;
}

export function ReportTable({ caption, columns, rows }: Omit<components["schemas"]["ReportTable"], "kind">) {
  const keyed = rows.map((cells, at) => ({ cells, key: String(at) }));
  const shown = columns.map(({ heading, numeric }, at): Column<{ cells: Cells; key: string }> => ({
    key: String(at),
    heading,
    numeric,
    names: at === 0,
    cell: ({ cells }) => cells[at] ?? "",
    // A column without a heading has no name for a button.
    ...(heading !== "" && rows.length >= kFewestToSort ? { value: ({ cells }) => valueOf(cells[at] ?? "", numeric) } : {}),
  }));
  // On paper a long one of a few columns stands in two.
  const slim = rows.length > kShortRows && columns.length <= kSlimColumns;
  return (
    <div class={slim ? "slim" : undefined}>
      <Table caption={caption} show_caption columns={shown} rows={keyed} rowKey={({ key }) => key} />
    </div>
  );
}
