// Names of entries: UUIDs of version 7 (RFC 9562, method 1: a counter in the 12 bits after the milliseconds). Each is
// above the one before it, also when the clock went back: then the milliseconds of the last one stay.

const kMostCount = 0xfff;

interface Parts {
  milliseconds: number;
  count: number;
}

function partsOf(id: string): Parts {
  const digits = id.replaceAll("-", "");
  return { milliseconds: Number.parseInt(digits.slice(0, 12), 16), count: Number.parseInt(digits.slice(13, 16), 16) };
}

function partsAfter(last: string | undefined, now: number): Parts {
  const fresh = { milliseconds: now, count: crypto.getRandomValues(new Uint16Array(1))[0]! & (kMostCount >> 1) };
  if (last === undefined) return fresh;
  const before = partsOf(last);
  if (now > before.milliseconds) return fresh;
  if (before.count < kMostCount) return { milliseconds: before.milliseconds, count: before.count + 1 };
  return { milliseconds: before.milliseconds + 1, count: 0 };
}

const hex = (number: number, digits: number): string => number.toString(16).padStart(digits, "0");

// last: the id that this device made before; empty for its first.
export function idAfter(last: string | undefined, now: number): string {
  const { milliseconds, count } = partsAfter(last, now);
  const time = hex(milliseconds, 12);
  const random = crypto.getRandomValues(new Uint8Array(8));
  random[0] = (random[0]! & 0x3f) | 0x80; // the variant
  const rest = [...random].map((byte) => hex(byte, 2)).join("");
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(count, 3)}-${rest.slice(0, 4)}-${rest.slice(4)}`;
}
