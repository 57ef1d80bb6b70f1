// The way between a phone and the server: it passes on what it gets, or does what hotels, lifts and proxies do. The
// phone's address stays the same when another server stands behind it.
import http from "node:http";

export class Way {
  static async open(server) {
    const way = new Way();
    way.server = server;
    way.mode = { kind: "through" };
    way.seen = []; // {path, bytes, entries, at}
    way.http = http.createServer((request, response) => way.take(request, response));
    await new Promise((resolve) => way.http.listen(0, "127.0.0.1", resolve));
    way.url = `http://127.0.0.1:${way.http.address().port}`;
    return way;
  }

  // through; cut (no signal); lost (the server answers, nobody hears it); says {status, headers, body} to what fits
  // {path}; narrow {bytes}: larger bodies are 413; alters {path, change}: what the server answers there, changed.
  set(kind, more = {}) {
    this.mode = { kind, ...more };
  }

  async take(request, response) {
    const parts = [];
    for await (const part of request) parts.push(part);
    const body = Buffer.concat(parts);
    const seen = { path: request.url, bytes: body.length, at: Date.now() };
    if (request.url === "/api/sync") seen.entries = JSON.parse(body.toString("utf8")).entries.length;
    this.seen.push(seen);
    const { mode } = this;
    if (mode.kind === "cut") return response.destroy();
    if (mode.kind === "says" && (mode.path ?? /^\/api\//).test(request.url)) return this.say(response, mode);
    if (mode.kind === "narrow" && body.length > mode.bytes) return this.say(response, { status: 413, body: { error: "too-large", what: "Less at a time." } });
    this.pass(request, body, response, mode.kind === "lost" && request.method === "POST");
  }

  say(response, { status, headers = {}, body }) {
    const text = typeof body === "string" ? body : JSON.stringify(body);
    response.writeHead(status, { "content-type": typeof body === "string" ? "text/html" : "application/json; charset=utf-8", ...headers });
    response.end(text);
  }

  pass(request, body, response, lost) {
    const onward = http.request({ host: "127.0.0.1", port: this.server.port, method: request.method, path: request.url, headers: request.headers }, (answer) => {
      const parts = [];
      answer.on("data", (part) => parts.push(part));
      answer.on("error", () => response.destroy());
      answer.on("end", () => {
        if (lost) return response.destroy();
        const bytes = this.altered(request.url, answer, Buffer.concat(parts));
        response.writeHead(answer.statusCode, { ...answer.headers, "content-length": bytes.length });
        response.end(bytes);
      });
    });
    onward.on("error", () => response.destroy());
    onward.end(body);
  }

  altered(url, answer, bytes) {
    const { kind, path, change } = this.mode;
    if (kind !== "alters" || answer.statusCode !== 200 || !path.test(url)) return bytes;
    return Buffer.from(JSON.stringify(change(JSON.parse(bytes.toString("utf8")))));
  }

  sent() {
    return this.seen.filter(({ path }) => path === "/api/sync");
  }

  close() {
    this.http.closeAllConnections?.();
    this.http.close();
  }
}
