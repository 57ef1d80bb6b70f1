// Bundles the dev page and serves it with the worker, the door and a sample package, on a free port of this machine.
import { build } from "esbuild";
import { createServer } from "node:http";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./places.mjs";

const kPage = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Pitchside</title>
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<link rel="stylesheet" href="/page.css"></head><body><div id="evening"></div>
<script type="module" src="/page.js"></script></body></html>`;

const kTypes = { html: "text/html", js: "text/javascript", css: "text/css", wasm: "application/wasm", json: "application/json" };

export async function serveDevPage(pack, modulePath) {
  const { outputFiles } = await build({
    entryPoints: {
      page: join(root, "tests/pitchside/dev_page.tsx"),
      worker: join(root, "web/shared/engine/worker.ts"),
      engine: join(root, "web/shared/engine/engine.ts"),
      sound: join(root, "web/pitchside/screens/sound.ts"),
    },
    bundle: true,
    format: "esm",
    target: "es2022",
    jsx: "automatic",
    jsxImportSource: "preact",
    loader: { ".woff2": "dataurl" },
    outdir: "/served",
    entryNames: "[name]",
    write: false,
  });
  const files = new Map(outputFiles.map((file) => [file.path.replace("/served", ""), Buffer.from(file.contents)]));
  files.set("/", Buffer.from(kPage));
  files.set("/package.json", Buffer.from(JSON.stringify(pack)));
  files.set("/drills-es.json", readFileSync(join(root, "web/shared/words/catalogue_es.json")));
  files.set("/lanework.wasm", readFileSync(modulePath));
  const server = createServer((request, response) => {
    const path = new URL(request.url, "http://here").pathname;
    const file = files.get(path);
    response.writeHead(file ? 200 : 404, { "content-type": kTypes[path.split(".")[1] ?? "html"] ?? "text/plain" });
    response.end(file);
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return { url: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}
