// The figures that the desk is held to, seen in Chromium on the real server with 100 squads and five seasons: how soon each
// screen can be used, whether anything jumps, how soon a dragged drill has its new picture, and what a first screen weighs.
// usage: node tests/desk/figures.mjs [--quick] [--house FOLDER]     as part of the suite: ./test --long desk-figures
// --house: the club is made there once and kept for the next run.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { bundleDesk } from "../../tools/bundle_desk.mjs";
import { bytes, milliseconds, table } from "../pitchside/figure_table.mjs";
import { middle } from "../pitchside/loading.mjs";
import { overTheWire } from "../pitchside/over_the_wire.mjs";
import { killAll } from "../serve/server.mjs";
import { BigHouse } from "./big/house.mjs";
import { dragged } from "./dragged.mjs";
import { kUsual } from "./harness.mjs";
import { openingOf } from "./opening.mjs";

const kUsableMilliseconds = 1000;
const kReplannedMilliseconds = 300;
const kFirstBytes = 350_000;
const kMovedAtMost = 0.0001; // a date that comes into its empty field is a pixel wider

// Each by its address: what it is called here, and what must stand there beside that nothing is waited for. A report is a
// job of some seconds; its form can be used as soon as it is shown.
function screensOf({ squad, evening, before, player, injury }) {
  return [
    ["Week", "#/week", ".week-table"],
    ["Week, the one before", `#/week/${before}`, ".week-table"],
    ["Squads", "#/squad", ".squad-list"],
    ["Squad, a block", `#/squad/${squad}`, ".block-table"],
    ["Squad, an evening", evening, ".ribbon-row"],
    ["Coaches", "#/coaches", "tbody tr"],
    ["Injuries", "#/injuries", "tbody tr"],
    ["Injuries, one", `#/injuries/${injury}`, ""],
    ["Injuries, a new one", "#/injuries?enter=new", "form"],
    ["Drills", "#/drills", ""],
    ["Drills, one", "#/drills/side-plank", ""],
    ["People and privacy", "#/people", "tbody tr"],
    ["People, one child", `#/people/${player}`, ""],
    ["People, who read what", "#/people?part=reads", ""],
    ["Evidence, its form", "#/evidence", "form", { usable: "shown" }],
    ["Evidence, its report, a job with its own bar", "#/evidence", ".report", { most: Infinity }],
    ["For the board", "#/releases", ""],
    ["Set up", "#/set-up", ""],
    ["Set up, players", "#/set-up/players", ""],
    ["Your own account", "#/account", ""],
  ];
}

async function firstScreen(port, first) {
  const rows = await Promise.all([...first].map((name) => overTheWire(port, `/desk/${name}`)));
  const size = rows.reduce((sum, row) => sum + row.size, 0);
  const most = [...rows].sort((a, b) => b.size - a.size).slice(0, 3).map((row) => `${row.path} ${bytes(row.size)} (${row.coding})`);
  return { figure: "first screen, compressed", aim: "≤ 350 kB", seen: bytes(size), met: size <= kFirstBytes, more: most.join(", ") };
}

async function screenRows(context, url, places, times) {
  const out = [];
  for (const [name, hash, until, { usable: mark = "usable", most = kUsableMilliseconds } = {}] of screensOf(places)) {
    const seen = [];
    for (let time = 0; time < times; time++) {
      const { page, ...marks } = await openingOf(context, `${url}${hash}`, until);
      seen.push(marks);
      await page.close();
    }
    const usable = middle(seen.map((marks) => marks[mark]));
    const shift = Math.max(...seen.map((marks) => marks.shift));
    const moved = [...new Set(seen.flatMap((marks) => marks.moved))].slice(0, 4).join(", ");
    out.push({ figure: `${name}: can be used`, aim: most === Infinity ? "" : `≤ ${most} ms`, seen: milliseconds(usable), met: usable <= most,
      more: `heading ${milliseconds(middle(seen.map((marks) => marks.shown)))}, first time ${milliseconds(seen[0].usable)}, slowest ${milliseconds(Math.max(...seen.map((marks) => marks.usable)))}` });
    out.push({ figure: "  moved by itself", aim: "0", seen: shift.toFixed(4), met: shift < kMovedAtMost, more: moved });
  }
  return out;
}

