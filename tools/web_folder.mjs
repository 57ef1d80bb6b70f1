// What the bundles of the browser's apps have in common: a folder of files under names with a digest of their content, each
// with its brotli beside it as the server hands it out, and what they weigh compressed.
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

export const kRoot = fileURLToPath(new URL("..", import.meta.url));
const kPacked = /\.(png|woff2)$/; // as app/serve/static_files.cpp leaves them

// The digits by which the server knows a hashed name.
export const digestOf = (bytes) => createHash("sha256").update(bytes).digest("hex").slice(0, 10);

const compressed = new Map(); // by digest: tests make an app's folder many times, and the engine alone takes seconds

// The server hands it out as it is; it compresses by gzip itself for whoever takes no brotli.
function brotli(bytes) {
  const digest = digestOf(bytes);
  if (!compressed.has(digest)) compressed.set(digest, brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }));
  return compressed.get(digest);
}

export class WebFolder {
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

async function built(options) {
  const { build } = await import("esbuild").catch(() => {
    throw new Error("esbuild is not installed: npm ci");
  });
  const made = await build({ absWorkingDir: kRoot, bundle: true, minify: true, write: false, charset: "utf8", legalComments: "none", logLevel: "silent", ...options });
  if (made.warnings.length > 0) throw new Error(made.warnings.map(({ text, location }) => `${location?.file}:${location?.line}: ${text}`).join("\n"));
  return made;
}

// define: names that a program reads, such as where its worker lies.
const programOptions = (entry, format, define) => ({
  entryPoints: [entry], format, target: "es2020", jsx: "automatic", jsxImportSource: "preact",
  define: Object.fromEntries(Object.entries(define).map(([name, value]) => [name, JSON.stringify(value)])),
});

export async function bundled(entry, format, define = {}) {
  return (await built(programOptions(entry, format, define))).outputFiles[0].text;
}

// In pieces: what is imported when it is wanted lies in a file of its own, beside the first. The first one's name, and what
// the browser loads with it.
export async function addPieces(folder, entry, define = {}) {
  const made = await built({ ...programOptions(entry, "esm", define), splitting: true, outdir: "/", metafile: true, entryNames: "[name]-[hash]", chunkNames: "piece-[hash]" });
  for (const { path, contents } of made.outputFiles) folder.add(basename(path), contents);
  const pieces = new Map(Object.entries(made.metafile.outputs).map(([path, piece]) => [basename(path), piece]));
  const main = [...pieces].find(([, { entryPoint }]) => entryPoint !== undefined && join(kRoot, entryPoint) === entry)[0];
  const first = new Set([main]);
  for (const name of first) for (const { path, kind } of pieces.get(name).imports) if (kind === "import-statement") first.add(basename(path));
  return { main, first };
}

// The styles with what they import; type goes into the folder, where the server finds it under that address.
export async function styleWith(folder, { at, files, address = "/" }) {
  const type = {
    name: "type",
    setup: (made) => made.onResolve({ filter: /\.woff2$/ }, ({ path, resolveDir }) => ({
      path: `${address}${folder.addHashed(basename(path, ".woff2"), "woff2", readFileSync(join(resolveDir, path)))}`, external: true,
    })),
  };
  const contents = files.map((name) => `@import "./${name}";`).join("\n");
  return (await built({ stdin: { contents, resolveDir: at, loader: "css" }, plugins: [type] })).outputFiles[0].text;
}

const smaller = (name, bytes, packed) => (kPacked.test(name) ? bytes.length : Math.min(bytes.length, packed(bytes).length));

// Of a map of names to bytes; pictures do not count.
export function sizesOf(files) {
  const rows = [...files].filter(([name]) => !/\.(png|svg)$/.test(name)).map(([name, bytes]) => ({
    name, gzip: smaller(name, bytes, (all) => gzipSync(all, { level: 9 })), brotli: smaller(name, bytes, brotli),
  }));
  const sum = (key) => rows.reduce((total, row) => total + row[key], 0);
  return { rows, gzip: sum("gzip"), brotli: sum("brotli") };
}

// The program of a bundle: 'FOLDER [--door lanework.wasm] [--budget BYTES]', ending with what the first load weighs.
// make(folder, {door}) gives the files of the first load.
export async function bundleProgram(name, usualBudget, make) {
  try {
    const [to, ...flags] = process.argv.slice(2);
    if (!to || to.startsWith("--")) throw new Error(`usage: ${name}.mjs FOLDER [--door lanework.wasm] [--budget BYTES]`);
    const valueOf = (flag) => (flags.includes(flag) ? flags[flags.indexOf(flag) + 1] : undefined);
    const budget = Number(valueOf("--budget") ?? usualBudget);
    const { rows, gzip, brotli: packed } = sizesOf(await make(to, { door: valueOf("--door") ?? "build/wasm/lanework.wasm" }));
    for (const row of [...rows, { name: "in all", gzip, brotli: packed }]) console.log(`${row.name.padEnd(32)} ${String(row.gzip).padStart(8)} ${String(row.brotli).padStart(8)}`);
    if (packed > budget) throw new Error(`${packed} bytes by brotli, ${packed - budget} more than the budget of ${budget}`);
  } catch (error) {
    console.error(`${name}: ${error.message}`);
    process.exit(1);
  }
}
