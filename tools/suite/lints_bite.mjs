// Each lint finds the mistake that it is there for, in a small tree made for it, and nothing in the tree without.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import copies from "../lint/copies.mjs";
import format from "../lint/format.mjs";
import guide from "../lint/guide.mjs";
import includes from "../lint/includes.mjs";
import links from "../lint/links.mjs";
import routes from "../lint/routes.mjs";
import sizes from "../lint/sizes.mjs";
import tests from "../lint/tests.mjs";
import types from "../lint/types.mjs";
import words from "../lint/words.mjs";

const errors = (...keys) => ({ content: { "application/json": { schema: { properties: { error: { enum: keys } } } } } });
const kSquads = { operationId: "squads", security: [{ device: [] }], responses: { 401: errors("sign-in-needed", "revoked"), 403: errors("not-your-role") } };
const page = (get) => ({ openapi: "3.1.0", paths: { "/api/squads": { get } } });

const kSound = {
  "tools/allowed_includes.txt": "core/base:\ncore/plan: core/base\n",
  "core/base/unit.h": "#pragma once\n",
  "core/plan/plan.cpp": '#include "core/base/unit.h"\n',
  "docs/page.md": "[a page](page.md)\n",
  "catalogue/access/matrix.toml": '[[route]]\nname = "squads"\nmethod = "GET"\npath = "/api/squads"\nby = "device"\nlead = "yes"\ncoach = "no"\n',
  "schema/openapi.yaml": `${JSON.stringify(page(kSquads))}\n`,
  "web/tsconfig.json": readFileSync("web/tsconfig.json", "utf8"),
  "web/charts/sound.ts": "export const first = (values: number[]): number => values[0] ?? 0;\n",
  "docs/guide/coach.md": "![The list](pictures/list.png) Tap *Done*.\n",
  "docs/guide/lead.md": "## Week\n",
  "docs/guide/pictures/list.png": "a picture",
  "web/pitchside/words/en.json": '{"done": "Done"}',
  "web/desk/shell/words/en.json": '{"screen": {"week": "Week"}}',
  "web/desk/shell/screens.ts": "export const kScreens = {\n  week: { load: 1 },\n};\n",
};

const kLines = Array.from({ length: 20 }, (_, index) => `int line_${index} = ${index};`).join("\n");

const kMistakes = [
  [includes, "a new edge", { "core/base/unit.h": '#include "core/plan/plan.cpp"\n' }],
  [includes, "a healed edge", { "core/plan/plan.cpp": "" }],
  [includes, "a file that is not there", { "core/plan/plan.cpp": '#include "core/base/unit.h"\n#include "core/base/gone.h"\n' }],
  [words, "unfinished work", { "core/plan/plan.cpp": `// ${"TO" + "DO"}: later\n` }],
  [words, "a path of one machine", { "docs/page.md": `see ${"/ho" + "me/someone"}/notes\n` }],
  [words, "a download address", { "package-lock.json": `{"${"resol" + "ved"}": "https://x/y.tgz"}\n` }],
  [sizes, "a file too long", { "core/base/long.cpp": "int a;\n".repeat(700) }],
  [copies, "lines that stand twice", { "core/base/one.cpp": kLines, "core/plan/two.cpp": kLines }],
  [links, "a link to nothing", { "docs/page.md": "[a page](gone.md)\n" }],
  [links, "a decision without its number", { "docs/decisions/0002-second.md": "# 2\n" }],
  [guide, "a word that no screen says", { "docs/guide/coach.md": "![The list](pictures/list.png) Tap *Finished*.\n" }],
  [guide, "a picture that is not there", { "docs/guide/coach.md": "![The list](pictures/list.png) ![Gone](pictures/gone.png)\n" }],
  [guide, "a picture that no guide shows", { "docs/guide/coach.md": "Tap *Done*.\n" }],
  [guide, "a screen that no guide tells of", { "docs/guide/lead.md": "Nothing.\n" }],
  [routes, "a route that is not described", { "schema/openapi.yaml": '{"openapi": "3.1.0", "paths": {}}\n' }],
  [routes, "a route of nobody's table", { "catalogue/access/matrix.toml": "" }],
  [routes, "another way to show who calls", { "schema/openapi.yaml": JSON.stringify(page({ ...kSquads, security: [] })) }],
  [routes, "a refusal that is not described", { "schema/openapi.yaml": JSON.stringify(page({ ...kSquads, responses: { 401: errors("sign-in-needed", "revoked") } })) }],
  [routes, "a refusal that cannot be", { "schema/openapi.yaml": JSON.stringify(page({ ...kSquads, responses: { ...kSquads.responses, 415: errors("not-json") } })) }],
  [tests, "a property that nobody looks at", { "tests/base/a_test.cpp": "  rc::check([] {});\n" }],
  [types, "a value that may be absent", { "web/charts/sound.ts": "export const first = (values: number[]): number => values[0];\n" }],
  [types, "a name nobody uses", { "web/charts/sound.ts": "const unused = 1;\nexport const used = 2;\n" }],
  [format, "a line clang-format would change", { "core/base/unit.h": "#pragma   once\nint  a ;\n" }],
];

async function faultsIn(lint, files) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-lint-"));
  const before = process.cwd();
  try {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(join(folder, dirname(name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    process.chdir(folder);
    return (await lint.run({})).length;
  } finally {
    process.chdir(before);
    rmSync(folder, { recursive: true, force: true });
  }
}

export const lintsBite = {
  name: "lints-bite",
  async run() {
    const results = [];
    for (const [lint, mistake, files] of kMistakes) {
      const sound = await faultsIn(lint, kSound);
      const broken = await faultsIn(lint, { ...kSound, ...files });
      results.push({ name: `${lint.name} finds ${mistake}`, passed: sound === 0 && broken > 0,
        detail: `${sound} faults in the sound tree, ${broken} in the broken one` });
    }
    return results;
  },
};
