// Each lint is one case: it passes when it has no fault to tell.
import copies from "../lint/copies.mjs";
import format from "../lint/format.mjs";
import generated from "../lint/generated.mjs";
import guide from "../lint/guide.mjs";
import includes from "../lint/includes.mjs";
import links from "../lint/links.mjs";
import routes from "../lint/routes.mjs";
import sizes from "../lint/sizes.mjs";
import tests from "../lint/tests.mjs";
import tidy from "../lint/tidy.mjs";
import types from "../lint/types.mjs";
import words from "../lint/words.mjs";

export const lints = [includes, words, sizes, copies, links, guide, routes, generated, tests, types, format, tidy].map((lint) => ({
  name: lint.name,
  async run(context) {
    const faults = await lint.run(context);
    return [{ name: lint.name, passed: faults.length === 0, detail: faults.join("\n") }];
  },
}));
