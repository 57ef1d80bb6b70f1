// A report page in a browser: what is drawn, that nothing is fetched, that it fits every width, prints whole, and says as
// much without scripts. Three pages: the demo season's by the program, and from sample_page.cpp one like it
// and one of whatever is hard to draw.
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { runProgram } from "../../tools/suite/programs.mjs";
import { weightFault } from "../desk/paper.mjs";
import { kExpectedMarks } from "./expected_marks.mjs";

const kWidths = [380, 1280, 1920];
const kPapers = { A4: "595 x 842", Letter: "612 x 792" };
// [name, writes it into the folder and gives the file].
const kPages = [
  ["demo", async (folder, build) => {
    await runProgram(`${build}/lanework`, ["evidence", "report", "--records", "demo/quillmere/season", "--from", "2025-08-25", "--to", "2026-05-31", "--usual", "4.5",
      "--out", join(folder, "demo")]);
    return join(folder, "demo", "report.html");
  }],
  ...["season", "extremes"].map((name) => [name, async (folder, build) => {
    const file = join(folder, `${name}.html`);
    writeFileSync(file, (await runProgram(`${build}/tests/report/sample_page`, name === "extremes" ? ["extremes"] : [])).answer);
    return file;
  }]),
];

async function open(sample, width, options = {}) {
  const context = await sample.browser.newContext({ viewport: { width, height: 900 }, ...options });
  const page = await context.newPage();
  const trouble = [];
  page.on("console", (message) => trouble.push(`${message.type()}: ${message.text()}`));
  page.on("pageerror", (error) => trouble.push(`error: ${error.message}`));
  page.on("request", (request) => {
    if (request.url() !== sample.url && !request.url().startsWith("data:font/")) trouble.push(`fetched ${request.url()}`);
  });
  await page.goto(sample.url);
  if (options.javaScriptEnabled !== false) {
    await page.evaluate(() => document.fonts.ready.then(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))));
  }
  return { page, context, trouble };
}

// Runs on an open page and gives what is wrong, line by line; what the console said counts too.
const onPage = (width, look, options) => async (sample) => {
  const { page, context, trouble } = await open(sample, width, options);
  try {
    return [...await look(page, sample), ...trouble];
  } finally {
    await context.close();
  }
};

const dataOf = (page) => page.evaluate(() => JSON.parse(document.getElementById("report-charts").textContent));

async function marks(page) {
  const wrong = [];
  const charts = await dataOf(page);
  const figures = await page.locator("figure").count();
  if (charts.length !== figures || figures < 8) wrong.push(`${charts.length} charts, ${figures} figures`);
  for (const chart of charts) {
    const figure = page.locator(`figure[data-chart="${chart.id}"]`);
    const drawn = await figure.locator(".drawing > svg").count();
    if (drawn !== 1) wrong.push(`${chart.id}: ${drawn} drawings`);
    const expected = kExpectedMarks[chart.kind](chart);
    if (expected === null && !(await figure.locator("svg").textContent()).includes("Nothing to show.")) wrong.push(`${chart.id}: says nothing`);
    for (const [mark, count] of Object.entries(expected ?? {})) {
      const found = await figure.locator(`.${mark}`).count();
      if (found !== count) wrong.push(`${chart.id}: ${found} of ${mark}, expected ${count}`);
    }
  }
  return wrong;
}

async function named(page) {
  return page.evaluate(() => [...document.querySelectorAll("figure")].flatMap((figure) => {
    const drawing = figure.querySelector(".drawing > svg");
    const says = figure.querySelector(".says");
    const right = drawing?.getAttribute("role") === "img" && drawing.getAttribute("aria-label") === says.textContent &&
      says.textContent.length > 5 && says.getAttribute("aria-hidden") === "true";
    return right ? [] : [`${figure.dataset.chart} is not named by its sentence`];
  }));
}

// Nothing is wider than the window, open tables included, and no word of a drawing stands outside of it.
async function fits(page) {
  return page.evaluate(() => {
    const wrong = [];
    for (const table of document.querySelectorAll("details")) table.open = true;
    if (document.documentElement.scrollWidth > innerWidth) wrong.push(`${document.documentElement.scrollWidth} px wide`);
    for (const drawing of document.querySelectorAll(".drawing > svg")) {
      const whole = drawing.getBoundingClientRect();
      for (const text of drawing.querySelectorAll("text")) {
        const box = text.getBoundingClientRect();
        if (box.width > 0 && (box.left < whole.left - 3 || box.right > whole.right + 3 || box.top < whole.top - 3 || box.bottom > whole.bottom + 3)) {
          wrong.push(`${drawing.closest("figure").dataset.chart}: '${text.textContent}' stands outside`);
        }
      }
    }
    return wrong;
  });
}

async function resized(page) {
  const widths = () => page.evaluate(() => [...document.querySelectorAll(".drawing > svg")].map((drawing) => Number(drawing.getAttribute("width"))));
  const before = await widths();
  await page.setViewportSize({ width: 500, height: 900 });
  await page.waitForFunction(() => [...document.querySelectorAll(".drawing > svg")].every((drawing) => Number(drawing.getAttribute("width")) < 500), undefined, { timeout: 5000 });
  return before.every((width) => width > 600) ? await fits(page) : [`drawn ${before} wide at first`];
}

// Every cell and caption, letters only: paper may break a line anywhere, and shapes of letters have code points of their own.
const bare = (text) => text.normalize("NFKC").replace(/[\s\u200B-\u200F\u202A-\u202E]/g, "");

