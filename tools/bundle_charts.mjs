// Makes one C++ file of what a report page carries in itself: the charts' script, bundled and minified, with its digest
// for the page's content security policy; the style; the type, as data.
// usage: node tools/bundle_charts.mjs OUT.cpp    (also writes OUT.cpp.d, what it was made of, for ninja)
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";

const kEntry = "web/charts/main.ts";
const kStyle = "app/report/page.css";
const kTypes = [400, 700].map((weight) => ({ weight, file: `node_modules/@fontsource/b612/files/b612-latin-${weight}-normal.woff2` }));
const kLiteralBytes = 4000;  // a line of the C++ file

async function bundle() {
  const { build } = await import("esbuild").catch(() => {
    throw new Error("esbuild is not installed: npm ci");
  });
  const made = await build({
    entryPoints: [kEntry], bundle: true, minify: true, write: false, metafile: true, format: "iife", target: "es2020",
    charset: "ascii", legalComments: "none", logLevel: "silent",
  });
  if (made.warnings.length > 0) throw new Error(made.warnings.map(({ text, location }) => `${location?.file}:${location?.line}: ${text}`).join("\n"));
  const script = made.outputFiles[0].text.trim();
  if (/<\/script|<!--/i.test(script)) throw new Error("the script holds what would end a script element");
  return { script, inputs: Object.keys(made.metafile.inputs) };
}

function fontFaces() {
  return kTypes.map(({ weight, file }) => `@font-face{font-family:"B612";font-weight:${weight};font-display:swap;` +
    `src:url(data:font/woff2;base64,${readFileSync(file).toString("base64")}) format("woff2")}`).join("\n");
}

function literal(text) {
  const pieces = [];
  for (let at = 0; at < text.length; at += kLiteralBytes) pieces.push(text.slice(at, at + kLiteralBytes));
  const escaped = (piece) => piece.replace(/[\\"?]/g, "\\$&").replace(/\n/g, "\\n")
    .replace(/[^ -~]/g, (letter) => [...Buffer.from(letter)].map((byte) => `\\${byte.toString(8).padStart(3, "0")}`).join(""));
  return pieces.map((piece) => `    "${escaped(piece)}"`).join("\n");
}

async function main(out) {
  const { script, inputs } = await bundle();
  const digest = createHash("sha256").update(script).digest("base64");
  writeFileSync(out, `// Made by tools/bundle_charts.mjs.
#include "app/report/bundle.h"

namespace lanework::report {

Script chart_bundle() {
  static constexpr char kText[] =
${literal(script)};
  return {{kText, sizeof(kText) - 1}, "sha256-${digest}"};
}

std::string_view page_style() {
  static constexpr char kText[] =
${literal(readFileSync(kStyle, "utf8"))};
  return {kText, sizeof(kText) - 1};
}

std::string_view page_type() {
  static constexpr char kText[] =
${literal(fontFaces())};
  return {kText, sizeof(kText) - 1};
}

}  // namespace lanework::report
`);
  const needs = [...inputs, kStyle, ...kTypes.map(({ file }) => file), "tools/bundle_charts.mjs"];
  writeFileSync(`${out}.d`, `${out}: ${needs.map((name) => `${process.cwd()}/${name}`.replace(/ /g, "\\ ")).join(" ")}\n`);
  return script.length;
}

try {
  await main(process.argv[2]);
} catch (error) {
  console.error(`bundle_charts: ${error.message}`);
  process.exit(1);
}
