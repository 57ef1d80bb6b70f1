// Pages made from tables and the demo club's generated files are as their generators make them today.
import { existsSync, readFileSync } from "node:fs";
import { apiFiles } from "../generate/api_types.mjs";
import { deskTables } from "../generate/desk_tables.mjs";
import { errorsPage, kPage } from "../generate/errors.mjs";
import { quillmere } from "../generate/quillmere.mjs";
import { demoSeason } from "../generate/season.mjs";

const isIn = (path, text) => existsSync(path) && readFileSync(path, "utf8") === text;

export default {
  name: "lint-generated",
  async run() {
    const faults = isIn(kPage, errorsPage()) ? [] : [`${kPage} is out of date: node tools/generate/errors.mjs`];
    for (const [path, text] of quillmere()) {
      if (!isIn(path, text)) faults.push(`${path} is not what node tools/generate/quillmere.mjs makes`);
    }
    for (const [path, text] of demoSeason()) {
      if (!isIn(path, text)) faults.push(`${path} is not what node tools/generate/season.mjs makes`);
    }
    for (const [path, text] of await apiFiles()) {
      if (!isIn(path, text)) faults.push(`${path} is out of date: node tools/generate/api_types.mjs`);
    }
    for (const [path, text] of deskTables()) {
      if (!isIn(path, text)) faults.push(`${path} is out of date: node tools/generate/desk_tables.mjs`);
    }
    return faults;
  },
};
