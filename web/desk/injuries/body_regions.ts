// The mannequin of the body map: each region as a piece between an upper and a lower edge, drawn once for the right half of
// the picture and mirrored. Our own drawing; the regions are those of the records (catalogue/record_terms.toml).
export interface Edge {
  y: number;
  from: number; // x of the inner edge
  to: number;
}
export interface Piece {
  region: string;
  top: Edge;
  bottom: Edge;
  bulge: number; // outwards, of both sides; the head is round
  paired: boolean;
}

export const kMapWidth = 200;
export const kMapHeight = 440;

const piece = (region: string, top: [number, number, number], bottom: [number, number, number], bulge = 0, paired = true): Piece => ({
  region, bulge, paired,
  top: { y: top[0], from: top[1], to: top[2] },
  bottom: { y: bottom[0], from: bottom[1], to: bottom[2] },
});

const kBoth = [
  piece("head", [8, 88, 112], [64, 90, 110], 0, false),
  piece("neck", [62, 90, 110], [86, 84, 116], -1, false),
  piece("shoulder", [86, 117, 140], [118, 133, 155], 2),
  piece("upper-arm", [118, 134, 156], [166, 139, 160], 2),
  piece("elbow", [166, 139, 160], [192, 143, 164], 1),
  piece("forearm", [192, 143, 164], [232, 148, 170], 1),
  piece("wrist", [232, 148, 170], [256, 151, 173], -0.5),
  piece("hand", [256, 151, 173], [294, 156, 170], 5),
  piece("knee", [306, 104, 131], [334, 105, 130], 1),
  piece("lower-leg", [334, 105, 130], [386, 106, 127], 4),
  piece("ankle", [386, 106, 127], [410, 105, 130], -1),
  piece("foot", [410, 105, 130], [434, 105, 145], 1),
];

export const kFaces = ["front", "back"] as const;
export type Face = (typeof kFaces)[number];

export const kPieces: Record<Face, Piece[]> = {
  front: [
    ...kBoth,
    piece("chest", [86, 84, 116], [138, 70, 130], 6, false),
    piece("abdomen", [138, 70, 130], [188, 68, 132], -4, false),
    piece("hip-and-groin", [188, 100, 132], [230, 101, 137], 2),
    piece("thigh", [230, 102, 137], [306, 104, 131], 2),
  ],
  back: [
    ...kBoth,
    piece("thoracic-spine", [86, 84, 116], [150, 70, 130], 5, false),
    piece("lumbosacral", [150, 70, 130], [230, 64, 136], -3, false),
    piece("thigh", [230, 102, 137], [306, 104, 131], 2),
  ],
};

// The piece's edge as a path of SVG.
export function pathOf({ region, top, bottom, bulge }: Piece): string {
  if (region === "head") return `M100 ${top.y}A22 28 0 0 1 100 ${bottom.y}A22 28 0 0 1 100 ${top.y}Z`;
  const middle = (top.y + bottom.y) / 2;
  const inner = (top.from + bottom.from) / 2 - bulge;
  const outer = (top.to + bottom.to) / 2 + bulge;
  return `M${top.from} ${top.y}Q${inner} ${middle} ${bottom.from} ${bottom.y}H${bottom.to}Q${outer} ${middle} ${top.to} ${top.y}Z`;
}

// A spot of the map: the front of a person shows the left side on the right of the picture.
export interface Spot {
  face: Face;
  region: string;
  side: string; // left, right, middle
  mirrored: boolean;
  at: { x: number; y: number };
  path: string;
}

export function spotsOf(face: Face): Spot[] {
  return kPieces[face].flatMap((one) => {
    const y = (one.top.y + one.bottom.y) / 2;
    const x = (one.top.from + one.top.to + one.bottom.from + one.bottom.to) / 4;
    const path = pathOf(one);
    if (!one.paired) return [{ face, region: one.region, side: "middle", mirrored: false, at: { x, y }, path }];
    const [here, there] = face === "front" ? ["left", "right"] : ["right", "left"];
    return [
      { face, region: one.region, side: here ?? "", mirrored: false, at: { x, y }, path },
      { face, region: one.region, side: there ?? "", mirrored: true, at: { x: kMapWidth - x, y }, path },
    ];
  });
}

const kWays: Record<string, [number, number]> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

// The nearest spot in the arrow's direction; what lies aside counts double, so that a limb is followed.
export function spotBeside(spots: Spot[], from: Spot, key: string): Spot | undefined {
  const way = kWays[key];
  if (!way) return undefined;
  let best: { spot: Spot; far: number } | undefined;
  for (const spot of spots) {
    const [dx, dy] = [spot.at.x - from.at.x, spot.at.y - from.at.y];
    const along = dx * way[0] + dy * way[1];
    if (along <= 1) continue;
    const aside = Math.abs(dx * way[1] + dy * way[0]);
    const far = along + 2 * aside;
    if (!best || far < best.far) best = { spot, far };
  }
  return best?.spot;
}

// Where a hurt there holds back (docs/formats/entries.md, 'place'); left out where no area is just that: then the rules
// take the careful side.
const kPlaces: Record<string, string> = {
  head: "head", neck: "neck", shoulder: "shoulder", elbow: "elbow", wrist: "wrist-and-hand", hand: "wrist-and-hand", chest: "chest",
  lumbosacral: "low-back", "hip-and-groin": "hip-and-groin", knee: "knee", "lower-leg": "lower-leg", ankle: "ankle", foot: "foot",
};

export function placeOf(region: string | undefined, face: Face | undefined): string | undefined {
  if (region === "thigh") return face ? `${face}-thigh` : undefined;
  return region === undefined ? undefined : kPlaces[region];
}
