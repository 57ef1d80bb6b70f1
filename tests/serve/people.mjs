// The demo's people, signed in with the codes of their authenticators.
import { Authenticator } from "../../tools/authenticator.mjs";
import { Caller, cookieOf } from "./caller.mjs";

export class People {
  // clock: the server's, where it is not this machine's.
  constructor(demo, server, contract, clock) {
    this.secrets = demo.secrets;
    this.server = server;
    this.contract = contract;
    this.authenticators = {};
    for (const role of ["lead", "board", "operator"]) this.authenticators[role] = new Authenticator(demo.secrets[`${role.toUpperCase()}_SECOND`], clock);
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
