// A module of the phone's program, bundled as it is shipped, for a test outside a browser.
import { build } from "esbuild";
import { join } from "node:path";
import { root } from "./places.mjs";

// Several as one: what they share is there once.
export async function loadTypescript(...files) {
  const contents = files.map((file) => `export * from "./${file}";`).join("\n");
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: join(root, "web/pitchside"), loader: "ts" },
    bundle: true,
    format: "esm",
    write: false,
    platform: "neutral",
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);
}
