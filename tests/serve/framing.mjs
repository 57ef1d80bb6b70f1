// What is no request of HTTP, or two at once for somebody who reads it otherwise: refused and closed, or answered as
// exactly one request. Never two answers for one, never an answer to what was smuggled in.
import { Caller } from "./caller.mjs";
import { all, that } from "./expect.mjs";
import { exchange, Raw } from "./raw.mjs";

const kHost = "Host: 127.0.0.1\r\n";
const kSmuggled = `GET /health HTTP/1.1\r\n${kHost}\r\n`;
const post = (headers, body = "") => `POST /api/sign-in HTTP/1.1\r\n${kHost}Content-Type: application/json\r\nLanework-Request: 1\r\n${headers}\r\n${body}`;
const get = (headers, target = "/no-route") => `GET ${target} HTTP/1.1\r\n${headers}\r\n`;

// Each: what, the bytes, and the statuses that are right; closed after a 4xx of the edge (400, 413, 431).
const kEdge = [400];
const kWaits = [];  // read as not yet whole: nothing is answered until the rest comes, or its time is over (slow.mjs)
const kCorpus = [
  ["Content-Length and Transfer-Encoding", post("Content-Length: 4\r\nTransfer-Encoding: chunked\r\n", `0\r\n\r\n${kSmuggled}`), kEdge],
  ["Transfer-Encoding and Content-Length", post("Transfer-Encoding: chunked\r\nContent-Length: 4\r\n", `0\r\n\r\n${kSmuggled}`), kEdge],
  ["two Content-Lengths that differ", post("Content-Length: 2\r\nContent-Length: 40\r\n", `{}${kSmuggled}`), kEdge],
  ["two Content-Lengths that agree", post("Content-Length: 2\r\nContent-Length: 2\r\n", "{}"), kEdge],
  ["a list of Content-Lengths", post("Content-Length: 2, 2\r\n", "{}"), kEdge],
  ["a Content-Length with a sign", post("Content-Length: +2\r\n", "{}"), kEdge],
  ["a negative Content-Length", post("Content-Length: -1\r\n", "{}"), kEdge],
  ["a hexadecimal Content-Length", post("Content-Length: 0x2\r\n", "{}"), kEdge],
  ["a Content-Length beyond 64 bits", post("Content-Length: 18446744073709551618\r\n", "{}"), [400, 413]],
  ["an empty Content-Length", post("Content-Length: \r\n", "{}"), kEdge],
  ["an unknown Transfer-Encoding", post("Transfer-Encoding: gzip\r\n", `{}${kSmuggled}`), kEdge],
  ["chunked that is not last", post("Transfer-Encoding: chunked, identity\r\n", `0\r\n\r\n${kSmuggled}`), kEdge],
  ["chunked twice", post("Transfer-Encoding: chunked\r\nTransfer-Encoding: chunked\r\n", `0\r\n\r\n`), kEdge],
  ["Transfer-Encoding with a tab behind it", post("Transfer-Encoding : chunked\r\n", `0\r\n\r\n${kSmuggled}`), kEdge],
  ["Transfer-Encoding in disguise", post("Transfer-Encoding: xchunked\r\nContent-Length: 2\r\n", "{}"), kEdge],
  ["a chunk size that is no number", post("Transfer-Encoding: chunked\r\n", `zz\r\n{}\r\n0\r\n\r\n`), kEdge],
  ["a chunk size with 0x", post("Transfer-Encoding: chunked\r\n", `0x2\r\n{}\r\n0\r\n\r\n`), kEdge],
  ["a chunk size with a sign", post("Transfer-Encoding: chunked\r\n", `+2\r\n{}\r\n0\r\n\r\n`), kEdge],
  ["a chunk size beyond 64 bits", post("Transfer-Encoding: chunked\r\n", `10000000000000002\r\n{}\r\n0\r\n\r\n`), [400, 413]],
  ["a chunk longer than its size", post("Transfer-Encoding: chunked\r\n", `2\r\n{}{}\r\n0\r\n\r\n`), kEdge],
  ["chunks that end in bare LF", post("Transfer-Encoding: chunked\r\n", `2\n{}\n0\n\n`), kWaits],
  ["a chunk extension", post("Transfer-Encoding: chunked\r\n", `2;a="b"\r\n{}\r\n0\r\n\r\n`), [400]],
  ["a chunk extension with a line's end in quotes", post("Transfer-Encoding: chunked\r\n", `2;a="\r\n{}\r\n0\r\n\r\n${kSmuggled}`), kWaits],
  ["a trailer that names a header", post("Transfer-Encoding: chunked\r\n", `2\r\n{}\r\n0\r\nLanework-Request: 0\r\nHost: b\r\n\r\n`), [400]],
  ["sound chunks", post("Transfer-Encoding: chunked\r\n", `1\r\n{\r\n1\r\n}\r\n0\r\n\r\n`), [400]],
  ["a header folded over two lines", get(`${kHost}X-Y: a\r\n b\r\n`), [400, 404]],
  ["a folded Content-Length", post("Content-Length:\r\n 2\r\n", "{}"), [400]],
  ["bare LF between headers", `GET /no-route HTTP/1.1\n${kHost}\r\n`, kEdge],
  ["bare LF at the end", `GET /no-route HTTP/1.1\r\nHost: 127.0.0.1\n\n`, kEdge],
  ["bare CR in a header", get(`${kHost}X-Y: a\rb\r\n`), kEdge],
  ["bare CR before a header", get(`${kHost}\rTransfer-Encoding: chunked\r\n`), kEdge],
  ["NUL in a header's value", get(`${kHost}X-Y: a\0b\r\n`), kEdge],
  ["NUL in a header's name", get(`${kHost}X\0Y: a\r\n`), kEdge],
  ["NUL in the target", get(kHost, "/no\0route"), kEdge],
  ["a control character in the target", get(kHost, "/no\x01route"), kEdge],
  ["a space before the colon", get(`${kHost}X-Y : a\r\n`), kEdge],
  ["a header without a colon", get(`${kHost}XY\r\n`), kEdge],
  ["a header without a name", get(`${kHost}: a\r\n`), kEdge],
  ["a space before the first header", `GET /no-route HTTP/1.1\r\n ${kHost}\r\n`, kEdge],
  ["no Host", get(""), kEdge],
  ["an empty Host", get("Host: \r\n"), kEdge],
  ["two Hosts", get(`${kHost}Host: elsewhere.example\r\n`), kEdge],
  ["a Host that is none", get("Host: a b/c@d\r\n"), [400]],
  ["two Cookies", get(`${kHost}Cookie: a=b\r\nCookie: c=d\r\n`), kEdge],
  ["an absolute target", get(kHost, "http://elsewhere.example/no-route"), [400, 404]],
  ["an absolute target of a route", get(kHost, "http://elsewhere.example/health"), [400, 404]],
  ["an asterisk for a target", `OPTIONS * HTTP/1.1\r\n${kHost}\r\n`, [400, 404]],
  ["CONNECT", `CONNECT 127.0.0.1:22 HTTP/1.1\r\n${kHost}\r\n`, [400, 404]],
  ["HTTP/0.9", "GET /health\r\n\r\n", kEdge],
  ["HTTP/1.0 without a Host", "GET /health HTTP/1.0\r\n\r\n", kEdge],
  ["HTTP/1.2", `GET /no-route HTTP/1.2\r\n${kHost}\r\n`, kEdge],
  ["HTTP/2.0 in one line", `GET /no-route HTTP/2.0\r\n${kHost}\r\n`, kEdge],
  ["the preface of HTTP/2", "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", kEdge],
  ["two spaces in the first line", `GET  /no-route HTTP/1.1\r\n${kHost}\r\n`, kEdge],
  ["a tab in the first line", `GET\t/no-route\tHTTP/1.1\r\n${kHost}\r\n`, kEdge],
  ["a method in lower case", `get /health HTTP/1.1\r\n${kHost}\r\n`, [400, 405]],
  ["a TLS greeting", Buffer.from("160301020001000001fc0303", "hex"), kEdge],
  ["20 KiB of headers", get(`${kHost}X-Y: ${"a".repeat(20 * 1024)}\r\n`), [431]],
  ["20 KiB of small headers", get(kHost + Array.from({ length: 1000 }, (_, i) => `X-${i}: ${"a".repeat(12)}\r\n`).join("")), [431]],
  ["20 KiB of target", get(kHost, `/${"a".repeat(20 * 1024)}`), [431]],
  ["a body of 2 MiB", post(`Content-Length: ${2 << 20}\r\n`, "x".repeat(2 << 20)), [413]],
  ["a body of 2 MiB in chunks", post("Transfer-Encoding: chunked\r\n", `${(2 << 20).toString(16)}\r\n${"x".repeat(2 << 20)}\r\n0\r\n\r\n`), [413]],
  ["a GET with a body that is a request", `GET /no-route HTTP/1.1\r\n${kHost}Content-Length: ${kSmuggled.length}\r\n\r\n${kSmuggled}`, [400, 404]],
];

