// Ten minutes of one drill with a metronome, on the real app at its own pace: every tone is written down as it is set on the audio clock, and
// held against the drill's clock, which is the wall's. Nothing is heard here: what a phone's loudspeaker adds is its own.
// usage: node tests/pitchside/soak.mjs [MINUTES]     as part of the suite: ./test --long soak
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Contract } from "../serve/contract.mjs";
import { Demo, killAll } from "../serve/server.mjs";
import { openHeap, watchMemory } from "./heap.mjs";
import { startTonight, tap } from "./hour.mjs";
import { PairedApp } from "./paired_app.mjs";
import { removeAll } from "./phone.mjs";
import { Way } from "./way.mjs";

const kMinutes = 10;
const kMostDriftMilliseconds = 50;
const kTempoSeconds = Number(/^tempo_seconds = (\S+)/m.exec(readFileSync("catalogue/drills/squat.toml", "utf8"))[1]);
const kTellSeconds = 5; // at least; what the plan gives beyond the repetitions
const kHertz = { begin: 880, end: 440, beat: 1320, soon: 660 }; // as web/pitchside/screens/sound.ts has them

// In the page before anything of the app. No squat lasts ten minutes: the plan's is made so long on its way from the worker.
function prepare(amount) {
  const { set } = Object.getOwnPropertyDescriptor(Worker.prototype, "onmessage");
  const longer = (text) => {
    const plan = JSON.parse(text);
    const squat = plan.items?.find(({ drill }) => drill === "squat");
    if (squat) Object.assign(squat, { amount, sets: 1, takes_seconds: 0 });
    return JSON.stringify(plan);
  };
  Object.defineProperty(Worker.prototype, "onmessage", {
    set(hear) {
      set.call(this, (event) => hear(event.data?.answer?.startsWith('{"answer":"plan"') ? new MessageEvent("message", { data: { ...event.data, answer: longer(event.data.answer) } }) : event));
    },
  });
  const tones = (window.tones = []);
  const kept = new WeakMap();
  const { start, disconnect } = OscillatorNode.prototype;
  OscillatorNode.prototype.start = function (at) {
    window.audio = this.context;
    const tone = { hertz: this.frequency.value, at, ahead: at - this.context.currentTime };
    tones.push(tone);
    kept.set(this, tone);
    return start.call(this, at);
  };
  const off = AudioNode.prototype.disconnect;
  OscillatorNode.prototype.disconnect = function (...words) {
    const tone = kept.get(this);
    if (tone && this.context.currentTime < tone.at) tone.taken_back = true;
    return (disconnect ?? off).apply(this, words);
  };
  window.clocks = []; // the two clocks side by side, the whole time
  setInterval(() => window.audio && window.clocks.push({ wall: Date.now() / 1000, audio: window.audio.currentTime }), 200);
  addEventListener("click", () => (window.tapped = Date.now() / 1000), { capture: true });
}

function expectedSounds(amount) {
  const beats = Array.from({ length: amount - 1 }, (_, index) => ({ sound: "beat", at: kTellSeconds + (index + 1) * kTempoSeconds }));
  const before = [3, 2, 1].map((seconds) => ({ sound: "soon", at: kTellSeconds - seconds }));
  return [...before, { sound: "begin", at: kTellSeconds }, ...beats, { sound: "end", at: kTellSeconds + amount * kTempoSeconds }];
}

const middle = (numbers) => [...numbers].sort((a, b) => a - b)[numbers.length >> 1];

// By what the wall's clock is ahead of the audio clock at that second: the median of the looks around it, since each is off by a block.
function wallAt(clocks, audio) {
  const near = clocks.filter((one) => Math.abs(one.audio - audio) < 3);
  return near.length > 0 ? audio + middle(near.map((one) => one.wall - one.audio)) : NaN;
}

