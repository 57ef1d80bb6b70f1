// The bytes of a PNG whose rows are packed already: of greys, or of colours by their number in a palette.
import { deflateSync } from "node:zlib";
import { crc32Of } from "./crc32.mjs";

const kSignature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const kGrey = 0;
const kPalette = 3;

function chunk(name, bytes) {
  const out = Buffer.alloc(12 + bytes.length);
  out.writeUInt32BE(bytes.length, 0);
  out.write(name, 4, "latin1");
  bytes.copy(out, 8);
  out.writeUInt32BE(crc32Of(out.subarray(4, 8 + bytes.length)), 8 + bytes.length);
  return out;
}

// rows: each led by a byte 0 (no filter). palette: three bytes a colour.
export function pngOf({ width, height, bits, palette, rows }) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([bits, palette ? kPalette : kGrey, 0, 0, 0], 8);
  const colours = palette ? [chunk("PLTE", palette)] : [];
  return Buffer.concat([kSignature, chunk("IHDR", head), ...colours, chunk("IDAT", deflateSync(rows, { level: 9 })), chunk("IEND", Buffer.alloc(0))]);
}
