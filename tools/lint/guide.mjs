// The guides are about what there is: every picture that they show lies beside them and none lies there unused, every word
// in slanted letters is one that a screen shows, and every screen of desk and phone has its place.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const kFolder = "docs/guide";
const kPages = { "coach.md": ["web/pitchside/words/en.json"], "lead.md": ["web/desk"] };
const kMostBytes = 120_000; // of one picture
const kLargestFolder = 1_200_000;

// Every text of a page of words, however deep.
const textsOf = (node) => (typeof node === "string" ? [node] : Object.values(node).flatMap(textsOf));

function wordsBelow(path) {
  if (path.endsWith(".json")) return textsOf(JSON.parse(readFileSync(path, "utf8")));
  return readdirSync(path, { recursive: true }).map(String).filter((name) => name.endsWith("en.json")).flatMap((name) => wordsBelow(join(path, name)));
}

// '*Send now*', as it may go over the end of a line; not '**bold**'.
const slanted = (text) => [...text.matchAll(/(?<!\*)\*([^*\n]+(?:\n[^*\n]+)?)\*(?!\*)/g)].map(([, words]) => words.replace(/\s+/g, " "));
const picturesOf = (text) => [...text.matchAll(/!\[[^\]]+\]\((pictures\/[\w-]+\.png)\)/g)].map(([, path]) => path);

// As they are called in the list of screens.
function screens() {
  const names = JSON.parse(readFileSync("web/desk/shell/words/en.json", "utf8")).screen;
  const there = [...readFileSync("web/desk/shell/screens.ts", "utf8").matchAll(/^ {2}"?([\w-]+)"?: \{ load/gm)].map(([, name]) => name);
  return there.map((name) => names[name]);
}

export default {
  name: "lint-guide",
  run() {
    const faults = [];
    const shown = new Set();
    for (const [page, places] of Object.entries(kPages)) {
      const name = join(kFolder, page);
      const text = readFileSync(name, "utf8");
      const words = new Set(places.flatMap(wordsBelow));
      const begins = [...words].map((one) => one.split("{")[0].trim());
      for (const said of slanted(text)) if (!words.has(said) && !begins.includes(said)) faults.push(`${name}: no screen says '${said}'`);
      for (const path of picturesOf(text)) {
        shown.add(path);
        if (!existsSync(join(kFolder, path))) faults.push(`${name}: no such picture: ${path}`);
      }
      const named = [...slanted(text), ...[...text.matchAll(/^## (.*)$/gm)].map(([, heading]) => heading)];
      if (page === "lead.md") for (const screen of screens()) if (!named.includes(screen)) faults.push(`${name}: nothing about the screen '${screen}'`);
    }
    let sum = 0;
    for (const file of readdirSync(join(kFolder, "pictures"))) {
      const size = readFileSync(join(kFolder, "pictures", file)).length;
      sum += size;
      if (!shown.has(`pictures/${file}`)) faults.push(`${kFolder}/pictures/${file}: no guide shows it`);
      if (size > kMostBytes) faults.push(`${kFolder}/pictures/${file}: ${size} bytes, more than ${kMostBytes}`);
    }
    if (sum > kLargestFolder) faults.push(`${kFolder}/pictures: ${sum} bytes in all, more than ${kLargestFolder}`);
    return faults;
  },
};
