// Makes FOLDER/desk, which the server serves as the lead's app at /desk/index.html: the first screen's files, and one piece
// for each screen that is loaded when it is opened. Ends with the compressed sizes of the first, and fails above the budget.
// usage: node tools/bundle_desk.mjs FOLDER [--door lanework.wasm] [--budget BYTES]
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { addPieces, bundled, bundleProgram, kRoot, styleWith, WebFolder } from "./web_folder.mjs";

const kApp = join(kRoot, "web/desk");
const kAddress = "/desk/";
const kBudgetBytes = 350_000; // of the first screen, compressed by brotli, without pictures

// The frame's own first, then each screen's, wherever one lies.
function styles() {
  const found = readdirSync(kApp, { recursive: true }).map(String).filter((name) => name.endsWith(".css") && name !== "shell/desk.css");
  return ["shell/desk.css", ...found.sort()];
}

// Asked for at once, and not each when the one before it is read.
function ahead(names) {
  const link = (name) => (name.endsWith(".woff2") ? `<link rel="preload" as="font" type="font/woff2" crossorigin href="${kAddress}${name}" />` : `<link rel="modulepreload" href="${kAddress}${name}" />`);
  return names.filter((name) => /\.(woff2|js)$/.test(name)).map(link).join("\n    ");
}

// All files, and the names of those that the first screen loads.
export async function bundleDesk(to, { door } = {}) {
  const folder = new WebFolder();
  const style = folder.addHashed("style", "css", await styleWith(folder, { at: kApp, files: styles(), address: kAddress }));
  const first = new Set(folder.files.keys());
  const doorFile = door && existsSync(door) ? `${kAddress}${folder.addHashed("lanework", "wasm", readFileSync(door))}` : "";
  const worker = `${kAddress}${folder.addHashed("worker", "js", await bundled(join(kRoot, "web/shared/engine/worker.ts"), "esm"))}`;
  const spanish = JSON.stringify(JSON.parse(readFileSync(join(kRoot, "web/shared/words/catalogue_es.json"), "utf8")));
  const drills = `${kAddress}${folder.addHashed("drills-es", "json", spanish)}`;
  const program = await addPieces(folder, join(kApp, "shell/main.tsx"), { kEngineWorkerFile: worker, kDoorFile: doorFile, kSpanishDrillsFile: drills });
  for (const name of program.first) first.add(name);
  folder.add("icon.svg", readFileSync(join(kRoot, "web/pitchside/shell/icon.svg")));
  const page = readFileSync(join(kApp, "shell/index.html"), "utf8");
  folder.add("index.html", page.replace("{style}", style).replace("{ahead}", ahead([...first])).replace("{main}", program.main));
  folder.write(join(to, "desk"));
  return { files: folder.files, first: first.add("index.html") };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await bundleProgram("bundle_desk", kBudgetBytes, async (to, options) => {
    const { files, first } = await bundleDesk(to, options);
    return new Map([...files].filter(([name]) => first.has(name)));
  });
}
