// Clients that are slow, idle or too many, and the end: others are served all the while.
import net from "node:net";
import { Caller } from "./caller.mjs";
import { all, is, that } from "./expect.mjs";
import { People } from "./people.mjs";
import { pause } from "./server.mjs";
import { Raw } from "./raw.mjs";

const kHeaderSeconds = 10;
const kBodySeconds = 30;

// One byte a second until the server has had enough and closes; how long that took, and what it said: nothing.
async function drip(server, contract, first, letters) {
  const raw = await Raw.open(server);
  raw.socket.removeAllListeners("error");
  raw.socket.on("error", () => (raw.closed = true));
  const from = Date.now();
  await raw.send(first);
  for (let i = 0; !raw.closed && raw.received.length === 0 && i < 60; i++) {
    await pause(1000);
    if (!raw.closed) await raw.send(letters);
  }
  const answers = await raw.quiet(50, 500);
  for (const answer of answers) contract.check({ method: "POST", path: "/api/sync", secure: server.secure }, answer);
  const { closed } = raw;
  raw.destroy();
  return { seconds: (Date.now() - from) / 1000, statuses: answers.map(({ status }) => status).join(), closed };
}

async function served(caller, milliseconds) {
  const times = [];
  const until = Date.now() + milliseconds;
  while (Date.now() < until) {
    const from = performance.now();
    const answer = await caller.get("/ready");
    if (answer.status !== 200) throw new Error(answer.text);
    times.push(performance.now() - from);
  }
  return times.sort((a, b) => a - b);
}

const at = (sorted, share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1);

async function oneByteASecond({ demo, contract, long }) {
  const server = await demo.serve();
  const head = "POST /api/sync HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nLanework-Request: 1\r\n";
  const slow = [drip(server, contract, "GET /health HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Y: ", "a")];
  for (let i = 0; i < 40; i++) slow.push(drip(server, contract, "GET /health HTTP/1.1\r\nX-Y: ", "a"));
  const body = long ? [drip(server, contract, `${head}Content-Length: 1000\r\n\r\n{`, " "), drip(server, contract, `${head}Transfer-Encoding: chunked\r\n\r\n1\n`, "a")] : [];
  const times = await served(new Caller(server, contract), 2000);
  const headers = await Promise.all(slow);
  const bodies = await Promise.all(body);
  await server.stop();
  const wrong = headers.filter(({ seconds, statuses, closed }) => seconds > kHeaderSeconds + 3 || statuses !== "" || !closed);
  const late = bodies.filter(({ seconds, statuses, closed }) => seconds > kBodySeconds + 3 || statuses !== "" || !closed);
  return { detail: all(that(wrong.length === 0, JSON.stringify(wrong[0])), that(late.length === 0, JSON.stringify(late)), that(Number(at(times, 0.5)) < 100, `half of the others' requests took more than ${at(times, 0.5)} ms`)),
    note: `beside ${slow.length + body.length} slow clients: p50 ${at(times, 0.5)} ms, p99 ${at(times, 0.99)} ms` };
}

async function idle(server, count) {
  const sockets = [];
  for (let from = 0; from < count; from += 200) {
    sockets.push(...await Promise.all(Array.from({ length: Math.min(200, count - from) }, () => new Promise((resolve, reject) => {
      const socket = net.connect({ host: "127.0.0.1", port: server.port }, () => resolve(socket));
      socket.on("error", reject);
    }))));
  }
  return sockets;
}

async function manyIdle({ demo, contract }) {
  const server = await demo.serve({ before: ["sh", "-c", 'ulimit -n 8192 && exec "$0" "$@"'] });
  const somebody = new Caller(server, contract);
  await served(somebody, 300);
  const alone = await served(somebody, 1000);
  const before = server.residentMebibytes();
  const sockets = await idle(server, 500);
  const beside = await served(somebody, 1000);
  sockets.push(...await idle(server, 1500));
  const among = await served(somebody, 1000);
  const metrics = (await new Caller(server, contract).get("/metrics")).text;
  const open = Number(/^lanework_connections (\d+)$/m.exec(metrics)[1]);
  const memory = server.residentMebibytes();
  const closed = sockets.filter((socket) => socket.destroyed).length;
  sockets.forEach((socket) => socket.destroy());
  await server.stop();
  return { detail: all(that(closed === 0, `${closed} of 2000 were closed`), that(open >= 2001, `${open} connections are open`), that(among.length > 5, `${among.length} requests in a second`)),
    note: `p50/p99 alone ${at(alone, 0.5)}/${at(alone, 0.99)} ms, beside 500 idle ${at(beside, 0.5)}/${at(beside, 0.99)} ms, beside 2000 ${at(among, 0.5)}/${at(among, 0.99)} ms; resident ${before.toFixed(0)} MiB, with 2000 idle ${memory.toFixed(0)} MiB` };
}

