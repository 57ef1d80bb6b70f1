// TLS here: 1.2 and 1.3 and nothing older, the cookie as browsers want it, HSTS, a key for nobody's eyes; and without
// TLS no address but this machine's.
import { spawnSync } from "node:child_process";
import { chmodSync } from "node:fs";
import tls from "node:tls";
import { cookieOf } from "./caller.mjs";
import { all, is, that } from "./expect.mjs";
import { People } from "./people.mjs";
import { exchange } from "./raw.mjs";

export function certificate(demo) {
  const [key, file] = [demo.file("key.pem"), demo.file("certificate.pem")];
  const made = spawnSync("openssl", ["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-keyout", key, "-out", file, "-days", "2", "-subj", "/CN=127.0.0.1"]);
  if (made.status !== 0) throw new Error(`${made.stderr}`);
  chmodSync(key, 0o400);
  return { key, file };
}

const shake = (port, options) => new Promise((resolve) => {
  const socket = tls.connect({ host: "127.0.0.1", port, rejectUnauthorized: false, ...options }, () => {
    resolve(`${socket.getProtocol()} ${socket.getCipher().name}`);
    socket.destroy();
  });
  socket.on("error", (error) => resolve(`refused ${error.code}`));
});

async function withTls({ demo, contract }) {
  const { key, file } = certificate(demo);
  const server = await demo.serve({ flags: ["--tls-key", key, "--tls-certificate", file] });
  const people = new People(demo, server, contract);
  const out = [];
  // The client's own library refuses nothing here: level 0 lets it offer what the server must turn down.
  const old = { minVersion: "TLSv1", ciphers: "ALL:@SECLEVEL=0" };
  const versions = { 1: await shake(server.port, { ...old, maxVersion: "TLSv1" }), 11: await shake(server.port, { ...old, maxVersion: "TLSv1.1" }), 12: await shake(server.port, { maxVersion: "TLSv1.2" }), 13: await shake(server.port, {}), cbc: await shake(server.port, { maxVersion: "TLSv1.2", ciphers: "ECDHE-ECDSA-AES128-SHA:@SECLEVEL=0" }) };
  out.push(that(/^refused ERR_SSL_(TLSV1_ALERT_PROTOCOL_VERSION|UNSUPPORTED_PROTOCOL)/.test(versions[1]), `TLS 1.0: ${versions[1]}`), that(/^refused ERR_SSL_(TLSV1_ALERT_PROTOCOL_VERSION|UNSUPPORTED_PROTOCOL)/.test(versions[11]), `TLS 1.1: ${versions[11]}`));
  out.push(that(/^TLSv1\.2 ECDHE-ECDSA-(AES\d+-GCM|CHACHA20)/.test(versions[12]), `TLS 1.2: ${versions[12]}`), that(/^TLSv1\.3 /.test(versions[13]), `TLS 1.3: ${versions[13]}`), that(/^refused/.test(versions.cbc), `CBC: ${versions.cbc}`));
  const nobody = people.nobody();
  const begun = await nobody.post("/api/sign-in", { sign_in: "coach", password: people.password("coach") }, { origin: `https://127.0.0.1:${server.port}` });
  const cookie = cookieOf(begun);
  out.push(is(begun, 200), that(/^__Host-lanework=[A-Za-z0-9_-]{43}; Path=\/; Secure; HttpOnly; SameSite=Strict$/.test(begun.headers["set-cookie"]), `${begun.headers["set-cookie"]}`));
  out.push(is(await nobody.as({ cookie }).get("/api/me"), 200));
  out.push(is(await nobody.get("/api/me", { cookie: `lanework=${cookie}` }), 401), is(await nobody.post("/api/sign-in", {}, { origin: `http://127.0.0.1:${server.port}` }), 403, "not-from-here"));
  for (const file of ["/", "/page.css"]) out.push(is(await nobody.get(file), 200));
  out.push(is(await nobody.get("/metrics"), 200));
  const plain = await exchange({ ...server, tls: false, secure: true }, contract, "GET /health HTTP/1.1\r\nHost: x\r\n\r\n", { most: 1000 });
  out.push(that(plain.answers.every(({ status }) => status === 0) && plain.closed, `plain HTTP at the port of TLS: ${plain.answers.map(({ status }) => status)}`));
  const ended = await server.stop();
  out.push(that(ended.status === 0, `ended with ${JSON.stringify(ended)}`));
  return all(out);
}

async function refusedAtStart({ demo }) {
  const { key, file } = certificate(demo);
  const { key: other } = certificate(demo);
  const start = async (flags) => {
    const said = spawnSync(demo.program, ["serve", "--ledger", demo.folder(), "--port", "0", ...flags], { encoding: "utf8", timeout: 5000 });
    return `${said.status} ${said.stderr}`;
  };
  const out = [];
  for (const mode of [0o440, 0o404, 0o644, 0o420]) {
    chmodSync(key, mode);
    const said = await start(["--tls-key", key, "--tls-certificate", file]);
    out.push(that(/^2 .*a key that others may read, expected a key that only its owner may read/.test(said), `mode ${mode.toString(8)}: ${said}`));
  }
  chmodSync(key, 0o400);
  const wanted = [
    [["--tls-key", `${key}-none`, "--tls-certificate", file], /^2 .*found nothing, expected the key/],
    [["--tls-key", file, "--tls-certificate", file], /^2 /],
    [["--tls-key", other, "--tls-certificate", file], /^2 .*key/],
    [["--tls-key", key, "--tls-certificate", key], /^2 .*expected a certificate chain/],
    [["--tls-certificate", file], /^2 .*--tls-key/],
    [["--tls-key", key], /^2 .*--tls-certificate/],
    [["--address", "0.0.0.0"], /^2 .*without TLS/],
    [["--address", "nowhere"], /^2 .*/],
  ];
  for (const [flags, pattern] of wanted) {
    const said = await start(flags);
    out.push(that(pattern.test(said), `${flags.join(" ")}: ${said}`));
  }
  return all(out);
}

// A key of the ledger that others may read, a port that is taken, a folder without a ledger.
async function notAtAll({ demo }) {
  const folder = demo.folder();
  const start = (where, port = "0") => {
    const said = spawnSync(demo.program, ["serve", "--ledger", where, "--port", port], { encoding: "utf8", timeout: 5000 });
    return `${said.status} ${said.stderr}`;
  };
  const server = await demo.serve();
  const taken = start(folder, `${server.port}`);
  await server.stop();
  chmodSync(`${folder}/ledger.key`, 0o440);
  const open = start(folder);
  return all(that(/^2 .*a port that nobody else listens on/.test(taken), taken), that(/^2 .*ledger\.key/.test(open), open), that(/^2 /.test(start(`${folder}-none`)), "a folder without a ledger"));
}

export const overTls = [
  { name: "tls: versions, suites, cookie, HSTS", run: withTls },
  { name: "tls: refused at start", run: refusedAtStart },
  { name: "start: what is not as it should be is refused", run: notAtAll },
];
