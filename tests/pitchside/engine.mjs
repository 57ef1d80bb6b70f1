// The engine in a browser: the real door in a real worker, the newest question wins, a broken door is told.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { chromium } from "playwright-core";
import { serveDevPage } from "./dev_server.mjs";
import { program, wasmModule } from "./places.mjs";
import { samplePackage } from "./sample_package.mjs";
import { loadTypescript } from "./typescript.mjs";

const { openEvening } = await loadTypescript("evening/open_evening.ts");
const { requestFor } = await loadTypescript("evening/request.ts");
const pack = samplePackage(program());
const fresh = openEvening(pack, pack.evenings[0]);
const planFor = (facts) => requestFor("plan", pack, { ...fresh, facts: { ...fresh.facts, ...facts } });

const server = await serveDevPage(pack, wasmModule());
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium" });
const page = await browser.newPage();
await page.goto(server.url);
await page.evaluate(async () => {
  const { openEngine } = await import("/engine.js");
  window.openEngine = openEngine;
  window.engine = openEngine({ worker: "/worker.js", door: "/lanework.wasm" });
});
after(async () => {
  await browser.close();
  server.close();
});

test("plan, slip and figure are answered, each for itself", async () => {
  const answers = await page.evaluate(
    (requests) => Promise.all(requests.map((request) => window.engine.ask(request))),
    [planFor({}), requestFor("slip", pack, fresh), { request: "figure", drill: pack.catalogue.drills[0], rung: "steady", frames: 4 }],
  );
  assert.deepEqual(answers.slice(0, 2).map((each) => each.answer), ["plan", "slip"]);
  assert.ok(["figure", "faults"].includes(answers[2].answer)); // an older door knows no figures
});

test("the catalogue is held in the worker, and a new one takes its place", async () => {
  const plan = planFor({});
  const { first, again, broken, back } = await page.evaluate(
    async (plan) => ({
      first: await window.engine.ask(plan),
      again: await window.engine.ask({ ...plan, spread: "formula" }),
      broken: await window.engine.ask({ ...plan, catalogue: { ...plan.catalogue, drills: "none" } }),
      back: await window.engine.ask(plan),
    }),
    plan,
  );
  assert.equal(first.answer, "plan");
  assert.equal(first.time.spread, undefined);
  assert.deepEqual([again.time.spread, again.items], ["formula", first.items]);
  assert.equal(broken.answer, "faults");
  assert.match(broken.faults[0].sentence, /catalogue\.drills/);
  assert.deepEqual(back, first);
});

test("of questions that wait the newest of a kind wins", async () => {
  const answers = await page.evaluate(
    (requests) => Promise.all(requests.map((request) => window.engine.ask(request))),
    [10, 11, 12, 13].map((turnout) => planFor({ turnout })),
  );
  assert.deepEqual(answers.map((each) => each.answer), ["plan", "dropped", "dropped", "plan"]);
  assert.equal(answers[3].turnout, 13);
});

test("a question that runs for over two seconds gives way to a newer one", async () => {
  // The worst question that the phone can ask is quick, so here a worker stands that answers nothing at first.
  const slow = await page.evaluate(async (request) => {
    const stuck = `let asked = 0; self.onmessage = ({ data }) => {
      if (data.door) self.postMessage({ ready: true });
      else if (data.hold) return;
      else if (data.request.includes('"turnout":9')) for (;;) asked += 1;
      else self.postMessage({ number: data.number, answer: '{"answer":"plan","newer":true}' });
    };`;
    const worker = URL.createObjectURL(new Blob([stuck], { type: "text/javascript" }));
    const engine = window.openEngine({ worker, door: "/lanework.wasm" });
    const began = performance.now();
    const older = engine.ask({ ...request, squad: { ...request.squad, tonight: { turnout: 9 } } });
    await new Promise((running) => setTimeout(running, 400));
    const newer = engine.ask({ ...request, squad: { ...request.squad, tonight: { turnout: 8 } } });
    const answers = await Promise.all([older, newer]);
    engine.close();
    return { answers, seconds: (performance.now() - began) / 1000 };
  }, planFor({}));
  assert.deepEqual(slow.answers, [{ answer: "dropped" }, { answer: "plan", newer: true }]);
  assert.ok(slow.seconds >= 1.9 && slow.seconds < 5, `${slow.seconds} s`);
});

test("a door that cannot be had is told, and had again later", async () => {
  let missing = true;
  await page.route("**/late.wasm", (route) => (missing ? route.fulfill({ status: 503 }) : route.fulfill({ path: wasmModule() })));
  const first = await page.evaluate((request) => {
    window.late = window.openEngine({ worker: "/worker.js", door: "/late.wasm" });
    return window.late.ask(request);
  }, planFor({}));
  assert.equal(first.answer, "broken");
  missing = false;
  const second = await page.evaluate((request) => window.late.ask(request), planFor({}));
  assert.equal(second.answer, "plan");
});
