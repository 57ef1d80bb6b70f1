// Moving in the week's table by the keyboard. What can be opened takes the focus itself, and a day without an evening its
// cell: one of them at a time is in the order of Tab. Left and right go through a row, up and down through the evenings of
// a day, of which a squad may have two.
import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { movedBy } from "../squad/grid_keys.ts";

interface Stop {
  row: number;
  column: number;
  nth: number; // in its cell
}
type Given = Pick<JSX.HTMLAttributes<HTMLElement>, "tabIndex" | "onFocus"> & { "data-stop": string };

export interface WeekKeys {
  table: Pick<JSX.HTMLAttributes<HTMLTableElement>, "onKeyDown">;
  stop(row: number, column: number, nth?: number): Given;
}

const written = ({ row, column, nth }: Stop): string => `${row} ${column} ${nth}`;
function read(text: string): Stop {
  const [row = 0, column = 0, nth = 0] = text.split(" ").map(Number);
  return { row, column, nth };
}

// Where a key leads to among the stops of a table, which stand in its order; undefined where it is no key of the table.
export function stopBy(key: string, with_control: boolean, from: Stop, stops: Stop[]): Stop | undefined {
  if (key === "ArrowUp" || key === "ArrowDown") {
    const column = stops.filter((stop) => stop.column === from.column);
    const at = column.findIndex((stop) => stop.row === from.row && stop.nth === from.nth);
    return column[Math.min(column.length - 1, Math.max(0, at + (key === "ArrowUp" ? -1 : 1)))];
  }
  const count = (of: keyof Stop) => Math.max(...stops.map((stop) => stop[of])) + 1;
  const to = movedBy(key, with_control, [from.row, from.column], count("row"), count("column"));
  const cell = to && stops.filter((stop) => stop.row === to[0] && stop.column === to[1]);
  return cell?.[Math.min(from.nth, cell.length - 1)];
}

export function useWeekKeys(): WeekKeys {
  const [at, setAt] = useState("0 0 0");
  return {
    table: {
      onKeyDown: (event) => {
        const from = (event.target as HTMLElement).dataset.stop;
        if (from === undefined || event.altKey || event.metaKey || event.shiftKey) return;
        const all = [...event.currentTarget.querySelectorAll<HTMLElement>("[data-stop]")];
        const to = stopBy(event.key, event.ctrlKey, read(from), all.map(({ dataset }) => read(dataset.stop ?? "")));
        if (!to) return;
        event.preventDefault();
        all.find(({ dataset }) => dataset.stop === written(to))?.focus();
      },
    },
    stop: (row, column, nth = 0) => {
      const own = written({ row, column, nth });
      return { tabIndex: at === own ? 0 : -1, "data-stop": own, onFocus: () => setAt(own) };
    },
  };
}
