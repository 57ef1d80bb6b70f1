// What was told of evenings, as parts of the whole: told apart by pattern, so that nothing is lost in black and white.
import type { ReleaseDone } from "../../shared/api.ts";
import { stripesIn } from "../../shared/look/hatching.ts";
import { say } from "./words.ts";

export const kTold = ["held", "cut_short", "missed"] as const;
type Told = (typeof kTold)[number];

const kHeight = 14;
const kWidest = 1200; // of a column, in pixels
const kHatching = stripesIn({ x: 0, y: 0, width: kWidest, height: kHeight }, { slant: "rising", step: 6, wide: 2.8 });

// Of a width that only the page knows: what goes beyond it is not seen.
function Part({ told, x, width }: { told: Told; x: string | number; width: string | number }) {
  const place = { x, y: 0.5, width, height: kHeight - 1 };
  return (
    <>
      <rect class={told === "held" ? "full" : "bare"} {...place} />
      {told === "cut_short" ? (
        <svg {...place}>
          <use href="#told-hatching" />
        </svg>
      ) : null}
      <rect class="edge" {...place} />
    </>
  );
}

// Stands once on a page; the bars refer to what it defines.
export function ToldKey() {
  return (
    <ul class="told-key" aria-hidden="true">
      {kTold.map((told) => (
        <li key={told}>
          <svg width="22" height={kHeight}>
            {told === "cut_short" ? (
              <defs>
                <path id="told-hatching" class="hatched" d={kHatching} />
              </defs>
            ) : null}
            <Part told={told} x={0.5} width={21} />
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
      {parts.map(({ told, at, wide }) => (wide > 0 ? <Part key={told} told={told} x={percent(at)} width={percent(wide)} /> : null))}
    </svg>
  );
}
