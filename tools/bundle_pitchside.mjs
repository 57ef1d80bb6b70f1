// Makes the folder that the server serves as the coach's app: everything under a name with a digest of its content but
// the page, the service worker, the manifest and the icons. Ends with the compressed sizes, and fails above the budget.
// usage: node tools/bundle_pitchside.mjs FOLDER [--door lanework.wasm] [--budget BYTES]
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { bundled, bundleProgram, digestOf, kRoot, sizesOf as sizesOfAll, styleWith, WebFolder } from "./web_folder.mjs";

const kApp = join(kRoot, "web/pitchside");
const kWorker = join(kRoot, "web/shared/engine/worker.ts");
const kStyles = ["shell/shell.css", "pair/pair.css", "look/look.css"];
const kIcons = ["icon.svg", "icon-192.png", "icon-512.png"];
const kBudgetBytes = 300_000; // of a first load, compressed by brotli, without pictures

// entry and page: a test puts its own in place of the app's.
export async function bundlePitchside(to, { door, entry = join(kApp, "shell/main.tsx"), page } = {}) {
  const folder = new WebFolder();
  const style = folder.addHashed("style", "css", await styleWith(folder, { at: kApp, files: kStyles }));
  const doorFile = door && existsSync(door) ? `/${folder.addHashed("lanework", "wasm", readFileSync(door))}` : "";
  const worker = `/${folder.addHashed("worker", "js", await bundled(kWorker, "esm"))}`;
  const spanish = JSON.stringify(JSON.parse(readFileSync(join(kRoot, "web/shared/words/catalogue_es.json"), "utf8")));
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

// Of what a first load brings: without the drills' words of another language.
const firstLoad = (files) => new Map([...files].filter(([name]) => !name.startsWith("drills-")));
export const sizesOf = (files) => sizesOfAll(firstLoad(files));

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await bundleProgram("bundle_pitchside", kBudgetBytes, async (to, options) => firstLoad(await bundlePitchside(to, options)));
}
