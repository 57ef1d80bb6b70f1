// One drawing, at the width it has and at the paper's; what it shows is said in words, and its numbers are folded below.
import { useLayoutEffect, useRef } from "preact/hooks";
import type { ChartData } from "../../charts/data.ts";
import type { Season } from "../../shared/api.ts";
import type { Draw } from "./charts.ts";
import { ReportTable } from "./report_table.tsx";
import { limitsOf } from "./limits.ts";
import type { Block } from "./sections.ts";
import { say } from "./words.ts";

type DrawIn = (data: ChartData, width: number) => SVGElement;

// As web/charts/main.ts: wider than paper is, so that its words come out as large as those of the tables.
const kPaperWidth = 780;

function drawInto(place: HTMLElement, draw: DrawIn, data: ChartData, says: string, width: number): void {
  if (width <= 0 || place.dataset["drawnAt"] === String(width)) return;
  place.dataset["drawnAt"] = String(width);
  const drawing = draw(data, width);
  // The library's own style elements are refused by the desk's policy; what they say stands in evidence.css.
  for (const style of [...drawing.querySelectorAll("style")]) style.remove();
  // A picture has one name, not one for each of its parts.
  for (const part of [...drawing.querySelectorAll("[aria-label]")]) part.removeAttribute("aria-label");
  drawing.setAttribute("role", "img");
  drawing.setAttribute("aria-label", says);
  place.replaceChildren(drawing);
}

function keepDrawn(place: HTMLElement, draw: DrawIn, data: ChartData, says: string): () => void {
  let printing = false;
  const ended = new AbortController();
  const here = (): void => drawInto(place, draw, data, says, Math.floor(place.getBoundingClientRect().width));
  here();
  // In the next frame: drawing inside the observer would change what it observes.
  const watcher = new ResizeObserver(() => requestAnimationFrame(() => (printing || ended.signal.aborted ? undefined : here())));
  watcher.observe(place);
  const { signal } = ended;
  addEventListener("beforeprint", () => ((printing = true), drawInto(place, draw, data, says, kPaperWidth)), { signal });
  addEventListener("afterprint", () => ((printing = false), here()), { signal });
  // Texts were measured before the page's own type was ready.
  if (document.fonts.status !== "loaded") void document.fonts.ready.then(() => (delete place.dataset["drawnAt"], here()));
  return () => {
    ended.abort();
    watcher.disconnect();
  };
}

export function Chart({ block, draw, spoken }: { block: Block; draw: Draw | undefined; spoken: Season["language"] }) {
  const place = useRef<HTMLDivElement>(null);
  const { data, says = "", title = "", table } = block;
  useLayoutEffect(() => {
    if (!draw || !place.current) return undefined;
    return keepDrawn(place.current, (chart, width) => draw(chart, width, spoken), data as unknown as ChartData, says);
  }, [draw, data]);
  return (
    <figure>
      <figcaption>
        <p class="chart-title">{title}</p>
        <p class="soft" aria-hidden={draw ? "true" : undefined}>
          {says}
        </p>
      </figcaption>
      {draw ? <div class="drawing" ref={place} /> : null}
      <p class="limits">
        <strong>{say("can_say")}</strong> {limitsOf(data as unknown as ChartData | undefined)}
      </p>
      {table ? (
        <details class={block.numbers_at_the_end ? "chart-numbers elsewhere" : "chart-numbers"} open={draw === undefined}>
          <summary>{say("numbers")}</summary>
          <ReportTable caption={table.caption} columns={table.columns} rows={table.rows} />
        </details>
      ) : null}
    </figure>
  );
}