const kCloses = new Set([400, 413, 431]);

async function corpus({ demo, contract }) {
  const server = await demo.serve();
  const out = [];
  for (const [what, bytes, statuses] of kCorpus) {
    const { answers, closed } = await exchange(server, contract, bytes, { most: statuses === kWaits ? 400 : 3000, path: typeof bytes === "string" && bytes.startsWith("POST") ? "/api/sign-in" : "/no-route", method: typeof bytes === "string" && bytes.startsWith("POST") ? "POST" : "GET" });
    const said = `${what}: ${answers.map((one) => `${one.status} ${one.text.slice(0, 60)}`).join(" | ") || "nothing"}, ${closed ? "closed" : "open"}`;
    out.push(statuses === kWaits ? that(answers.length === 0, said) : that(answers.length === 1 && statuses.includes(answers[0].status), said));
    const ofEdge = answers[0]?.json?.what?.startsWith("The request cannot be read") || [413, 431].includes(answers[0]?.status);
    if (ofEdge) out.push(that(closed && kCloses.has(answers[0].status), `left open: ${said}`));
  }
  const caller = new Caller(server, contract);
  out.push(that((await caller.get("/health")).status === 200, "the server does not answer any more"));
  await server.stop();
  return out.filter((one) => one !== "").join("\n");
}

