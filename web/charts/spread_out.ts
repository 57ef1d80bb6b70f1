// Things in a row that each want a place: as near to it as they can stand without covering each other, in their order.

// Middles in 0 to length, given wanted middles (rising) and widths. Where all together are wider than the length, they
// share it by their widths.
export function spreadOut(wanted: number[], widths: number[], length: number): number[] {
  const total = widths.reduce((sum, width) => sum + width, 0);
  const scale = total > length ? length / total : 1;
  const sizes = widths.map((width) => width * scale);
  const places: number[] = [];
  let free = 0; // the left end of what is still free
  wanted.forEach((middle, at) => {
    const half = sizes[at]! / 2;
    const place = Math.max(middle, free + half);
    places.push(place);
    free = place + half;
  });
  let end = length;
  for (let at = places.length - 1; at >= 0; at--) {
    const half = sizes[at]! / 2;
    places[at] = Math.min(places[at]!, end - half);
    end = places[at]! - half;
  }
  return places;
}
