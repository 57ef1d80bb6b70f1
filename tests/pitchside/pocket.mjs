// The coach's phone in Chromium against the real server: what it keeps, how it sends, how it is paired, its shell.
// LANEWORK_ONLY='pattern' runs the tests whose names fit, those of the long run too.
import { rmSync } from "node:fs";
import { timed } from "../../tools/suite/timed.mjs";
import { Contract } from "../serve/contract.mjs";
import { Demo, killAll } from "../serve/server.mjs";
import { onAnyDay } from "./any_day.mjs";
import { changedCode } from "./changed_code.mjs";
import { formsInApp } from "./forms_in_app.mjs";
import { kept } from "./kept.mjs";
import { locks } from "./locks.mjs";
import { harnessFolder } from "./paired.mjs";
import { olderForm } from "./older_form.mjs";
import { pairs } from "./pairs.mjs";
import { removeAll } from "./phone.mjs";
import { sent } from "./sent.mjs";
import { shell } from "./shell.mjs";
import { spanishOffline } from "./spanish_offline.mjs";
import { staleApp } from "./stale_app.mjs";
import { twoPhones } from "./two_phones.mjs";
import { wholeEvening } from "./whole_evening.mjs";

const kTests = [
  ...kept, ...locks, ...olderForm, ...sent, ...pairs, ...shell, ...wholeEvening, ...spanishOffline, ...twoPhones, ...staleApp, ...changedCode, ...formsInApp, ...onAnyDay,
];

async function resultOf(test, context) {
  let said;
  try {
    said = await timed(test.name, () => test.run(context));
  } catch (error) {
    said = error.stack;
  }
  await removeAll();
  await killAll();
  const { detail, note } = typeof said === "string" ? { detail: said } : said;
  return { name: `pocket: ${test.name}`, passed: detail === "", detail, note };
}

export const pocket = {
  name: "pocket",
  async run({ build, wasm, mode, program = `${process.cwd()}/${build}/lanework` }) {
    const only = process.env.LANEWORK_ONLY;
    const tests = kTests.filter((test) => (mode === "long" || !test.long) && (!only || new RegExp(only).test(test.name)));
    const demo = await Demo.make(program);
    demo.web = await harnessFolder();
    const contract = new Contract();
    const results = [];
    try {
      for (const test of tests) results.push(await resultOf(test, { demo, contract, web: demo.web, build, wasm, long: mode === "long" }));
    } finally {
      rmSync(demo.web, { recursive: true, force: true });
      demo.remove();
    }
    const faults = [...contract.faults].map(([what, times]) => `${what} (${times})`);
    results.push({ name: "pocket: what the server answered is as schema/openapi.yaml has it", passed: faults.length === 0, detail: faults.join("\n") });
    return results;
  },
};
