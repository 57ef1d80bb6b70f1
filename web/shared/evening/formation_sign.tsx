// A formation by shape and pattern, as on the card: a lane is a bar with an arrow, spread is dots, pairs are two linked
// dots.
import type { JSX } from "preact";
import type { Formation } from "../engine/answers.ts";

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

function lane({ x, y, width, height }: Box): JSX.Element {
  const head = Math.min(width, 11);
  const middle = y + height / 2;
  const tip = x + width;
  const half = Math.min(height / 2, 9);
  return (
    <g>
      {width > head && <rect x={x} y={middle - 3} width={width - head} height={6} />}
      <path d={`M${tip - head} ${middle - half}L${tip} ${middle}L${tip - head} ${middle + half}Z`} />
    </g>
  );
}

function grid(count: number, step: number, from: number, size: number): number[] {
  const first = from + (size - (count - 1) * step) / 2;
  return Array.from({ length: count }, (_, index) => first + index * step);
}

function spread({ x, y, width, height }: Box): JSX.Element {
  const step = 7;
  const columns = grid(Math.max(1, Math.floor(width / step)), step, x, width);
  const rows = grid(Math.max(1, Math.floor(height / step)), step, y, height);
  return (
    <g>
      {rows.flatMap((row) => columns.map((column) => <circle key={`${row} ${column}`} cx={column} cy={row} r={1.8} />))}
    </g>
  );
}

function pairs({ x, y, width, height }: Box): JSX.Element {
  const link = Math.min(9, Math.max(4, width - 6));
  const step = 18;
  const count = Math.max(1, Math.floor((width + step - link - 6) / step));
  const columns = grid(count, step, x, width - link);
  const rows = grid(Math.max(1, Math.floor(height / 12)), 12, y, height);
  return (
    <g>
      {rows.flatMap((row) =>
        columns.map((column) => (
          <g key={`${row} ${column}`}>
            <line x1={column} y1={row} x2={column + link} y2={row} stroke="var(--ink)" stroke-width={1.5} />
            <circle cx={column} cy={row} r={3} />
            <circle cx={column + link} cy={row} r={3} />
          </g>
        )),
      )}
    </g>
  );
}

export function FormationSign({ formation, box }: { formation: Formation; box: Box }) {
  const drawn = formation === "lane" ? lane(box) : formation === "spread" ? spread(box) : pairs(box);
  return <g fill="var(--ink)">{drawn}</g>;
}
