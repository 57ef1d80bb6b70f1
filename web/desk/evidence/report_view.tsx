// The report as it was handed over, laid out: contents, sections, and what they are made of.
import { useEffect } from "preact/hooks";
import type { Season } from "../../shared/api.ts";
import { paperFoot } from "../shell/paper_foot.ts";
import { hashOf } from "../shell/route.ts";
import { wholeDay } from "../../shared/words/words.ts";
import { Chart } from "./chart.tsx";
import type { Draw } from "./charts.ts";
import type { Period } from "./period.ts";
import { ReportTable } from "./report_table.tsx";
import { type Block, type Named, namedSections } from "./sections.ts";
import type { Report } from "./use_report.ts";
import { say } from "./words.ts";

function showSection(id: string | undefined): void {
  const heading = id ? document.getElementById(id) : null;
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

function Contents({ sections, period }: { sections: Named[]; period: Period }) {
  return (
    <nav class="contents not-on-paper" aria-label={say("contents")}>
      <h2>{say("contents")}</h2>
      <ul>
        {sections
          .filter(({ section }) => section.level === 1)
          .map(({ id, section }) => (
            <li key={id}>
              <a href={hashOf("evidence", undefined, { ...period, section: id })} onClick={() => showSection(id)}>
                {section.heading}
              </a>
            </li>
          ))}
      </ul>
    </nav>
  );
}

interface Drawn {
  draw: Draw | undefined;
  spoken: Season["language"];
}

function BlockView({ block, ...how }: { block: Block } & Drawn) {
  switch (block.kind) {
    case "paragraph":
      return <p>{block.text}</p>;
    case "list":
      return <ul>{block.items?.map((item, at) => <li key={at}>{item}</li>)}</ul>;
    case "notice":
      return (
        <p class="notice">
          <strong>{block.lead}</strong> {block.text}
        </p>
      );
    case "table":
      return <ReportTable caption={block.caption ?? ""} columns={block.columns ?? []} rows={block.rows ?? []} />;
    case "chart":
      return <Chart block={block} {...how} />;
  }
}

function SectionView({ named: { id, section }, ...how }: { named: Named } & Drawn) {
  const Heading = (["h2", "h3", "h4"] as const)[Math.min(section.level, 3) - 1] ?? "h2";
  return (
    <section class={`level-${section.level}`}>
      <Heading id={id} tabIndex={-1}>
        {section.heading}
      </Heading>
      {section.blocks.map((block, at) => (
        <BlockView key={at} block={block} {...how} />
      ))}
    </section>
  );
}

// What the reader had open is open again after printing.
function useOpenOnPaper(): void {
  useEffect(() => {
    let closed: HTMLDetailsElement[] = [];
    const set = (open: boolean) => () => {
      if (open) closed = [...document.querySelectorAll<HTMLDetailsElement>("details.chart-numbers:not([open])")];
      for (const one of closed) one.open = open;
    };
    const ended = new AbortController();
    addEventListener("beforeprint", set(true), { signal: ended.signal });
    addEventListener("afterprint", set(false), { signal: ended.signal });
    return () => ended.abort();
  }, []);
}

export function ReportView({ report: { season, draw }, period, section }: { report: Report; period: Period; section?: string | undefined }) {
  const sections = namedSections(season);
  useEffect(() => showSection(section), [section, season]);
  useOpenOnPaper();
  const foot = [season.club, `${wholeDay(period.from)} – ${wholeDay(period.to)}`, say("as_of", { day: season.as_of })].join(" · ");
  useEffect(() => paperFoot(foot, say("page")), [foot]);
  return (
    <div class="report" lang={season.language}>
      <Contents sections={sections} period={period} />
      <article>
        <p class="of">
          <strong>{season.title}</strong>
          <br />
          {season.club} · {season.season}
          <br />
          <span class="soft">{say("as_of", { day: season.as_of })}</span>
        </p>
        {draw ? null : <p>{say("no_drawings")}</p>}
        {sections.map((named) => (
          <SectionView key={named.id} named={named} draw={draw} spoken={season.language} />
        ))}
      </article>
    </div>
  );
}
