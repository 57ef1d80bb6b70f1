// Makes one C++ file of what the shipped drills are called in Spanish, for reports: their rendering is the screens' file.
// usage: node tools/bundle_drill_names.mjs OUT.cpp
import { readFileSync, writeFileSync } from "node:fs";

const kRendering = "web/shared/words/catalogue_es.json";

const quoted = (text) => `"${text.replace(/[\\"]/g, "\\$&")}"`;

function main(out) {
  const drills = Object.entries(JSON.parse(readFileSync(kRendering, "utf8")));
  const rows = drills.map(([drill, { name }]) => `      {${quoted(drill)}, ${quoted(name)}},`);
  writeFileSync(out, `// Made by tools/bundle_drill_names.mjs from ${kRendering}.
#include "app/cli/evidence/spanish_drill_names.h"

namespace lanework::cli {

const std::map<std::string, std::string>& spanish_drill_names() {
  static const std::map<std::string, std::string> kNames = {
${rows.join("\n")}
  };
  return kNames;
}

}  // namespace lanework::cli
`);
}

main(process.argv[2]);
