// The figures that the phone is held to, seen in Chromium on the real app and the real server: how much a first load is, how soon one
// can tap, how long a change takes, what a frame and an hour cost. Plain: the size alone.
// usage: node tests/pitchside/figures.mjs [--quick]     as part of the suite: ./test --long figures
import { fileURLToPath } from "node:url";
import { Contract } from "../serve/contract.mjs";
import { Demo, killAll } from "../serve/server.mjs";
import { adapting, holdWorker } from "./adapting.mjs";
import { bytes, megabytes, milliseconds, table } from "./figure_table.mjs";
import { costOfFrames } from "./frames.mjs";
import { fullEvening, hourOfRun, openTonight, startTonight } from "./hour.mjs";
import { middle, openings } from "./loading.mjs";
import { overTheWire } from "./over_the_wire.mjs";
import { PairedApp } from "./paired_app.mjs";
import { removeAll } from "./phone.mjs";
import { kFast3G, Radio } from "./radio.mjs";

const kPicture = /\.(png|svg)$/;
const kSpreadFollowsMilliseconds = 120; // as screens/pitch.ts waits
const kGrowthBytes = 1_000_000; // from the tenth minute to the sixtieth; what V8 keeps of compiled code comes and goes by half of it

async function firstLoad(app) {
  const names = [...app.files.keys()].filter((name) => !kPicture.test(name));
  const rows = await Promise.all(names.map((name) => overTheWire(app.server.port, `/${name === "index.html" ? "" : name}`)));
  const size = rows.reduce((sum, row) => sum + row.size, 0);
  const most = [...rows].sort((a, b) => b.size - a.size).slice(0, 3).map((row) => `${row.path} ${bytes(row.size)} (${row.coding})`);
  return [{ figure: "first load, compressed, without pictures", aim: "≤ 300 kB", seen: bytes(size), met: size <= 300_000, more: most.join(", ") }];
}

async function loads(app, times) {
  const radio = app.between;
  const { phone, page } = await app.paired();
  await page.close();
  const out = [];
  const row = (figure, value, most, more) => out.push({ figure, aim: most ? `≤ ${most} ms` : "", seen: milliseconds(value), met: !most || value <= most, more });
  radio.set(kFast3G);
  radio.begin();
  const first = await openings(times, phone, radio.url, { slowdown: 4 });
  const listed = (seen) => (seen.entered ? `the code is asked for; evenings listed ${milliseconds(seen.list - seen.entered)} after it is entered` : "the evenings");
  row("cold, fast 3G, CPU 4×: the first screen can be tapped", first.first, 1500, listed(first));
  row("  a tap on tonight's evening as soon as it is there is answered", first.answered, undefined, `${milliseconds(first.answered - first.tapped)} after the tap`);
  row("  the plan is drawn", first.planned, undefined, `${bytes(radio.down.bytes / times)} came, with headers and pictures`);
  const stranger = await app.phone();
  const unpaired = await openings(times, stranger, radio.url, { slowdown: 4, until: "unpaired" });
  row("cold, fast 3G, CPU 4×: not paired, asks for the link", unpaired.unpaired, 1500);
  radio.set(undefined);
  const again = await openings(times, phone, radio.url, { keepShell: true, offline: true });
  row("again with no signal: the first screen can be tapped", again.first, 700, listed(again));
  row("  the tap answered", again.answered);
  const slow = await openings(times, phone, radio.url, { keepShell: true, offline: true, slowdown: 4 });
  row("  the first screen at CPU 4×", slow.first, undefined, listed(slow));
  await phone.remove();
  await stranger.remove();
  return out;
}

async function runs(app) {
  const { phone, page: list } = await app.paired();
  await list.close();
  await phone.context.addInitScript(holdWorker);
  const page = await phone.page(app.between.url);
  await openTonight(page);
  const change = await adapting(page);
  const kinds = Object.entries(change.kinds).map(([kind, value]) => `${kind} ${milliseconds(value)}`);
  const out = [{ figure: `a change planned in the worker, median of ${change.count}`, aim: "≤ 20 ms", seen: milliseconds(change.median), met: change.median <= 20 && change.wrong === 0,
    more: `${kinds.join(", ")}; nine in ten ${milliseconds(change.ninth)}, worst ${milliseconds(change.worst)}${change.wrong ? `; ${change.wrong} got no plan` : ""}` },
    { figure: "  its spread follows, simulated", aim: "≤ 300 ms", seen: milliseconds(kSpreadFollowsMilliseconds + change.spread_follows), met: kSpreadFollowsMilliseconds + change.spread_follows <= 300, more: "the app's pause in it" }];
  await page.reload();
  await startTonight(page);
  await page.waitForSelector(".figure svg");
  const frames = await costOfFrames(phone, page, { slowdown: 4, seconds: 6 });
  out.push({ figure: "main thread a frame on Run, CPU 4×, mean", aim: "≤ 8 ms", seen: milliseconds(frames.mean), met: frames.mean <= 8 && frames.count > 60,
    more: `${frames.count} frames, ${frames.aSecond.toFixed(0)} a second; median ${milliseconds(frames.median)}, one in twenty above ${milliseconds(frames.nineteenth)}` });
  await phone.remove();
  return out;
}

async function holds(app, withHour) {
  const evening = await app.paired();
  await evening.page.close();
  const { drills, most } = await fullEvening(evening.phone, app.between.url);
  await evening.phone.remove();
  const parts = ({ page, worker, wasm }) => `page ${megabytes(page)}, worker ${megabytes(worker)}, module ${megabytes(wasm)}`;
  const out = [{ figure: `held in a full evening, ${drills} drills`, aim: "≤ 60 MB", seen: megabytes(most.all), met: most.all <= 60e6 && drills > 5, more: parts(most) }];
  if (!withHour) return out;
  const other = await app.paired();
  await other.page.close();
  const { seen, there } = await hourOfRun(other.phone, app.between.url);
  const early = middle(seen.filter(({ minute }) => minute >= 10 && minute <= 20).map(({ all }) => all));
  const late = middle(seen.filter(({ minute }) => minute >= 50).map(({ all }) => all));
  out.push({ figure: "growth in an hour of Run (a driven clock)", aim: "none", seen: megabytes(late - early), met: late - early <= kGrowthBytes && there, more: seen.map(({ all }) => (all / 1e6).toFixed(1)).join(" ") });
  await other.phone.remove();
  return out;
}

async function rowsOf({ build, wasm, long, quick }) {
  const demo = await Demo.make(`${process.cwd()}/${build}/lanework`);
  const app = await PairedApp.open({ demo, contract: new Contract(), wasm }, (server) => Radio.open(server.port));
  try {
    const rows = await firstLoad(app);
    if (long) rows.push(...await loads(app, quick ? 3 : 5), ...await runs(app), ...await holds(app, !quick));
    return rows;
  } finally {
    await app.end();
    await removeAll();
    await killAll();
    demo.remove();
  }
}

export const figures = {
  name: "figures",
  async run({ build, wasm, mode }) {
    const rows = await rowsOf({ build, wasm, long: mode === "long" });
    if (mode === "long") console.log(table(rows));
    return rows.map((row) => ({ name: `figures: ${row.figure.trim()}`, passed: row.met, detail: `${row.seen}, not ${row.aim}; ${row.more}`, note: mode === "long" ? undefined : row.seen }));
  },
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const rows = await rowsOf({ build: "build/test", wasm: "build/wasm/lanework.wasm", long: true, quick: process.argv.includes("--quick") });
  console.log(table(rows));
  process.exit(rows.every(({ met }) => met) ? 0 : 1);
}
