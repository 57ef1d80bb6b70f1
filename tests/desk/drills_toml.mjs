// A drill written as TOML is read by the program as the same drill: every shipped one, and ones that people could write.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { program, root } from "../pitchside/places.mjs";
import { loadTypescript } from "../pitchside/typescript.mjs";

const { tomlOf } = await loadTypescript("../desk/drills/edit/write_toml.ts");

// The catalogue's documents as the program reads them from a folder.
function catalogueOf(folder) {
  const kept = mkdtempSync(join(tmpdir(), "lanework-drills-"));
  try {
    const saved = join(kept, "request.json");
    execFileSync(program(), ["plan", "--catalogue", folder, "--squad", join(root, "demo/quillmere/squads/u13-kestrels.toml"), "--save-request", saved, "--json"]);
    return JSON.parse(readFileSync(saved, "utf8")).catalogue;
  } finally {
    rmSync(kept, { recursive: true });
  }
}

function withFolder(work) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-catalogue-"));
  try {
    cpSync(join(root, "catalogue"), folder, { recursive: true });
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const shipped = catalogueOf(join(root, "catalogue"));

test("every shipped drill, read, written and read again, is the same document", () => {
  withFolder((folder) => {
    for (const drill of shipped.drills) writeFileSync(join(folder, "drills", `${drill.id}.toml`), tomlOf(drill));
    assert.equal(shipped.drills.length, 76);
    assert.deepEqual(catalogueOf(folder).drills, shipped.drills);
    const { status, stdout, stderr } = spawnSync(program(), ["catalogue", "--catalogue", folder, "check"], { encoding: "utf8" });
    assert.equal(status, 0, stdout + stderr);
  });
});

// Blank lines, the order of lines, of what stands within braces, and '2.0' for 2 are the writer's own.
function linesOf(text) {
  const sorted = (_, within) => `{${within.split(", ").map((one) => one.trim()).sort().join(", ")}}`;
  const whole = (line) => line.replace(/= (-?\d+)\.(\d*?)0+(?=[ ,}]|$)/g, (_, units, part) => (part ? `= ${units}.${part}` : `= ${units}`));
  return text.split("\n").filter((line) => line !== "").map((line) => whole(line).replace(/\{([^{}]*)\}/g, sorted)).sort();
}

test("every line of a shipped file stands in what is written of it", () => {
  for (const drill of shipped.drills) {
    const file = readFileSync(join(root, "catalogue/drills", `${drill.id}.toml`), "utf8");
    assert.deepEqual(linesOf(tomlOf(drill)), linesOf(file), drill.id);
  }
});

test("whatever a person types comes back as typed", () => {
  const hostile = [
    `He said "no" \\ and left`, "<script>alert(1)</script>", "a = 1 # not a comment", "[[rung]]", "''' \"\"\"", "ñandú, 走る, \u202e reversed", "tab\tinside", "'; drop table drills; --", "{ x = 1 }", "emoji 🤸 and a\u00a0hard space",
  ];
  const drill = structuredClone(shipped.drills.find(({ id }) => id === "side-plank"));
  const refused = [];
  for (const said of hostile) {
    const typed = { ...drill, name: said, how: said, purpose: said, stop_if: [said], watch: [{ fault: said, cue: said }], cues: ["Lift the hip"] };
    withFolder((folder) => {
      writeFileSync(join(folder, "drills", "side-plank.toml"), tomlOf(typed));
      let read;
      try {
        read = catalogueOf(folder).drills.find(({ id }) => id === "side-plank");
      } catch {
        refused.push(said);
        return;
      }
      assert.deepEqual(read, typed, said);
    });
  }
  assert.deepEqual(refused, ["tab\tinside"]); // the reader takes no control characters, and says so
});
