// schema/openapi.yaml describes the routes of catalogue/access/matrix.toml, all of them and no other: the same names,
// methods and paths, who shows what, and the refusals that follow from it.
import { matrixRoutes, operations, readOpenapi, resolved } from "../openapi.mjs";

const kSecurity = { nobody: [], browser: [{ session: [] }], device: [{ device: [] }], "this-machine": [] };
const kRoles = ["lead", "coach", "recorder", "board", "operator"];

// The keys of errors that the table makes possible, by status.
function refusals(route) {
  const out = {};
  const add = (status, key) => (out[status] ??= []).push(key);
  const browser = route.by === "browser";
  if (route.method === "POST") {
    add(415, "not-json");
    add(403, "not-from-here");
    add(400, "not-understood");
  }
  if (browser || route.by === "device") add(401, "sign-in-needed");
  if (route.by === "device") add(401, "revoked");
  if (browser && !route.before_second_factor) add(403, "second-factor-needed");
  if (browser && route.step_up) add(403, "step-up-needed");
  if (kRoles.some((role) => route[role] === "no")) add(403, "not-your-role");
  if (route.about === "squad" || route.by === "this-machine") add(404, "not-found");
  return out;
}

function errorsOf(page, response) {
  const schema = resolved(page, resolved(page, response)?.content?.["application/json"]?.schema);
  return resolved(page, schema?.properties?.error)?.enum ?? [];
}

function faultsOf(page, route, described) {
  const faults = [];
  const { operation, parameters } = described;
  const say = (what) => faults.push(`${route.name}: ${what}`);
  if (described.method !== route.method || described.path !== route.path) say(`${described.method} ${described.path}, in the matrix ${route.method} ${route.path}`);
  if (JSON.stringify(operation.security) !== JSON.stringify(kSecurity[route.by])) say(`another way to say who calls than by = "${route.by}"`);
  if ((operation["x-only-from"] === "this-machine") !== (route.by === "this-machine")) say("x-only-from and by differ");
  if (parameters.some(({ name }) => name === "Lanework-Request") !== (route.method === "POST")) say("Lanework-Request goes with POST, and only with it");
  if ((operation.requestBody !== undefined) !== (route.method === "POST")) say("a body goes with POST, and only with it");
  const places = [...route.path.matchAll(/\{(\w+)\}/g)].map((found) => found[1]);
  const described_places = parameters.filter((one) => one.in === "path").map((one) => one.name);
  if (places.join() !== described_places.join()) say(`places ${described_places}, in the matrix ${places}`);
  for (const [status, keys] of Object.entries(refusals(route))) {
    const there = errorsOf(page, operation.responses[status]);
    for (const key of keys.filter((one) => !there.includes(one))) say(`${status} ${key} is not described`);
  }
  // And none that the table rules out.
  const possible = refusals(route);
  for (const [status, key] of [[401, "sign-in-needed"], [401, "revoked"], [403, "not-from-here"], [403, "second-factor-needed"], [403, "not-your-role"], [415, "not-json"]]) {
    if (errorsOf(page, operation.responses[status]).includes(key) && !possible[status]?.includes(key)) say(`${status} ${key} cannot be`);
  }
  return faults;
}

export default {
  name: "lint-routes",
  run() {
    const page = readOpenapi();
    const described = new Map(operations(page).map((one) => [one.name, one]));
    const faults = [];
    for (const route of matrixRoutes()) {
      if (described.has(route.name)) faults.push(...faultsOf(page, route, described.get(route.name)));
      else faults.push(`${route.name}: in the matrix, not in schema/openapi.yaml`);
      described.delete(route.name);
    }
    for (const name of described.keys()) faults.push(`${name}: in schema/openapi.yaml, not in the matrix`);
    const used = JSON.stringify(page);
    for (const [group, parts] of Object.entries(page.components ?? {})) {
      if (group === "securitySchemes") continue;
      for (const name of Object.keys(parts)) {
        if (!used.includes(`"#/components/${group}/${name}"`)) faults.push(`components/${group}/${name}: used nowhere`);
      }
    }
    return faults;
  },
};