// How far each sound that was to be heard is from its time, in milliseconds; what was not set is dropped.
export function judged({ tones, clocks, began, amount }) {
  const heard = tones.filter(({ taken_back }) => !taken_back).map((tone) => ({ ...tone, wall: wallAt(clocks, tone.at) }));
  const off = [];
  let dropped = 0;
  for (const { sound, at } of expectedSounds(amount)) {
    const gaps = heard.filter(({ hertz }) => hertz === kHertz[sound]).map(({ wall }) => (wall - began - at) * 1000);
    const gap = gaps.sort((a, b) => Math.abs(a) - Math.abs(b))[0];
    if (gap === undefined || Number.isNaN(gap) || Math.abs(gap) > 1000) dropped += 1;
    else off.push(gap);
  }
  const worst = off.reduce((one, other) => (Math.abs(other) > Math.abs(one) ? other : one), 0);
  const late = heard.filter(({ ahead }) => ahead < 0).length;
  return { expected: off.length + dropped, dropped, more: heard.length - off.length, late, worst, first: middle(off.slice(0, 20)), last: middle(off.slice(-20)) };
}

async function soaked(context, minutes) {
  const amount = Math.round((minutes * 60) / kTempoSeconds);
  const app = await PairedApp.open(context, (server) => Way.open(server));
  try {
    const { phone, page: list } = await app.paired();
    await list.close();
    const page = await phone.page("about:blank");
    await page.addInitScript(prepare, amount);
    await watchMemory(page);
    await page.goto(app.between.url);
    await startTonight(page);
    const heading = () => page.textContent("h1");
    const before = [];
    while (!/squat/i.test((await heading()) ?? "") && before.length < 20) {
      before.push(await heading());
      await page.waitForTimeout(1000);
      await tap(page, "Skip");
      await page.waitForFunction((old) => document.querySelector("h1")?.textContent !== old, before.at(-1));
    }
    if (before.length === 20) throw new Error(`no squat tonight: ${before}`);
    const began = await page.evaluate(() => window.tapped);
    const heap = await openHeap(phone, page);
    const seconds = kTellSeconds + amount * kTempoSeconds + 5;
    const held = [];
    for (let part = 1; part <= 10; part++) {
      await page.waitForTimeout(Math.max(0, (began + (seconds * part) / 10) * 1000 - Date.now()));
      held.push((await heap.look()).all / 1e6);
    }
    const { tones, clocks } = await page.evaluate(() => ({ tones: window.tones, clocks: window.clocks }));
    const ours = tones.filter(({ at }) => wallAt(clocks, at) >= began);
    return { ...judged({ tones: ours, clocks, began, amount }), held, still: /squat/i.test(await heading()) };
  } finally {
    await app.end();
  }
}

async function resultOf({ build, wasm, minutes }) {
  const demo = await Demo.make(`${process.cwd()}/${build}/lanework`);
  try {
    const seen = await soaked({ demo, contract: new Contract(), wasm }, minutes);
    const note = `${minutes} min, ${seen.expected} sounds, ${seen.dropped} dropped, ${seen.more} too many, the worst ${seen.worst.toFixed(1)} ms off (median at the beginning ${seen.first.toFixed(1)}, at the end ${seen.last.toFixed(1)} ms); held ${seen.held.map((one) => one.toFixed(1)).join(" ")} MB`;
    const passed = seen.still && seen.dropped === 0 && seen.more === 0 && Math.abs(seen.worst) <= kMostDriftMilliseconds;
    return { name: "soak: the metronome keeps time and drops nothing", passed, detail: note, note };
  } finally {
    await removeAll();
    await killAll();
    demo.remove();
  }
}

export const soak = {
  name: "soak",
  async run({ build, wasm }) {
    return [await resultOf({ build, wasm, minutes: kMinutes })];
  },
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const result = await resultOf({ build: "build/test", wasm: "build/wasm/lanework.wasm", minutes: Number(process.argv[2] ?? kMinutes) });
  console.log(`${result.passed ? "passed" : "FAILED"}: ${result.detail}`);
  process.exit(result.passed ? 0 : 1);
}
