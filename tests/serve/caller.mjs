// Somebody who asks the server: nobody in particular, a browser with a session, or a device. Every answer that anybody
// gets is held against schema/openapi.yaml and the house's headers.
import http from "node:http";
import https from "node:https";

let addresses = 0;

// One of a network for documentation that nobody has used yet.
export const freshAddress = () => `198.18.${(addresses >> 8) & 255}.${++addresses & 255}`;

export class Caller {
  constructor(server, contract, { cookie, device, address } = {}) {
    this.server = server;
    this.contract = contract;
    this.cookie = cookie;
    this.device = device;
    this.address = address ?? freshAddress();
    this.agent = new (server.tls ? https : http).Agent({ keepAlive: true });
  }

  as(who) {
    return new Caller(this.server, this.contract, { address: this.address, ...who });
  }

  headers(method, more) {
    const out = {};
    if (this.cookie) out.cookie = `${this.server.secure ? "__Host-" : ""}lanework=${this.cookie}`;
    if (this.device) out.authorization = `Bearer ${this.device}`;
    if (this.server.secure && !this.server.tls) Object.assign(out, { "x-forwarded-for": this.address, "x-forwarded-proto": "https" });
    if (method === "POST") Object.assign(out, { "content-type": "application/json", "lanework-request": "1" });
    Object.assign(out, more);
    for (const key of Object.keys(out)) if (out[key] === undefined) delete out[key];
    return out;
  }

  // body: text, bytes, or whatever becomes JSON. A test that asks more often than anybody may goes on with a server that
  // has just begun; that there is a limit is a test of its own.
  async call(method, path, body, more = {}) {
    const answer = await this.ask(method, path, body, more);
    if (!this.server.mayRestart || answer.json?.error !== "too-fast") return answer;
    await this.server.restart();
    return this.ask(method, path, body, more);
  }

  ask(method, path, body, more) {
    const bytes = body === undefined ? undefined : Buffer.isBuffer(body) ? body : Buffer.from(typeof body === "string" ? body : JSON.stringify(body));
    const headers = this.headers(method, more);
    if (bytes !== undefined) headers["content-length"] = bytes.length;
    return new Promise((resolve, reject) => {
      const options = { host: this.host ?? "127.0.0.1", port: this.server.port, method, path, headers, agent: this.agent, rejectUnauthorized: false, setHost: headers.host === undefined };
      const request = (this.server.tls ? https : http).request(options, (response) => {
        const parts = [];
        response.on("data", (part) => parts.push(part));
        response.on("error", reject);
        response.on("end", () => {
          const answer = { status: response.statusCode, headers: response.headers, raw: response.rawHeaders, bytes: Buffer.concat(parts) };
          answer.text = answer.bytes.toString("utf8");
          try {
            answer.json = JSON.parse(answer.text);
          } catch {
            answer.json = undefined;
          }
          this.contract?.check({ method, path, body: bytes?.toString("utf8"), secure: this.server.secure }, answer);
          resolve(answer);
        });
      });
      request.on("error", reject);
      request.end(bytes);
    });
  }

  get(path, more) {
    return this.call("GET", path, undefined, more);
  }

  post(path, body = {}, more) {
    return this.call("POST", path, body, more);
  }

  close() {
    this.agent.destroy();
  }
}

// The session's secret in the answer's cookie.
export function cookieOf(answer) {
  return /lanework=([^;]*);/.exec(answer.headers["set-cookie"]?.[0] ?? "")?.[1];
}
