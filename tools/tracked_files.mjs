// The project's own files: what git tracks, and what is new and not ignored.
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";

export function trackedFiles() {
  const listed = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"]);
  const names = listed.toString("utf8").split("\0").filter((name) => name !== "" && existsSync(name));
  return [...new Set(names)].sort();
}

export function sources(pattern = /\.(cpp|h)$/) {
  return trackedFiles().filter((name) => pattern.test(name));
}

export function linesOf(name) {
  return readFileSync(name, "utf8").split("\n");
}
