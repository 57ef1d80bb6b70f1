// The codes of an authenticator app, for scripts that sign in as the demo's people: RFC 6238, SHA-1, six digits, 30 s.
import { createHmac } from "node:crypto";

const kStepSeconds = 30;
const kOnItsWaySeconds = 3;  // the code of the step before is not shown so near the end of this one

export function fromBase32(text) {
  let bits = "";
  for (const letter of text) bits += "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(letter).toString(2).padStart(5, "0");
  return Buffer.from(bits.match(/.{8}/g).map((byte) => parseInt(byte, 2)));
}

export function codeOf(secret, step) {
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(step));
  const mac = createHmac("sha1", secret).update(counter).digest();
  const at = mac[19] & 15;
  return String((mac.readUInt32BE(at) & 0x7fffffff) % 1000000).padStart(6, "0");
}

export class Authenticator {
  // clock: milliseconds, where the server's is not this machine's.
  constructor(base32, clock = Date.now) {
    this.secret = fromBase32(base32);
    this.clock = clock;
    this.last = 0;
  }

  // The server takes the step before, this one and the next, each once and none before the last one used.
  async next() {
    const now = () => Math.floor(this.clock() / 1000 / kStepSeconds);
    const soon_over = (this.clock() / 1000) % kStepSeconds > kStepSeconds - kOnItsWaySeconds;
    const step = Math.max(this.last + 1, soon_over ? now() : now() - 1);
    while (step > now() + 1) await new Promise((resolve) => setTimeout(resolve, 200));
    this.last = step;
    return codeOf(this.secret, step);
  }
}
