// What a frame costs the main thread, from a trace of Chromium: the top tasks of the page's main thread between one frame's beginning and
// the next one's, summed.
import { middle } from "./loading.mjs";

const kCategories = ["devtools.timeline", "disabled-by-default-devtools.timeline", "toplevel", "blink.user_timing", "__metadata"];

async function traced(browserWire, work) {
  const events = [];
  const take = ({ value }) => events.push(...value);
  browserWire.on("Tracing.dataCollected", take);
  await browserWire.send("Tracing.start", { transferMode: "ReportEvents", traceConfig: { includedCategories: kCategories } });
  await work();
  const over = new Promise((done) => browserWire.once("Tracing.tracingComplete", done));
  await browserWire.send("Tracing.end");
  await over;
  browserWire.off("Tracing.dataCollected", take);
  return events;
}

// The thread that ran our frames: the one with most of them.
function threadOf(frames) {
  const counts = new Map();
  for (const { pid, tid } of frames) counts.set(`${pid} ${tid}`, (counts.get(`${pid} ${tid}`) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

// Milliseconds of each frame, and how many there were a second.
export function framesIn(events) {
  const fired = events.filter(({ name, ph }) => name === "FireAnimationFrame" && (ph === "X" || ph === "B"));
  const thread = threadOf(fired);
  const on = ({ pid, tid }) => `${pid} ${tid}` === thread;
  const begins = fired.filter(on).map(({ ts }) => ts).sort((a, b) => a - b);
  const tasks = events.filter((one) => one.ph === "X" && /RunTask$/.test(one.name) && on(one)).sort((a, b) => a.ts - b.ts);
  const top = [];
  for (const task of tasks) if (top.length === 0 || task.ts >= top.at(-1).ts + top.at(-1).dur) top.push(task);
  const frames = begins.slice(0, -1).map(() => 0);
  for (const { ts, dur } of top) {
    // A frame's callbacks run inside a task that begins a little before them.
    const at = begins.findIndex((begin, index) => index < frames.length && ts + dur > begin && ts < begins[index + 1] && ts + dur <= begins[index + 1] + dur);
    if (at >= 0) frames[at] += dur / 1000;
  }
  const seconds = (begins.at(-1) - begins[0]) / 1e6;
  return { frames, seconds, tasks: top, begins };
}

export async function costOfFrames(phone, page, { slowdown, seconds }) {
  const wire = await phone.context.newCDPSession(page);
  await wire.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
  const events = await traced(wire, () => page.waitForTimeout(seconds * 1000));
  await wire.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const { frames, seconds: seen } = framesIn(events);
  const sorted = [...frames].sort((a, b) => a - b);
  return {
    count: frames.length, mean: frames.reduce((sum, one) => sum + one, 0) / frames.length, median: middle(frames),
    nineteenth: sorted[Math.floor(sorted.length * 0.95)], worst: sorted.at(-1), aSecond: frames.length / seen, events,
  };
}
