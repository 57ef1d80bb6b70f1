// A module of the phone's program, bundled as it is shipped, for a test outside a browser.
import { build } from "esbuild";
import { join } from "node:path";
import { root } from "./places.mjs";

export async function loadTypescript(file) {
  const { outputFiles } = await build({
    entryPoints: [join(root, "web/pitchside", file)],
    bundle: true,
    format: "esm",
    write: false,
    platform: "neutral",
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);
}
