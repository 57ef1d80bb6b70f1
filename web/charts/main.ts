// Draws the charts of a report page: each <figure data-chart="ID"> from the entry of that id in the JSON element
// 'report-charts', at the width it has, again when that changes, and at the paper's width before printing. The tables
// of the numbers are in the page already; on the screen they are folded away once the drawings are there.
import type { ChartData } from "./data.ts";
import { draw } from "./draw.ts";
import { isSpoken } from "./spoken.ts";

// Wider than paper is between its margins (673 pixels on A4, 695 on Letter): page.css sets the drawing as wide as there is
// room, so that its words come out as large as those of the tables.
const kPaperWidth = 780;

interface Chart {
  place: HTMLElement;
  data: ChartData;
  says: string;
  drawnAt: number;
}

function chartsOfPage(): Chart[] {
  const json = document.getElementById("report-charts")?.textContent ?? "[]";
  const charts = new Map((JSON.parse(json) as ChartData[]).map((data) => [data.id, data]));
  return [...document.querySelectorAll<HTMLElement>("figure[data-chart]")].flatMap((figure) => {
    const data = charts.get(figure.dataset["chart"] ?? "");
    const place = figure.querySelector<HTMLElement>(".drawing");
    const says = figure.querySelector(".says");
    if (data === undefined || place === null) return [];
    return [{ place, data, says: says?.textContent ?? "", drawnAt: 0 }];
  });
}

function redraw(chart: Chart, width: number): void {
  if (width <= 0 || width === chart.drawnAt) return;
  chart.drawnAt = width;
  const { lang } = document.documentElement;
  const drawing = draw(chart.data, width, isSpoken(lang) ? lang : "en");
  drawing.setAttribute("role", "img");
  drawing.setAttribute("aria-label", chart.says);
  chart.place.replaceChildren(drawing);
}

function widthOf(chart: Chart): number {
  return Math.floor(chart.place.getBoundingClientRect().width);
}

// What the reader had open is open again after printing.
function openForPrint(tables: HTMLDetailsElement[]): () => void {
  const closed = tables.filter((table) => !table.open);
  for (const table of closed) table.open = true;
  return () => {
    for (const table of closed) table.open = false;
  };
}

function start(): void {
  const charts = chartsOfPage();
  const tables = [...document.querySelectorAll<HTMLDetailsElement>("details.numbers")];
  const drawAll = (): void => {
    for (const chart of charts) redraw(chart, widthOf(chart));
  };
  drawAll();
  // The sentence is the drawing's own name now; it would be read twice.
  for (const chart of charts) chart.place.closest("figure")?.querySelector(".says")?.setAttribute("aria-hidden", "true");
  for (const table of tables) table.open = false;

  let printing = false;
  // In the next frame: drawing inside the observer would change what it observes.
  const watcher = new ResizeObserver(() => {
    requestAnimationFrame(() => {
      if (!printing) drawAll();
    });
  });
  for (const chart of charts) watcher.observe(chart.place);

  let closeAgain = (): void => {};
  addEventListener("beforeprint", () => {
    if (printing) return;
    printing = true;
    closeAgain = openForPrint(tables);
    for (const chart of charts) redraw(chart, kPaperWidth);
  });
  addEventListener("afterprint", () => {
    printing = false;
    closeAgain();
    drawAll();
  });

  // Texts were measured before the page's own type was ready.
  void document.fonts.ready.then(() => {
    for (const chart of charts) chart.drawnAt = 0;
    drawAll();
  });
}

start();