async function oneAfterAnother({ demo, contract }) {
  const server = await demo.serve();
  const two = await exchange(server, contract, kSmuggled + kSmuggled, { path: "/health", silent: 300 });
  const byteByByte = async (bytes) => {
    const raw = await Raw.open(server);
    for (const letter of bytes) await raw.send(letter);
    const answers = await raw.quiet();
    raw.destroy();
    return answers;
  };
  const byte = await byteByByte(post("Content-Length: 2\r\n", "{}"));
  const chunks = await byteByByte(post("Transfer-Encoding: chunked\r\n", "2\r\n{}\r\n0\r\n\r\n"));
  const lastChunk = await byteByByte(post("Transfer-Encoding: chunked\r\n", "0\r\n\r\n"));
  const waits = await exchange(server, contract, post("Content-Length: 2\r\nExpect: 100-continue\r\n"), { path: "/api/sign-in", method: "POST", silent: 200 });
  const both = await exchange(server, contract, post("Content-Length: 2\r\nExpect: 100-continue\r\n", "{}"), { path: "/api/sign-in", method: "POST", silent: 200 });
  await server.stop();
  const statuses = (answers) => answers.map(({ status }) => status).join();
  return all(that(statuses(two.answers) === "200,200", `two requests in one go: ${statuses(two.answers)}`), that(statuses(byte) === "400", `byte by byte: ${statuses(byte)}`),
    that(statuses(chunks) === "400" && statuses(lastChunk) === "400", `chunks byte by byte: ${statuses(chunks)}, the last alone: ${statuses(lastChunk)}`),
    that(statuses(waits.answers) === "100", `Expect, before the body: ${statuses(waits.answers)}`), that(statuses(both.answers) === "100,400", `Expect, with the body: ${statuses(both.answers)}`));
}

// A refusal reaches also somebody who is still sending.
async function heardOut({ demo, contract }) {
  const server = await demo.serve();
  const heard = [];
  for (let i = 0; i < 20; i++) {
    const { answers, closed } = await exchange(server, contract, post(`Content-Length: ${4 << 20}\r\n`, "x".repeat(4 << 20)), { path: "/api/sign-in", method: "POST" });
    heard.push(`${answers.map(({ status }) => status)} ${closed ? "closed" : "open"}`);
  }
  await server.stop();
  return that(heard.every((one) => one === "413 closed"), heard.join("; "));
}

export const framing = [
  { name: "framing: 413 reaches whoever is still sending", run: heardOut },
  { name: `framing: ${kCorpus.length} requests that are none, or two`, run: corpus },
  { name: "framing: one after another, byte by byte, 100-continue", run: oneAfterAnother },
];
