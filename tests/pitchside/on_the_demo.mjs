// A whole evening (walk.mjs) on what ./run serves, with a picture of each screen; the club has one evening more after it.
// usage: node tests/pitchside/on_the_demo.mjs DEMO.ENV [--server http://127.0.0.1:8765] [--pictures out/phone-evening]
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { kDay } from "../serve/expect.mjs";
import { People } from "../serve/people.mjs";
import { walk } from "./walk.mjs";
import { Way } from "./way.mjs";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { server: { type: "string", default: "http://127.0.0.1:8765" }, pictures: { type: "string", default: "out/phone-evening" } },
});
if (positionals.length !== 1) {
  console.error("usage: node tests/pitchside/on_the_demo.mjs DEMO.ENV [--server URL] [--pictures FOLDER]");
  process.exit(2);
}
const secrets = Object.fromEntries([...readFileSync(positionals[0], "utf8").matchAll(/^([A-Z_]+)=(.*)$/gm)].map(([, name, value]) => [name, value]));
const server = { port: Number(new URL(values.server).port) };
mkdirSync(values.pictures, { recursive: true });
const way = await Way.open(server);
const lead = await new People({ secrets }, server, undefined).signIn("lead");
let pictures = 0;
const picture = (page, name) => page.screenshot({ path: join(values.pictures, `${String(++pictures).padStart(2, "0")}-${name}.png`) });
const wrong = await walk({ way, lead, day: kDay, squad: { id: "u13-kestrels", word: "Kestrels" }, picture });
way.close();
for (const line of wrong) console.error(line);
console.log(wrong.length === 0 ? `the evening is with the club; ${pictures} pictures in ${values.pictures}` : "the evening went wrong");
process.exit(wrong.length === 0 ? 0 : 1);
