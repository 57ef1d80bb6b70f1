// Small grey pictures: a screenshot at half its size in sixteen greys, written as a PNG of four bits a pixel and read back. Only what this
// file writes is read.
import { inflateSync } from "node:zlib";
import { pngOf } from "../../tools/picture/png.mjs";

const kBits = 4;

// In a page of Chromium, which can read its own screenshots: {width, height, levels: base64, a byte a pixel}.
export async function halved(page, screenshot) {
  const { width, height, levels } = await page.evaluate(async (base64) => {
    const blob = await (await fetch(`data:image/png;base64,${base64}`)).blob();
    const image = await createImageBitmap(blob);
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext("2d", { willReadFrequently: true });
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    const across = image.width >> 1;
    const down = image.height >> 1;
    let out = "";
    for (let y = 0; y < down; y++) {
      for (let x = 0; x < across; x++) {
        let sum = 0;
        for (const [dx, dy] of [[0, 0], [1, 0], [0, 1], [1, 1]]) {
          const at = 4 * ((2 * y + dy) * image.width + 2 * x + dx);
          sum += 299 * data[at] + 587 * data[at + 1] + 114 * data[at + 2];
        }
        out += String.fromCharCode(Math.round(sum / 4000 / 17));
      }
    }
    return { width: across, height: down, levels: btoa(out) };
  }, screenshot.toString("base64"));
  return { width, height, levels: Buffer.from(levels, "base64") };
}

export function written({ width, height, levels }) {
  const stride = 1 + Math.ceil(width / 2);
  const rows = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * stride + 1 + (x >> 1)] |= levels[y * width + x] << (x % 2 === 0 ? 4 : 0);
  }
  return pngOf({ width, height, bits: kBits, rows });
}

export function readBack(bytes, name) {
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  const parts = [];
  for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at)) {
    if (bytes.toString("latin1", at + 4, at + 8) === "IDAT") parts.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  }
  const stride = 1 + Math.ceil(width / 2);
  const rows = inflateSync(Buffer.concat(parts));
  if (bytes[24] !== kBits || rows.length !== stride * height || rows.some((byte, index) => index % stride === 0 && byte !== 0)) {
    throw new Error(`${name} is not one of the pictures that baselines.mjs writes; --renew makes it anew`);
  }
  const levels = Buffer.alloc(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) levels[y * width + x] = (rows[y * stride + 1 + (x >> 1)] >> (x % 2 === 0 ? 4 : 0)) & 15;
  }
  return { width, height, levels };
}

// Three pictures beside each other: as it was, as it is, and where they differ, dark.
export function sideBySide(was, is, least) {
  const width = 3 * is.width + 16;
  const levels = Buffer.alloc(width * is.height, 8);
  for (let y = 0; y < is.height; y++) {
    for (let x = 0; x < is.width; x++) {
      const now = is.levels[y * is.width + x];
      const before = y < was.height && x < was.width ? was.levels[y * was.width + x] : 8;
      levels[y * width + x] = before;
      levels[y * width + is.width + 8 + x] = now;
      levels[y * width + 2 * is.width + 16 + x] = Math.abs(now - before) >= least ? 0 : 15;
    }
  }
  return { width, height: is.height, levels };
}
