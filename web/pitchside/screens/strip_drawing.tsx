// The place from above, to scale: the lane runs up the screen, cones and lanes stand as far apart as they are.
import { say, number } from "../words/words.ts";
import type { Place } from "./lay_out.tsx";
import { useMeasured } from "./measured.ts";

const kMargin = 12;
const kWaiting = 2.4; // metres behind the first cone

export function StripDrawing({ place }: { place: Place }) {
  const { ref, width, letter } = useMeasured<HTMLDivElement>();
  const across = Math.max((place.lanes - 1) * place.gap, place.area?.width ?? 0, 2);
  const long = Math.max(place.length, place.area?.length ?? 0) + kWaiting;
  const room = width - letter * 4 - 2 * kMargin; // beside it stands how long it is
  const most = Math.min(420, typeof window === "undefined" ? 420 : window.innerHeight * 0.6);
  const scale = Math.max(0, Math.min(room / across, (most - 2 * kMargin) / long));
  const above = letter * 1.6; // for the distance between lanes
  const height = long * scale + 2 * kMargin + above;
  const start = above + kMargin + (long - kWaiting) * scale;
  const middle = kMargin + (across * scale) / 2;
  const lane = (index: number) => middle + (index - (place.lanes - 1) / 2) * place.gap * scale;
  const lanes = Array.from({ length: place.lanes }, (_, index) => lane(index));
  const cones = Array.from({ length: Math.floor(place.length / place.every + 1e-6) + 1 }, (_, index) => start - index * place.every * scale);
  const right = kMargin + across * scale + letter * 0.6;
  const top = start - place.length * scale;
  return (
    <div ref={ref}>
      {width > 0 && (
        <svg width={Math.min(width, right + letter * 4)} height={height} role="img" aria-label={say("lay_out.drawing")}>
          {place.area && (
            <rect
              x={middle - (place.area.width * scale) / 2}
              y={start - place.area.length * scale}
              width={place.area.width * scale}
              height={place.area.length * scale}
              fill="none"
              stroke="var(--soft)"
              stroke-dasharray="5 4"
            />
          )}
          {lanes.map((x) => (
            <g key={x}>
              <line x1={x} x2={x} y1={start} y2={top} stroke="var(--chalk)" stroke-width={2} />
              <path d={`M${x + 9} ${start - 6}V${start - 26}M${x + 5} ${start - 21}L${x + 9} ${start - 29}L${x + 13} ${start - 21}`} fill="none" stroke="var(--ink)" stroke-width={1.5} />
              {cones.map((y) => (
                <circle key={y} cx={x} cy={y} r={5} fill="var(--paper)" stroke="var(--ink)" stroke-width={2} />
              ))}
              {[1, 2, 3].map((waiting) => (
                <circle key={waiting} cx={x} cy={start + 5 + waiting * 9} r={3} fill="var(--ink)" />
              ))}
            </g>
          ))}
          <path d={`M${right - 4} ${top}H${right + 4}M${right} ${top}V${start}M${right - 4} ${start}H${right + 4}`} stroke="var(--ink)" fill="none" />
          <text x={right + 8} y={(top + start) / 2 + letter / 3} font-size={letter}>
            {number(place.length)} m
          </text>
          {place.lanes > 1 && (
            <g>
              <path d={`M${lane(0)} ${top - 16}v8M${lane(0)} ${top - 12}H${lane(1)}M${lane(1)} ${top - 16}v8`} stroke="var(--ink)" fill="none" />
              <text x={lane(0)} y={top - 20} font-size={letter}>
                {number(place.gap)} m
              </text>
            </g>
          )}
        </svg>
      )}
    </div>
  );
}
