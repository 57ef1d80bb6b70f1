// A ZIP read back, by its central directory (APPNOTE.TXT 6.3.3, 4.3): what reads should not be what wrote.
import { inflateRawSync } from "node:zlib";

const kEnd = 0x06054b50;
const kEntry = 0x02014b50;

// Name to text, in the order of the directory.
export function unzipped(bytes) {
  const end = bytes.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  if (end < 0 || bytes.readUInt32LE(end) !== kEnd) throw new Error("no end of a ZIP");
  const out = new Map();
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    if (bytes.readUInt32LE(at) !== kEntry) throw new Error(`no entry at ${at}`);
    const [method, packed, size, name, extra, comment, from] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20), bytes.readUInt32LE(at + 24), bytes.readUInt16LE(at + 28), bytes.readUInt16LE(at + 30), bytes.readUInt16LE(at + 32), bytes.readUInt32LE(at + 42)];
    const data = from + 30 + bytes.readUInt16LE(from + 26) + bytes.readUInt16LE(from + 28);
    const raw = bytes.subarray(data, data + packed);
    const file = method === 8 ? inflateRawSync(raw) : raw;
    if (file.length !== size) throw new Error("a file of another length");
    out.set(bytes.toString("utf8", at + 46, at + 46 + name), file.toString("utf8"));
    at += 46 + name + extra + comment;
  }
  return out;
}
