// The bill of materials names what the built program is really linked to, and what its pages carry.
import { billOfMaterials, librariesOf } from "../../tools/generate/bill_of_materials.mjs";

// A few of the libraries by their own names, in the packages that Debian 12 has them in.
const kPackages = { "libsodium.so": /^libsodium/, "libsqlite3.so": /^libsqlite3/, "libpq.so": /^libpq5/, "libssl.so": /^libssl3/, "libcairo.so": /^libcairo2/, "libc.so": /^libc6/ };

function everything(program) {
  const { bomFormat, specVersion, components } = billOfMaterials(program);
  const named = (pattern) => components.find(({ name }) => pattern.test(name) && !name.endsWith("-dev"));
  const libraries = librariesOf(program);
  const wrong = Object.entries(kPackages).filter(([library, pattern]) => !libraries.some((path) => path.includes(library)) || !named(pattern)).map(([library]) => library);
  const bare = components.filter(({ name, version, purl }) => !name || !version || !purl?.startsWith("pkg:")).map(({ name }) => name);
  const twice = components.length - new Set(components.map(({ purl }) => purl)).size;
  const pages = ["d3", "@observablehq/plot", "d3-array"].filter((name) => !components.some((one) => one.name === name && one.hashes?.[0].content.length === 128));
  if (bomFormat !== "CycloneDX" || specVersion !== "1.5") return `${bomFormat} ${specVersion}`;
  return [wrong.length && `not named: ${wrong}`, bare.length && `without a version: ${bare}`, twice && `${twice} twice`, pages.length && `not in the pages: ${pages}`].filter(Boolean).join("; ");
}

export const billsOfMaterials = [{ name: "the bill of materials has every library that the program is linked to", run: everything }];
