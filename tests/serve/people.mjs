// The demo's people, signed in; and the codes of their authenticators, each step used once (RFC 6238).
import { createHmac } from "node:crypto";
import { Caller, cookieOf } from "./caller.mjs";
import { pause } from "./server.mjs";

const kStepSeconds = 30;

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
  constructor(base32) {
    this.secret = fromBase32(base32);
    this.last = 0;
  }

  // The server takes the step before, this one and the next, each once and none before the last one used.
  async next() {
    const now = () => Math.floor(Date.now() / 1000 / kStepSeconds);
    const step = Math.max(this.last + 1, now() - 1);
    while (step > now() + 1) await pause(200);
    this.last = step;
    return codeOf(this.secret, step);
  }
}

export class People {
  constructor(demo, server, contract) {
    this.secrets = demo.secrets;
    this.server = server;
    this.contract = contract;
    this.authenticators = {};
    for (const role of ["lead", "board", "operator"]) this.authenticators[role] = new Authenticator(demo.secrets[`${role.toUpperCase()}_SECOND`]);
  }

  nobody() {
    return new Caller(this.server, this.contract);
  }

  password(role) {
    return this.secrets[`${role.toUpperCase()}_PASSWORD`];
  }

  device(role) {
    return new Caller(this.server, this.contract, { device: this.secrets[`${role.toUpperCase()}_DEVICE`] });
  }

  async signIn(role, { halfWay = false } = {}) {
    const caller = this.nobody();
    const code = halfWay ? undefined : await this.authenticators[role]?.next();
    const answer = await caller.post("/api/sign-in", { sign_in: role, password: this.password(role), code });
    if (answer.status !== 200) throw new Error(`sign-in of ${role}: ${answer.status} ${answer.text}`);
    return caller.as({ cookie: cookieOf(answer) });
  }
}
