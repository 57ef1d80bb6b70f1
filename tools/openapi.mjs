// schema/openapi.yaml as it stands, and the routes of catalogue/access/matrix.toml, for whoever holds the two together.
import { existsSync, readFileSync } from "node:fs";
import { parseDocument } from "yaml";

export const kOpenapi = "schema/openapi.yaml";
export const kMatrix = "catalogue/access/matrix.toml";

export function readOpenapi() {
  if (!existsSync(kOpenapi)) return { openapi: "3.1.0", paths: {}, components: {} };
  const document = parseDocument(readFileSync(kOpenapi, "utf8"), { uniqueKeys: true });
  if (document.errors.length > 0) throw document.errors[0];
  return document.toJS();
}

// What a '$ref' of the page itself means.
export function resolved(page, node) {
  if (node?.$ref === undefined) return node;
  return resolved(page, node.$ref.slice(2).split("/").reduce((at, key) => at[key.replaceAll("~1", "/").replaceAll("~0", "~")], page));
}

// [{name, method, path, operation}], in the page's order.
export function operations(page) {
  return Object.entries(page.paths).flatMap(([path, item]) => ["get", "post"].filter((method) => item[method]).map((method) => ({
    name: item[method].operationId, method: method.toUpperCase(), path, operation: item[method],
    parameters: [...item.parameters ?? [], ...item[method].parameters ?? []].map((one) => resolved(page, one)),
  })));
}

// Of the [[route]] tables: every value is one word in quotes, true or a list of words; anything else is a fault.
export function matrixRoutes() {
  if (!existsSync(kMatrix)) return [];
  const routes = [];
  let table;
  for (const line of readFileSync(kMatrix, "utf8").split("\n").map((one) => one.replace(/\s+#.*$/, "").trim())) {
    if (line === "" || line.startsWith("#")) continue;
    if (line.startsWith("[")) {
      table = line === "[[route]]" ? {} : undefined;
      if (table) routes.push(table);
    } else if (table) {
      const found = /^(\w+) = ("[^"]*"|true|false|\[.*\])$/.exec(line);
      if (!found) throw new Error(`${kMatrix}: cannot read '${line}'`);
      table[found[1]] = JSON.parse(found[2]);
    }
  }
  return routes;
}
