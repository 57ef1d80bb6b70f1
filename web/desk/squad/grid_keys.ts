// Moving in a grid by the keyboard: one cell takes the focus, arrows, Home and End move it, Enter or a click opens it.
import { useState } from "preact/hooks";
import type { JSX } from "preact";

interface GridKeys {
  table: Pick<JSX.HTMLAttributes<HTMLTableElement>, "onKeyDown">;
  cell(row: number, column: number): JSX.HTMLAttributes<HTMLTableCellElement>;
}

// Where a key leads to; undefined where it is no key of the grid.
export function movedBy(key: string, with_control: boolean, [row, column]: [number, number], rows: number, columns: number): [number, number] | undefined {
  switch (key) {
    case "ArrowUp":
      return [Math.max(0, row - 1), column];
    case "ArrowDown":
      return [Math.min(rows - 1, row + 1), column];
    case "ArrowLeft":
      return [row, Math.max(0, column - 1)];
    case "ArrowRight":
      return [row, Math.min(columns - 1, column + 1)];
    case "Home":
      return [with_control ? 0 : row, 0];
    case "End":
      return [with_control ? rows - 1 : row, columns - 1];
    default:
      return undefined;
  }
}

export function useGridKeys(rows: number, columns: number, open: (row: number, column: number) => void): GridKeys {
  const [at, setAt] = useState<[number, number]>([0, 0]);
  // A grid that became smaller still has one cell that takes the focus.
  const here: [number, number] = [Math.min(at[0], rows - 1), Math.min(at[1], columns - 1)];
  return {
    table: {
      onKeyDown: (event) => {
        const cell = event.target as HTMLElement;
        if (cell.tagName !== "TD") return;
        if (event.key === "Enter") return open(...here);
        const to = movedBy(event.key, event.ctrlKey, here, rows, columns);
        if (!to) return;
        event.preventDefault();
        setAt(to);
        event.currentTarget.querySelector<HTMLElement>(`[data-at="${to[0]} ${to[1]}"]`)?.focus();
      },
    },
    cell: (row, column) => ({
      tabIndex: here[0] === row && here[1] === column ? 0 : -1,
      "data-at": `${row} ${column}`,
      onFocus: () => setAt([row, column]),
      onClick: () => open(row, column),
    }),
  };
}
