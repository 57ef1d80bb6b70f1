// Stripes and dots as shapes: as much ink as they say, nothing outside of the box, and something in the smallest.
import assert from "node:assert/strict";
import { test } from "node:test";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { stripesIn, dotsIn } = await loadTypescript("../shared/look/hatching.ts");
const kBoxes = [
  { x: 0, y: 0, width: 600, height: 16 },
  { x: 37.25, y: 100.5, width: 120, height: 60.75 },
  { x: -3, y: 4, width: 2.5, height: 90 },
];

const polygonsIn = (path) => path.split("Z").filter((one) => one !== "").map((one) => one.slice(1).split("L").map((point) => point.split(" ").map(Number)));

// By the shoelace formula.
const areaOf = (points) => Math.abs(points.reduce((sum, [x, y], at) => {
  const [nextX, nextY] = points[(at + 1) % points.length];
  return sum + x * nextY - nextX * y;
}, 0)) / 2;

for (const slant of ["rising", "falling"]) {
  test(`${slant} stripes take their share of the box and stay in it`, () => {
    for (const box of kBoxes) {
      const stripes = polygonsIn(stripesIn(box, { slant, step: 6, wide: 1.5 }));
      const ink = stripes.reduce((sum, points) => sum + areaOf(points), 0);
      const of = box.width * box.height;
      assert.ok(Math.abs(ink / of - 0.25) < 0.03, `${ink} of ${of}`);
      for (const [x, y] of stripes.flat()) {
        assert.ok(x >= box.x - 0.01 && x <= box.x + box.width + 0.01 && y >= box.y - 0.01 && y <= box.y + box.height + 0.01, `${x}, ${y}`);
      }
    }
  });
}

test("a rising stripe rises to the right, a falling one falls", () => {
  const box = { x: 0, y: 0, width: 60, height: 60 };
  const leansOf = (slant) => polygonsIn(stripesIn(box, { slant, step: 30, wide: 4 })).map((points) => {
    const [left] = [...points].sort(([one], [other]) => one - other);
    const right = [...points].sort(([one], [other]) => other - one)[0];
    return Math.sign(right[1] - left[1]);
  });
  assert.ok(leansOf("rising").filter((lean) => lean < 0).length >= 3);
  assert.ok(leansOf("falling").filter((lean) => lean > 0).length >= 3);
});

test("dots are whole, in the middle, and one at least", () => {
  const centres = (box) => [...dotsIn(box, 6, 0.9).matchAll(/M(-?[\d.]+) (-?[\d.]+)a/g)].map(([, x, y]) => [Number(x) + 0.9, Number(y)]);
  const field = centres({ x: 10, y: 0, width: 14, height: 12 });
  assert.deepEqual(field.map(([x, y]) => [Math.round(x), Math.round(y)]), [[14, 3], [20, 3], [14, 9], [20, 9]]);
  assert.equal(centres({ x: 0, y: 0, width: 1, height: 1 }).length, 1);
});
