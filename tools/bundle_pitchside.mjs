// Makes the folder that the server serves as the coach's app: everything under a name with a digest of its content but
// the page, the service worker, the manifest and the icons. Ends with the compressed sizes, and fails above the budget.
// usage: node tools/bundle_pitchside.mjs FOLDER [--door lanework.wasm] [--budget BYTES]
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const kRoot = fileURLToPath(new URL("..", import.meta.url));
const kApp = join(kRoot, "web/pitchside");
const kWorker = join(kRoot, "web/shared/engine/worker.ts");
const kStyles = ["shell/shell.css", "pair/pair.css", "look/look.css"];
const kIcons = ["icon.svg", "icon-192.png", "icon-512.png"];
const kBudgetBytes = 300_000; // of a first load, compressed by brotli, without pictures
const kPacked = /\.(png|woff2)$/; // as app/serve/static_files.cpp leaves them

// The server hands it out as it is; it compresses by gzip itself for whoever takes no brotli.
const brotli = (bytes) => brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } });

// esbuild's own digests are not of the digits by which the server knows a hashed name.
const digestOf = (bytes) => createHash("sha256").update(bytes).digest("hex").slice(0, 10);

async function bundled(entry, format, define = {}) {
  const { build } = await import("esbuild").catch(() => {
    throw new Error("esbuild is not installed: npm ci");
  });
  const made = await build({
    absWorkingDir: kRoot, entryPoints: [entry], bundle: true, minify: true, write: false, format, target: "es2020", charset: "utf8",
    jsx: "automatic", jsxImportSource: "preact", legalComments: "none", logLevel: "silent",
    define: Object.fromEntries(Object.entries(define).map(([name, value]) => [name, JSON.stringify(value)])),
  });
  if (made.warnings.length > 0) throw new Error(made.warnings.map(({ text, location }) => `${location?.file}:${location?.line}: ${text}`).join("\n"));
  return made.outputFiles[0].text;
}

class Folder {
  constructor() {
    this.files = new Map(); // name -> bytes
  }

  add(name, bytes) {
    this.files.set(name, Buffer.from(bytes));
    return name;
  }

  addHashed(stem, ending, bytes) {
    return this.add(`${stem}-${digestOf(bytes)}.${ending}`, bytes);
  }

  write(to) {
    rmSync(to, { recursive: true, force: true });
    mkdirSync(to, { recursive: true });
    for (const [name, bytes] of this.files) {
      writeFileSync(join(to, name), bytes);
      if (!kPacked.test(name)) writeFileSync(join(to, `${name}.br`), brotli(bytes));
    }
  }
}

// The styles with what they import; type goes into the folder by a name that the server knows as hashed.
async function styleWith(folder) {
  const { build } = await import("esbuild");
  const type = {
    name: "type",
    setup: (made) => made.onResolve({ filter: /\.woff2$/ }, ({ path, resolveDir }) => ({
      path: `/${folder.addHashed(basename(path, ".woff2"), "woff2", readFileSync(join(resolveDir, path)))}`, external: true,
    })),
  };
  const contents = kStyles.filter((name) => existsSync(join(kApp, name))).map((name) => `@import "./${name}";`).join("\n");
  const made = await build({ stdin: { contents, resolveDir: kApp, loader: "css" }, bundle: true, minify: true, write: false, plugins: [type], logLevel: "silent" });
  return made.outputFiles[0].text;
}

// entry and page: a test puts its own in place of the app's.
export async function bundlePitchside(to, { door, entry = join(kApp, "shell/main.tsx"), page } = {}) {
  const folder = new Folder();
  const style = folder.addHashed("style", "css", await styleWith(folder));
  const doorFile = door && existsSync(door) ? `/${folder.addHashed("lanework", "wasm", readFileSync(door))}` : "";
  const worker = existsSync(kWorker) ? `/${folder.addHashed("worker", "js", await bundled(kWorker, "esm"))}` : "";
  const spanish = JSON.stringify(JSON.parse(readFileSync(join(kApp, "words/catalogue_es.json"), "utf8")));
  const drills = `/${folder.addHashed("drills-es", "json", spanish)}`;
  const main = folder.addHashed("main", "js", await bundled(entry, "esm", { kEngineWorkerFile: worker, kDoorFile: doorFile, kSpanishDrillsFile: drills }));
  const html = (page ?? readFileSync(join(kApp, "shell/index.html"), "utf8")).replace("{style}", style).replace("{main}", main);
  folder.add("index.html", html);
  for (const name of ["manifest.webmanifest", ...kIcons]) folder.add(name, readFileSync(join(kApp, "shell", name)));
  const later = [drills]; // not with the first load
  const shell = [...folder.files].map(([name]) => `/${name}`).filter((name) => !later.includes(name)).sort();
  const mark = digestOf([...folder.files].map(([name, bytes]) => `${name} ${digestOf(bytes)}`).sort().join("\n"));
  folder.add("service-worker.js", await bundled(join(kApp, "shell/service_worker.ts"), "iife", { kShellFiles: shell, kLaterFiles: later, kShellName: `shell-${mark}` }));
  folder.write(to);
  return folder.files;
}

const gzipped = (name, bytes) => (kPacked.test(name) ? bytes.length : Math.min(bytes.length, gzipSync(bytes, { level: 9 }).length));
const byBrotli = (name, bytes) => (kPacked.test(name) ? bytes.length : Math.min(bytes.length, brotli(bytes).length));

// Of what a first load brings; pictures do not count, nor the drills' words of another language.
export function sizesOf(files) {
  const rows = [...files].filter(([name]) => !/\.(png|svg)$|^drills-/.test(name)).map(([name, bytes]) => ({ name, gzip: gzipped(name, bytes), brotli: byBrotli(name, bytes) }));
  const sum = (key) => rows.reduce((total, row) => total + row[key], 0);
  return { rows, gzip: sum("gzip"), brotli: sum("brotli") };
}

async function main([to, ...flags]) {
  if (!to || to.startsWith("--")) throw new Error("usage: bundle_pitchside.mjs FOLDER [--door lanework.wasm] [--budget BYTES]");
  const valueOf = (flag) => (flags.includes(flag) ? flags[flags.indexOf(flag) + 1] : undefined);
  const budget = Number(valueOf("--budget") ?? kBudgetBytes);
  const { rows, gzip, brotli: packed } = sizesOf(await bundlePitchside(to, { door: valueOf("--door") ?? "build/wasm/lanework.wasm" }));
  for (const row of [...rows, { name: "in all", gzip, brotli: packed }]) console.log(`${row.name.padEnd(32)} ${String(row.gzip).padStart(8)} ${String(row.brotli).padStart(8)}`);
  if (packed > budget) throw new Error(`${packed} bytes by brotli, ${packed - budget} more than the budget of ${budget}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    await main(process.argv.slice(2));
  } catch (error) {
    console.error(`bundle_pitchside: ${error.message}`);
    process.exit(1);
  }
}