// More than there is room for: turned away, counted, and those who are in are served.
async function tooMany({ demo, contract }) {
  const server = await demo.serve({ before: ["sh", "-c", 'ulimit -n 8192 && exec "$0" "$@"'] });
  const device = new People(demo, server, contract).device("coach");
  await device.get("/api/device/squads");
  const sockets = await idle(server, 4095);
  const extra = await idle(server, 20);
  await pause(300);
  const gone = extra.filter((socket) => socket.destroyed).length;
  const still = await device.get("/api/device/squads");
  sockets.forEach((socket) => socket.destroy());
  await pause(200);
  const after = await new Caller(server, contract).get("/metrics");
  const turned = Number(/^lanework_connections_turned_away_total (\d+)$/m.exec(after.text)?.[1]);
  await server.stop();
  return all(is(still, 200), that(gone === 20, `${gone} of 20 were closed`), that(turned === 20, `${turned} counted`));
}

// SIGTERM: what is under way is answered, idle connections are closed, nobody new is taken, the status is 0.
async function theEnd({ demo, contract }) {
  const server = await demo.serve();
  const people = new People(demo, server, contract);
  const waiting = await Raw.open(server);
  waiting.socket.on("error", () => {});
  const body = JSON.stringify({ sign_in: "coach", password: people.password("coach") });
  const under = await Promise.all(Array.from({ length: 3 }, async () => {
    const raw = await Raw.open(server);
    await raw.send(`POST /api/sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nLanework-Request: 1\r\nContent-Length: ${body.length}\r\n\r\n${body}`);
    return raw;
  }));
  const half = await Raw.open(server);
  await half.send(`POST /api/sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nLanework-Request: 1\r\nContent-Length: ${body.length}\r\n\r\n${body.slice(0, 10)}`);
  await pause(60);
  server.child.kill("SIGTERM");
  await pause(60);
  const refused = await new Promise((resolve) => {
    const socket = net.connect({ host: "127.0.0.1", port: server.port }, () => resolve(false));
    socket.on("error", () => resolve(true));
  });
  await half.send(body.slice(10));
  const answers = [];
  for (const raw of [...under, half]) {
    await Promise.race([raw.end, pause(8000)]);
    answers.push(raw.answers().map(({ status, headers }) => `${status} ${headers.connection}`).join());
  }
  const from = Date.now();
  const ended = await server.ended;
  await waiting.end;
  return all(that(answers.every((one) => one === "200 close"), answers.join("; ")), that(refused, "somebody new was taken"), that(waiting.closed && waiting.received.length === 0, "an idle connection was not closed"),
    that(ended.status === 0 && Date.now() - from < 2000, `${JSON.stringify(ended)} after ${Date.now() - from} ms`), that(/Good night/.test(server.said), server.said));
}

// Somebody who never finishes holds the end up for ten seconds, no longer.
async function theEndInTime({ demo }) {
  const server = await demo.serve();
  const raw = await Raw.open(server);
  raw.socket.on("error", () => {});
  await raw.send("GET /health HTTP/1.1\r\nHost: 127.0");
  await pause(50);
  const from = Date.now();
  const ended = await server.stop();
  return that(ended.status === 0 && Date.now() - from < 12000, `${JSON.stringify(ended)} after ${Date.now() - from} ms`);
}

export const slow = [
  { name: "slow: one byte a second ends in time, others are served", waits: true, run: oneByteASecond },
  { name: "slow: 2000 idle connections", run: manyIdle },
  { name: "slow: more connections than there is room for", run: tooMany },
  { name: "end: what is under way is answered", run: theEnd },
  { name: "end: somebody who never finishes", waits: true, run: theEndInTime },
];
