// CRC-32 as PNG's chunks have it (ISO 3309; PNG specification, annex D). Node has its own only from version 22 on.
const kTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  return sum;
});

export function crc32Of(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = kTable[(sum ^ byte) & 255] ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
