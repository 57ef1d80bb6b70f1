// Writes what the program prints now into tests/cli/golden and tests/cli/stories, for somebody to read with git diff before it is kept.
// usage: node tools/approve.mjs PROGRAM [name...]
import { writeFileSync } from "node:fs";
import { goldenPath, goldenText, kGoldens } from "../tests/cli/golden.mjs";
import { kStories, storyPath, writeStory } from "../tests/cli/rolling_stories.mjs";

const [program, ...names] = process.argv.slice(2);
if (!program) {
  console.error("usage: node tools/approve.mjs PROGRAM [name...]");
  process.exit(2);
}
for (const name of Object.keys(kGoldens)) {
  if (names.length > 0 && !names.includes(name)) continue;
  writeFileSync(goldenPath(name), await goldenText(program, name));
  console.log(goldenPath(name));
}
for (const name of Object.keys(kStories)) {
  if (names.length > 0 && !names.includes(name)) continue;
  writeStory(program, name);
  console.log(storyPath(name));
}
