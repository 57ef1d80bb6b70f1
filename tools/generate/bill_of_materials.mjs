// What a built program is made of, as a CycloneDX 1.5 document: the Debian packages that it is built from and linked to, each
// in the version that is installed here, and the npm packages in its report pages.
// usage: node tools/generate/bill_of_materials.mjs [PROGRAM] >bill-of-materials.json
import { spawnSync } from "node:child_process";
import { readFileSync, realpathSync } from "node:fs";

const kBundled = ["@observablehq/plot", "d3", "@fontsource/b612"];

function said(command, ...words) {
  const done = spawnSync(command, words, { encoding: "utf8" });
  if (done.status !== 0) throw new Error(`${command} ${words.join(" ")}: ${done.stderr || done.error}`);
  return done.stdout;
}

export const librariesOf = (program) => [...said("ldd", program).matchAll(/=> (\/\S+)/g)].map(([, path]) => path);

// A library's path as a package has it; /lib may be a link to /usr/lib.
function packageOf(path) {
  for (const candidate of [path, realpathSync(path), path.replace(/^\/usr/, ""), realpathSync(path).replace(/^\/usr/, "")]) {
    const found = spawnSync("dpkg", ["-S", candidate], { encoding: "utf8" });
    if (found.status === 0) return found.stdout.split(/[:,]/)[0];
  }
  throw new Error(`${path} is of no package`);
}

function debianComponents(program) {
  const built = said("bash", "-c", 'source tools/setup.sh; echo "${program_packages[@]}"').trim().split(/\s+/).filter((name) => name.endsWith("-dev") || name.startsWith("fonts-") || name.endsWith("-data"));
  const linked = program ? librariesOf(program).map(packageOf) : [];
  return [...new Set([...built, ...linked])].sort().map((name) => {
    const version = said("dpkg-query", "-W", "-f=${Version}\n", name).split("\n")[0];
    return { type: "library", name, version, purl: `pkg:deb/debian/${name}@${encodeURIComponent(version)}?distro=debian-12` };
  });
}

function npmComponents() {
  const { packages } = JSON.parse(readFileSync("package-lock.json", "utf8"));
  const found = new Set();
  const add = (name) => {
    if (found.has(name)) return;
    found.add(name);
    for (const next of Object.keys(packages[`node_modules/${name}`]?.dependencies ?? {})) add(next);
  };
  kBundled.forEach(add);
  return [...found].sort().map((name) => {
    const { version, integrity } = packages[`node_modules/${name}`];
    const hash = /^sha512-(.+)$/.exec(integrity);
    return {
      type: "library", name, version, purl: `pkg:npm/${name.replace("@", "%40")}@${version}`,
      ...(hash ? { hashes: [{ alg: "SHA-512", content: Buffer.from(hash[1], "base64").toString("hex") }] } : {}),
    };
  });
}

export function billOfMaterials(program) {
  return {
    bomFormat: "CycloneDX",
    specVersion: "1.5",
    version: 1,
    metadata: { component: { type: "application", name: "lanework", licenses: [{ license: { id: "Apache-2.0" } }] } },
    components: [...debianComponents(program), ...npmComponents()],
  };
}

if (process.argv[1]?.endsWith("bill_of_materials.mjs")) console.log(JSON.stringify(billOfMaterials(process.argv[2]), null, 2));
