// Pages made from tables are as their generators make them today.
import { existsSync, readFileSync } from "node:fs";
import { errorsPage, kPage } from "../generate/errors.mjs";

export default {
  name: "lint-generated",
  run() {
    const current = existsSync(kPage) ? readFileSync(kPage, "utf8") : "";
    return current === errorsPage() ? [] : [`${kPage} is out of date: node tools/generate/errors.mjs`];
  },
};
