// A screenshot in few colours, as a small PNG: the desk and the phone are ink on paper, so that 32 are enough to read by.
import { pngOf } from "./png.mjs";

const kColours = 32;
const kBits = 8;

// In a page of Chromium, which can read its own screenshots: its pixels, four bytes each, as base64.
async function pixelsOf(page, screenshot) {
  const { width, height, data } = await page.evaluate(async (base64) => {
    const blob = await (await fetch(`data:image/png;base64,${base64}`)).blob();
    const image = await createImageBitmap(blob);
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext("2d", { willReadFrequently: true });
    pen.drawImage(image, 0, 0);
    const bytes = pen.getImageData(0, 0, image.width, image.height).data;
    let out = "";
    for (let at = 0; at < bytes.length; at += 0x8000) out += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    return { width: image.width, height: image.height, data: btoa(out) };
  }, screenshot.toString("base64"));
  return { width, height, pixels: Buffer.from(data, "base64") };
}

const far = (a, b) => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2;
const kApart = 18 ** 2; // so that edges of letters do not take all the places

// The most frequent colours that are not nearly one that is there.
function paletteOf(counts) {
  const out = [];
  const byCount = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([code]) => [code >> 16, (code >> 8) & 255, code & 255]);
  for (const colour of byCount) {
    if (out.length === kColours) break;
    if (out.every((one) => far(one, colour) >= kApart)) out.push(colour);
  }
  return out;
}

export async function inFewColours(page, screenshot) {
  const { width, height, pixels } = await pixelsOf(page, screenshot);
  const codeAt = (at) => (pixels[at] << 16) | (pixels[at + 1] << 8) | pixels[at + 2];
  const counts = new Map();
  for (let at = 0; at < pixels.length; at += 4) counts.set(codeAt(at), (counts.get(codeAt(at)) ?? 0) + 1);
  const palette = paletteOf(counts);
  const nearest = new Map([...counts.keys()].map((code) => {
    const colour = [code >> 16, (code >> 8) & 255, code & 255];
    return [code, palette.reduce((best, one, index) => (far(one, colour) < far(palette[best], colour) ? index : best), 0)];
  }));
  const rows = Buffer.alloc((1 + width) * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) rows[y * (1 + width) + 1 + x] = nearest.get(codeAt(4 * (y * width + x)));
  return pngOf({ width, height, bits: kBits, palette: Buffer.from(palette.flat()), rows });
}
