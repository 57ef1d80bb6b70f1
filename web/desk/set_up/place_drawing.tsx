// A place from above, to scale: lanes with their cones as far apart as they are, and the room for what is done on the spot.
import { number } from "../../shared/words/words.ts";
import type { Content } from "./club_draft.ts";
import { many, say } from "./words.ts";

const kWide = 300; // of the drawing, in its own units
const kHigh = 260;
const kMargin = 18;

const metres = (value: unknown, otherwise: number, most: number): number => (typeof value === "number" && value > 0 ? Math.min(value, most) : otherwise);

export function PlaceDrawing({ place }: { place: Content }) {
  const area = (place.area_metres ?? {}) as Content;
  const length = metres(place.lane_length_metres, 15, 60);
  const every = metres(place.cone_spacing_metres, 5, 20);
  const lanes = Math.round(metres(place.lanes, 1, 12));
  const gap = metres(place.lane_gap_metres, 3, 10);
  const [width, depth] = [metres(area.width, 0, 100), metres(area.length, 0, 100)];
  const across = Math.max((lanes - 1) * gap, width, 2);
  const scale = Math.min((kWide - 2 * kMargin) / across, (kHigh - 2 * kMargin) / Math.max(length, depth));
  const ground = kHigh - kMargin;
  const lane = (index: number) => kWide / 2 + (index - (lanes - 1) / 2) * gap * scale;
  const words = many("lanes", lanes, { length: number(length), every: number(every) });
  const room = width > 0 && depth > 0 ? say("place.room", { width: number(width), length: number(depth) }) : "";
  const cones = Array.from({ length: Math.floor(length / every + 1e-6) + 1 }, (_, index) => ground - index * every * scale);
  return (
    <figure>
      <svg viewBox={`0 0 ${kWide} ${kHigh}`} role="img" aria-label={words}>
        <rect x={kWide / 2 - (width * scale) / 2} y={ground - depth * scale} width={width * scale} height={depth * scale} fill="none" stroke="var(--soft)" stroke-dasharray="5 4" />
        {Array.from({ length: lanes }, (_, index) => lane(index)).map((x) => (
          <g key={x}>
            <line x1={x} x2={x} y1={ground} y2={ground - length * scale} stroke="var(--chalk)" stroke-width={2} />
            {cones.map((y) => (
              <circle key={y} cx={x} cy={y} r={3.5} fill="var(--paper)" stroke="var(--ink)" stroke-width={1.5} />
            ))}
          </g>
        ))}
      </svg>
      <figcaption class="soft">
        {words}
        <br />
        {room}
      </figcaption>
    </figure>
  );
}
