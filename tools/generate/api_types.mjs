// web/shared/api.ts and web/shared/api_places.ts from schema/openapi.yaml. As a program it writes them; the lint compares.
import { writeFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import openapi, { astToString } from "openapi-typescript";
import { kOpenapi, operations, readOpenapi } from "../openapi.mjs";

const kMade = `// Made from ${kOpenapi} by \`node tools/generate/api_types.mjs\`; change the page, not this file.\n`;

async function types() {
  return kMade + astToString(await openapi(pathToFileURL(kOpenapi), { rootTypes: true, rootTypesNoSchemaPrefix: true }));
}

// What types cannot say to a program that runs: how each is asked, and where, with its query as RFC 6570 writes it.
function places() {
  const queried = (parameters) => parameters.filter((one) => one.in === "query").map((one) => one.name).join();
  const rows = operations(readOpenapi()).map(({ name, method, path, parameters }) => {
    const query = queried(parameters);
    return `  ${JSON.stringify(name)}: [${JSON.stringify(method)}, ${JSON.stringify(query === "" ? path : `${path}{?${query}}`)}],`;
  });
  return `${kMade}import type { operations } from "./api.ts";\n\nexport const apiPlaces: Record<keyof operations, readonly ["GET" | "POST", string]> = {\n${rows.join("\n")}\n};\n`;
}

// [[path, text]]
export async function apiFiles() {
  return [["web/shared/api.ts", await types()], ["web/shared/api_places.ts", places()]];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) for (const [path, text] of await apiFiles()) writeFileSync(path, text);
