// The project's own files: what git tracks, and what is new and not ignored; without git, what stands in the tree.
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";

// Nobody reads these line by line; lint-generated holds them to what they are made from.
const kMadeByPrograms = new Set(["web/shared/api.ts", "web/shared/api_places.ts"]);
const kNotOurs = new Set([".git", "build", "out", "node_modules"]);

function listedByGit() {
  const words = ["-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard"];
  return execFileSync("git", words, { stdio: ["ignore", "pipe", "ignore"] }).toString("utf8").split("\0");
}

function standing(folder) {
  return readdirSync(folder || ".", { withFileTypes: true }).flatMap((entry) => {
    const name = folder ? `${folder}/${entry.name}` : entry.name;
    if (kNotOurs.has(entry.name)) return [];
    return entry.isDirectory() ? standing(name) : [name];
  });
}

export function trackedFiles() {
  let names;
  try {
    names = listedByGit();
  } catch {
    names = standing("");
  }
  return [...new Set(names)].filter((name) => name !== "" && existsSync(name)).sort();
}

export function sources(pattern = /\.(cpp|h)$/) {
  return trackedFiles().filter((name) => pattern.test(name) && !kMadeByPrograms.has(name));
}

export function linesOf(name) {
  return readFileSync(name, "utf8").split("\n");
}
