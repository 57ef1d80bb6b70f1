// The server over real sockets: every route and refusal, the edge, slow and hostile clients, sync under trouble, logs,
// sign-in. Every answer that any of them gets is held against schema/openapi.yaml.
// LANEWORK_ONLY='pattern' runs the tests whose names fit; LANEWORK_TIMES=1: tools/suite/timed.mjs.
import { timed } from "../../tools/suite/timed.mjs";
import { calendarLinks } from "./calendar_links.mjs";
import { consents } from "./consent.mjs";
import { desk } from "./desk.mjs";
import { deskPaper } from "./desk_paper.mjs";
import { deskPeople } from "./desk_people.mjs";
import { Contract } from "./contract.mjs";
import { everyRoute } from "./every_route.mjs";
import { firstDays } from "./first_day.mjs";
import { framing } from "./framing.mjs";
import { input } from "./input.mjs";
import { injuryPapers } from "./injury_papers.mjs";
import { keptAside } from "./kept_aside.mjs";
import { logs } from "./logs.mjs";
import { planning } from "./planning.mjs";
import { scaleOut } from "./scale_out.mjs";
import { Demo, killAll } from "./server.mjs";
import { season } from "./season.mjs";
import { signIn } from "./sign_in.mjs";
import { slow } from "./slow.mjs";
import { storeRestarts } from "./store_restart.mjs";
import { syncing } from "./sync.mjs";
import { releases } from "./releases.mjs";
import { overTls } from "./tls.mjs";
import { unseen } from "./unseen.mjs";

// With the sanitizers only what goes by no clock.
const kUntimed = /^(routes|framing|tls|start|sync|consent|kept aside|input|logs|metrics): /;

const kTests = [...everyRoute, ...releases, ...season, ...injuryPapers, ...firstDays, ...framing, ...overTls, ...slow, ...syncing, ...consents, ...desk, ...deskPaper, ...calendarLinks, ...deskPeople, ...keptAside, ...input, ...logs, ...planning, ...scaleOut, ...storeRestarts, ...signIn];

async function resultOf(test, context) {
  let said;
  try {
    said = await timed(test.name, () => test.run(context));
  } catch (error) {
    said = error.stack;
  }
  const { detail, note } = typeof said === "string" ? { detail: said } : said;
  return { name: `serve: ${test.name}`, passed: detail === "", detail, note };
}

// Those that mostly wait for the server's own clock go on together; the others, which need the machine, one by one.
async function resultsOf(tests, context) {
  const results = new Map();
  const run = async (test) => {
    results.set(test, await resultOf(test, context));
  };
  await Promise.all(tests.filter((test) => test.waits).map(run));
  await killAll();
  for (const test of tests.filter((one) => !one.waits)) {
    await run(test);
    await killAll();
  }
  return tests.map((test) => results.get(test));
}

export const serve = {
  name: "serve",
  async run({ build, mode }) {
    const only = process.env.LANEWORK_ONLY;
    const wanted = only ? new RegExp(only) : mode === "sanitize" ? kUntimed : /./;
    const tests = kTests.filter((test) => wanted.test(test.name) && (only || mode === "long" || !test.long));
    const demo = await Demo.make(`${process.cwd()}/${build}/lanework`);
    const contract = new Contract();
    const results = [];
    try {
      results.push(...await resultsOf(tests, { demo, contract, long: mode === "long" }));
    } finally {
      await killAll();
      demo.remove();
    }
    const faults = [...contract.faults].map(([what, times]) => `${what} (${times})`);
    results.push({ name: `serve: ${contract.answers} answers are as schema/openapi.yaml has them`, passed: faults.length === 0 && contract.answers > 0, detail: faults.join("\n") });
    if (!only && mode !== "sanitize") results.push(...unseen(contract));
    return results;
  },
};
