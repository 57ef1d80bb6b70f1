// Bytes to a socket, and what comes back: for whatever a well-behaved client never sends.
import net from "node:net";
import tls from "node:tls";

export class Raw {
  static async open(server, { secure = server.tls, ...more } = {}) {
    const raw = new Raw();
    raw.received = Buffer.alloc(0);
    raw.closed = false;
    await new Promise((resolve, reject) => {
      const options = { host: "127.0.0.1", port: server.port, rejectUnauthorized: false, allowHalfOpen: true, ...more };
      raw.socket = secure ? tls.connect(options, resolve) : net.connect(options, resolve);
      raw.socket.on("error", (error) => {
        raw.error = error;
        reject(error);
      });
    });
    raw.socket.on("data", (bytes) => (raw.received = Buffer.concat([raw.received, bytes])));
    raw.end = new Promise((resolve) => {
      for (const event of ["end", "close", "error"]) raw.socket.on(event, () => {
        raw.closed = true;
        resolve();
      });
    });
    return raw;
  }

  send(bytes) {
    return new Promise((resolve) => this.socket.write(bytes, () => resolve()));
  }

  // Until the server has closed, or was silent for so long after something came, or nothing came for most.
  async quiet(silent = 120, most = 3000) {
    const from = Date.now();
    let size = -1;
    let since = Date.now();
    while (!this.closed && Date.now() - from < most) {
      if (this.received.length !== size) {
        size = this.received.length;
        since = Date.now();
      } else if (size > 0 && Date.now() - since > silent) return this.answers();
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    return this.answers();
  }

  // The whole answers that came, in their order; what is no answer is left over and told as one.
  answers() {
    const out = [];
    let rest = this.received;
    while (rest.length > 0) {
      const end = rest.indexOf("\r\n\r\n");
      const head = end < 0 ? "" : rest.subarray(0, end).toString("latin1");
      const first = /^HTTP\/1\.[01] (\d{3}) [^\r\n]*\r\n/.exec(`${head}\r\n`);
      if (!first) return [...out, { status: 0, text: rest.toString("latin1"), headers: {}, raw: [] }];
      const raw = head.split("\r\n").slice(1).flatMap((line) => [line.slice(0, line.indexOf(":")), line.slice(line.indexOf(":") + 1).trim()]);
      const headers = {};
      for (let i = 0; i < raw.length; i += 2) {
        const name = raw[i].toLowerCase();
        headers[name] = name === "set-cookie" ? [...headers[name] ?? [], raw[i + 1]] : raw[i + 1];
      }
      const length = Number(headers["content-length"] ?? 0);
      const bytes = rest.subarray(end + 4, end + 4 + length);
      const answer = { status: Number(first[1]), headers, raw, bytes, text: bytes.toString("utf8") };
      try {
        answer.json = JSON.parse(answer.text);
      } catch {
        answer.json = undefined;
      }
      out.push(answer);
      rest = rest.subarray(end + 4 + length);
    }
    return out;
  }

  destroy() {
    this.socket.destroy();
  }
}

// One go: send, wait, close; every answer held against the page.
export async function exchange(server, contract, bytes, { method = "GET", path = "/no-route", silent, most } = {}) {
  const raw = await Raw.open(server);
  raw.socket.removeAllListeners("error");
  raw.socket.on("error", () => (raw.closed = true));
  await raw.send(bytes);
  const answers = await raw.quiet(silent, most);
  for (const answer of answers.filter(({ status }) => status !== 100 && status !== 0)) contract.check({ method, path, secure: server.secure }, answer);
  const { closed } = raw;
  raw.destroy();
  return { answers, closed };
}
