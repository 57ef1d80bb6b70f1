// The same requests in the app's own worker, in Chromium: the page fetches each request's text and the native answer, and asks the worker.
import { createServer } from "node:http";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { chromium } from "playwright-core";

async function served(folder, wasm) {
  const { outputFiles } = await build({ entryPoints: ["web/shared/engine/worker.ts"], bundle: true, format: "esm", target: "es2020", write: false });
  const files = {
    "/": ["text/html", "<!doctype html><title>parity</title>"],
    "/worker.js": ["text/javascript", Buffer.from(outputFiles[0].contents)],
    "/lanework.wasm": ["application/wasm", readFileSync(wasm)],
  };
  const server = createServer((request, response) => {
    const path = join(folder, decodeURIComponent(request.url));
    const [type, bytes] = files[request.url] ?? ["text/plain; charset=utf-8", existsSync(path) ? readFileSync(path) : undefined];
    response.writeHead(bytes === undefined ? 404 : 200, { "content-type": type });
    response.end(bytes);
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return { url: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}

// In the page; gives what differs, with what stands around it.
async function compareAll(files) {
  const worker = new Worker("/worker.js", { type: "module" });
  const heard = () => new Promise((resolve) => (worker.onmessage = ({ data }) => resolve(data)));
  const ready = heard();
  worker.postMessage({ door: "/lanework.wasm" });
  const said = await ready;
  if (!said.ready) throw new Error(said.broken);
  const bytes = async (path) => new Uint8Array(await (await fetch(path)).arrayBuffer());
  const out = [];
  for (const [number, file] of files.entries()) {
    const request = new TextDecoder().decode(await bytes(file));
    const native = await bytes(`${file}.answer`);
    const answered = heard();
    worker.postMessage({ number, request });
    const { answer, broken } = await answered;
    const ours = new TextEncoder().encode(answer ?? `broken: ${broken}`);
    let at = 0;
    while (at < native.length && native[at] === ours[at]) at++;
    if (at === native.length && ours.length === native.length) continue;
    const around = (all) => new TextDecoder().decode(all.slice(Math.max(0, at - 60), at + 60));
    out.push([file, `byte ${at}\nnative   ${around(native)}\nChromium ${around(ours)}`]);
  }
  return out;
}

// What differs, by file; and the browser's version.
export async function compareInChromium(folder, files, wasm) {
  const server = await served(folder, wasm);
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
  try {
    const page = await browser.newPage();
    await page.goto(server.url);
    return { differ: new Map(await page.evaluate(compareAll, files)), version: browser.version() };
  } finally {
    await browser.close();
    server.close();
  }
}
