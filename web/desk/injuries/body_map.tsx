// The body from the front and from the back. Each picture is one stop of the keyboard; arrows go from region to region, Enter
// or the space bar takes one. What is taken is hatched: a pattern, and no colour.
import { useState } from "preact/hooks";
import { stripesIn } from "../../shared/look/hatching.ts";
import { type Face, kFaces, kMapHeight, kMapWidth, type Spot, spotBeside, spotsOf } from "./body_regions.ts";
import { termWords } from "./terms.ts";
import { say } from "./words.ts";

const kHatching = stripesIn({ x: 0, y: 0, width: kMapWidth, height: kMapHeight }, { slant: "falling", step: 7, wide: 1.8 });

export interface Chosen {
  region: string;
  side: string;
  face?: Face; // absent where it was typed
}

interface MapProps {
  chosen: Chosen | undefined;
  choose: (spot: Chosen) => void;
}

const nameOf = ({ region, side }: Spot): string => {
  const where = termWords("region", region);
  return side === "middle" ? where : say("sided", { where, side: termWords("side", side) });
};

const mirrored = (spot: Spot): string | undefined => (spot.mirrored ? `translate(${kMapWidth} 0) scale(-1 1)` : undefined);

const isChosen = (spot: Spot, chosen: Chosen | undefined): boolean =>
  chosen?.region === spot.region && (chosen.side === spot.side || chosen.side === "both" || chosen.side === "") && (chosen.face === undefined || chosen.face === spot.face);

function FaceOf({ face, chosen, choose }: MapProps & { face: Face }) {
  const spots = spotsOf(face);
  const [at, setAt] = useState(0);
  const keys = (event: KeyboardEvent, spot: Spot) => {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      choose(spot);
    }
    const next = spotBeside(spots, spot, event.key);
    if (!next) return;
    event.preventDefault();
    const index = spots.indexOf(next);
    setAt(index);
    const own = (event.currentTarget as Element).parentElement;
    own?.querySelector<SVGElement>(`[data-spot="${index}"]`)?.focus();
  };
  return (
    <figure>
      {/* In SVG the attribute is 'tabindex'; preact writes it as it is given. */}
      <svg viewBox={`0 0 ${kMapWidth} ${kMapHeight}`} role="group" aria-label={say(`map.${face}`)}>
        {spots.map((spot, index) => {
          const taken = isChosen(spot, chosen);
          return (
            <path
              key={`${spot.region} ${spot.side}`}
              data-spot={index}
              d={spot.path}
              transform={mirrored(spot)}
              class={taken ? "spot taken" : "spot"}
              role="button"
              tabindex={index === at ? 0 : -1}
              aria-pressed={taken}
              aria-label={nameOf(spot)}
              onClick={() => {
                setAt(index);
                choose(spot);
              }}
              onKeyDown={(event) => keys(event, spot)}
            >
              <title>{nameOf(spot)}</title>
            </path>
          );
        })}
        {spots.filter((spot) => isChosen(spot, chosen)).map((spot) => (
          <g key={`${spot.region} ${spot.side}`} class="hatching">
            <clipPath id={`taken-${face}-${spot.side}`}>
              <path d={spot.path} transform={mirrored(spot)} />
            </clipPath>
            <path d={kHatching} clip-path={`url(#taken-${face}-${spot.side})`} />
          </g>
        ))}
      </svg>
      <figcaption>{say(`map.${face}`)}</figcaption>
    </figure>
  );
}

export function BodyMap({ chosen, choose }: MapProps) {
  return (
    <div class="body-map">
      {kFaces.map((face) => (
        <FaceOf key={face} face={face} chosen={chosen} choose={({ region, side, face: from }) => choose({ region, side, ...(from ? { face: from } : {}) })} />
      ))}
    </div>
  );
}