const printed = (paper) => async (page, { folder }) => {
  const file = join(folder, `${paper}.pdf`);
  const closedBefore = await page.locator("details:not([open])").count();
  const widthBefore = await page.locator(".drawing > svg").first().getAttribute("width");
  writeFileSync(file, await page.pdf({ format: paper }));
  const wrong = [];
  const size = (await runProgram("pdfinfo", [file])).answer;
  if (!new RegExp(`Page size: +${kPapers[paper].replace(/ x /, "(\\.\\d+)? x ")}`).test(size.replace(/(\d)\.9\d/g, "$1"))) wrong.push(size);
  const fault = weightFault(readFileSync(file));
  if (fault) wrong.push(fault);
  const text = bare((await runProgram("pdftotext", ["-raw", file, "-"])).answer);
  // Of charts whose numbers stand at the page's end, the numbers there.
  const cells = await page.locator(":is(caption, th):not(.elsewhere *), td, figcaption p").allTextContents();
  const backwards = (cell) => bare([...cell].reverse().join(""));
  for (const cell of cells) {
    if (!text.includes(bare(cell)) && !text.includes(backwards(cell))) wrong.push(`not on ${paper}: '${cell}'`);
  }
  if (cells.length < 100) wrong.push(`only ${cells.length} cells`);
  await page.waitForFunction((width) => document.querySelector(".drawing > svg").getAttribute("width") === width, widthBefore, { timeout: 5000 });
  const closedAfter = await page.locator("details:not([open])").count();
  if (closedBefore === 0 || closedAfter !== closedBefore) wrong.push(`${closedBefore} tables folded before, ${closedAfter} after`);
  return wrong;
};

async function withoutScripts(page) {
  const wrong = [];
  const tables = await page.locator("table").all();
  for (const table of tables) if (!await table.isVisible()) wrong.push(`hidden: ${await table.locator("caption").textContent()}`);
  for (const says of await page.locator(".says").all()) if (!await says.isVisible()) wrong.push(`hidden: ${await says.textContent()}`);
  if (tables.length < 8) wrong.push(`${tables.length} tables`);
  if (await page.locator("svg").count() > 0) wrong.push("something was drawn without scripts");
  return wrong;
}

async function byKeyboard(page) {
  await page.keyboard.press("Tab");
  const first = await page.evaluate(() => document.activeElement.closest("nav") !== null);
  const summary = page.locator("summary").first();
  await summary.focus();
  await page.keyboard.press("Enter");
  const table = page.locator("details.numbers table").first();
  const shown = await table.isVisible();
  await page.keyboard.press("Tab");
  const scrolls = await page.evaluate(() => document.activeElement.getAttribute("role") === "region");
  return first && shown && scrolls ? [] : [`contents first: ${first}, table opened: ${shown}, table reached: ${scrolls}`];
}

// What somebody smuggled in would be refused: the policy is the browser's, not only a line of text.
async function refuses(sample) {
  const { page, context } = await open(sample, 1280);
  const refused = await page.evaluate(() => new Promise((done) => {
    const seen = new Set();
    const finish = () => done([...seen].sort().join());
    document.addEventListener("securitypolicyviolation", (event) => {
      seen.add(event.effectiveDirective);
      if (seen.size === 3) finish();
    });
    setTimeout(finish, 3000);
    document.body.append(Object.assign(document.createElement("img"), { src: "http://127.0.0.1:9/a.png" }));
    document.body.append(Object.assign(document.createElement("script"), { textContent: "document.title = 'taken over'" }));
    fetch("http://127.0.0.1:9/").catch(() => {});
  }));
  const title = await page.title();
  await context.close();
  return refused === "connect-src,img-src,script-src-elem" && title !== "taken over" ? [] : [`refused: ${refused}; title ${title}`];
}

const kChecks = [
  ["every chart is drawn with as many marks as it has data", onPage(1280, marks)],
  ["every drawing is named by its sentence", onPage(1280, named)],
  ...kWidths.map((width) => [`nothing stands out at ${width} px`, onPage(width, fits)]),
  ["charts are drawn anew when the window changes", onPage(1280, resized)],
  ...Object.keys(kPapers).map((paper) => [`all of it prints on ${paper}`, onPage(1280, printed(paper))]),
  ["without scripts every table is there", onPage(380, withoutScripts, { javaScriptEnabled: false })],
  ["the keyboard reaches contents and tables", onPage(1280, byKeyboard)],
  ["nothing foreign is fetched or run", refuses],
];

async function resultOf(name, check, sample) {
  try {
    const wrong = await check(sample);
    return { name, passed: wrong.length === 0, detail: wrong.join("\n") };
  } catch (error) {
    return { name, passed: false, detail: error.stack };
  }
}

export const browser = {
  name: "browser",
  async run({ build }) {
    const folder = mkdtempSync(join(tmpdir(), "lanework-report-"));
    const started = await chromium.launch({ executablePath: "/usr/bin/chromium" });
    const results = [];
    try {
      for (const [name, write] of kPages) {
        const file = await write(folder, build);
        const bytes = existsSync(file) ? statSync(file).size : 0;
        results.push({ name: `browser: ${name} is written`, passed: bytes > 100000, detail: `${bytes} bytes` });
        const sample = { browser: started, folder, url: pathToFileURL(file).href };
        for (const [what, check] of kChecks) results.push(await resultOf(`browser: ${name}: ${what}`, check, sample));
      }
    } finally {
      await started.close();
      rmSync(folder, { recursive: true, force: true });
    }
    return results;
  },
};