// Ids to open: a squad and its next evening, the week before, somebody hurt.
async function placesOf(house, context, url) {
  const { injuries } = (await house.lead.get("/api/injuries")).json;
  const monday = new Date(Date.now() - ((new Date().getUTCDay() + 6) % 7) * 86_400_000 - 7 * 86_400_000).toISOString().slice(0, 10);
  const squad = "u14-jackdaws-3";
  const { page } = await openingOf(context, `${url}#/squad/${squad}`, ".block-table");
  const today = new Date().toLocaleDateString("sv");
  const links = await page.locator(".block-table thead a").evaluateAll((all) => all.filter((link) => !/match/.test(link.parentElement.textContent)).map((link) => link.getAttribute("href")));
  await page.close();
  const evening = links.find((each) => /session=(.*)-\d\d\.\d\d$/.exec(each)[1] > today);
  const { injury, player } = injuries[Math.floor(injuries.length / 2)];
  return { squad, evening, before: monday, injury, player };
}

async function replanned(context, url, { evening }, times) {
  const { page } = await openingOf(context, `${url}${evening}`, ".ribbon-row");
  const seen = await dragged(page, times);
  await page.close();
  const median = middle(seen);
  return { figure: `a dragged drill has its new picture, median of ${seen.length}`, aim: `≤ ${kReplannedMilliseconds} ms`, seen: milliseconds(median), met: median <= kReplannedMilliseconds, more: `worst ${milliseconds(Math.max(...seen))}` };
}

async function rowsOf({ program, wasm, quick, root, tell }) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-desk-"));
  const web = join(folder, "web");
  const { first } = await bundleDesk(web, { door: wasm });
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
  try {
    const house = await BigHouse.open(program, { root: root ?? join(folder, "house"), web, tell });
    const url = `http://127.0.0.1:${house.server.port}/desk/index.html`;
    const context = await browser.newContext({ viewport: kUsual, locale: "en-GB", timezoneId: "Europe/Berlin", reducedMotion: "reduce" });
    await context.addCookies([{ name: "lanework", value: house.lead.cookie, domain: "127.0.0.1", path: "/", httpOnly: true, sameSite: "Strict" }]);
    const places = await placesOf(house, context, url);
    const rows = [await firstScreen(house.server.port, first), ...await screenRows(context, url, places, quick ? 3 : 5), await replanned(context, url, places, quick ? 5 : 15)];
    return { rows, entries: house.entries };
  } finally {
    await browser.close();
    await killAll();
    rmSync(folder, { recursive: true, force: true });
  }
}

const said = ({ rows, entries }) => `100 squads, ${entries} entries of five seasons\n${table(rows)}`;

export const deskFigures = {
  name: "desk-figures",
  async run({ build, wasm }) {
    const seen = await rowsOf({ program: `${process.cwd()}/${build}/lanework`, wasm });
    console.log(said(seen));
    return seen.rows.map((row) => ({ name: `desk-figures: ${row.figure.trim()}`, passed: row.met, detail: `${row.seen}, not ${row.aim}; ${row.more}` }));
  },
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const at = process.argv.indexOf("--house");
  const seen = await rowsOf({ program: `${process.cwd()}/build/test/lanework`, wasm: "build/wasm/lanework.wasm", quick: process.argv.includes("--quick"), root: at < 0 ? undefined : process.argv[at + 1], tell: console.error });
  console.log(said(seen));
  process.exit(seen.rows.every(({ met }) => met) ? 0 : 1);
}
