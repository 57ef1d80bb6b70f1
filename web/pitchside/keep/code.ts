// The code with which a coach opens the app: what it must be, the key that is made of it, and how long a wrong one waits.

// OWASP Password Storage Cheat Sheet, PBKDF2-HMAC-SHA256, as read for ../shared/reference/trust.md, section 4.
const kRounds = 600_000;
const kSaltBytes = 16;
const kLeast = 6; // characters; own judgement: what a thumb in the rain still does. It is short: docs/security.md

// Own judgement, as the server's waits are: docs/security.md, 'Waits after failures'.
const kFree = 5;
const kFirstWaitMilliseconds = 30_000;
const kLongestWaitMilliseconds = 15 * 60_000;
export const kMostTries = 20; // then what it opens is gone; NIST SP 800-63B allows 100

// Keys of words: 'keeping.lock.weak' in words/en.json.
export type WeakCode = "short" | "plain";

const plainForm = (code: string): string => code.normalize("NFKC").trim();

// The same again and again, in ones, twos or threes; or straight up or down.
function isPlain(code: string): boolean {
  if (/^(.{1,3})\1+$/.test(code)) return true;
  const steps = [...code].slice(1).map((one, index) => one.codePointAt(0)! - code.codePointAt(index)!);
  return Math.abs(steps[0] ?? 0) === 1 && steps.every((step) => step === steps[0]);
}

// Empty: it is good.
export function weakness(code: string): WeakCode | undefined {
  const plain = plainForm(code);
  if ([...plain].length < kLeast) return "short";
  return isPlain(plain) ? "plain" : undefined;
}

export interface Stretching {
  salt: Uint8Array<ArrayBuffer>;
  rounds: number;
}

export const newStretching = (): Stretching => ({ salt: crypto.getRandomValues(new Uint8Array(kSaltBytes)), rounds: kRounds });

export async function keyOfCode(code: string, { salt, rounds }: Stretching): Promise<CryptoKey> {
  const base = await crypto.subtle.importKey("raw", new TextEncoder().encode(plainForm(code)), "PBKDF2", false, ["deriveKey"]);
  const algorithm = { name: "PBKDF2", hash: "SHA-256", salt, iterations: rounds };
  return crypto.subtle.deriveKey(algorithm, base, { name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"]);
}

// After so many tries in a row, before the next one.
export function waitAfter(tries: number): number {
  return tries < kFree ? 0 : Math.min(kFirstWaitMilliseconds * 2 ** (tries - kFree), kLongestWaitMilliseconds);
}

// A clock that was put back makes no wait longer than the longest.
export function waitLeft(not_before: number, now: number): number {
  return Math.min(Math.max(0, not_before - now), kLongestWaitMilliseconds);
}
