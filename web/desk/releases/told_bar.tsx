// What was told of evenings, as parts of the whole: told apart by pattern, so that nothing is lost in black and white.
import type { ReleaseDone } from "../../shared/api.ts";
import { say } from "./words.ts";

export const kTold = ["held", "cut_short", "missed"] as const;
type Told = (typeof kTold)[number];

const kHeight = 14;
const kTile = 6;
const fillOf = (told: Told): string => `url(#told-${told})`;

// Stands once on a page; the bars refer to what it defines.
export function ToldKey() {
  return (
    <ul class="told-key" aria-hidden="true">
      {kTold.map((told) => (
        <li key={told}>
          <svg width="22" height={kHeight}>
            <defs>
              <pattern id={`told-${told}`} width={kTile} height={kTile} patternUnits="userSpaceOnUse">
                <rect class="bare" width={kTile} height={kTile} />
                {told === "held" ? <rect class="full" width={kTile} height={kTile} /> : null}
                {told === "cut_short" ? <path class="hatched" d="M-1,1L1,-1M0,6L6,0M5,7L7,5" /> : null}
              </pattern>
            </defs>
            <rect class="edge" x="0.5" y="0.5" width="21" height={kHeight - 1} fill={fillOf(told)} />
          </svg>
          {say(`done.${told}`)}
        </li>
      ))}
    </ul>
  );
}

// The numbers stand beside it in the table. most: the evenings that the whole width stands for, from none on.
export function ToldBar({ done, most }: { done: ReleaseDone; most: number }) {
  let from = 0;
  const parts = kTold.map((told) => {
    const at = from;
    from += done[told];
    return { told, at, wide: done[told] };
  });
  const percent = (count: number): string => `${(100 * count) / Math.max(most, 1)}%`;
  return (
    <svg class="told-bar" height={kHeight} aria-hidden="true">
      {parts.map(({ told, at, wide }) => (wide > 0 ? <rect key={told} class="edge" x={percent(at)} y="0.5" width={percent(wide)} height={kHeight - 1} fill={fillOf(told)} /> : null))}
    </svg>
  );
}
