// web/shared/api.ts from schema/openapi.yaml. As a program it writes the file; the lint compares.
import { writeFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import openapi, { astToString } from "openapi-typescript";
import { kOpenapi } from "../openapi.mjs";

export const kApiTypes = "web/shared/api.ts";

export async function apiTypes() {
  const types = await openapi(pathToFileURL(kOpenapi), { rootTypes: true, rootTypesNoSchemaPrefix: true });
  return `// Made from ${kOpenapi} by \`node tools/generate/api_types.mjs\`; change the page, not this file.\n${astToString(types)}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(kApiTypes, await apiTypes());
