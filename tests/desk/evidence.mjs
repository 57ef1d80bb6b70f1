// Evidence: the season's report is worked out, read, drawn, sorted, taken away as data and printed; faults and an empty
// season say what is wrong or missing.
import { readFileSync } from "node:fs";
import { all, kDay, that } from "../serve/expect.mjs";
import { kPhone, kUsual, withDesk } from "./harness.mjs";
import { paperFaults, printedPages } from "./paper.mjs";

const kSeason = "#/evidence?from=2026-09-01&to=2026-11-30";
const shown = (page) => page.getByRole("heading", { name: "In short" }).waitFor({ timeout: 30_000 });

// Each drawing has its sentence for a name, its numbers in a table, and is as wide as there is room.
function drawings(page) {
  return page.evaluate(() => {
    const out = [];
    for (const figure of document.querySelectorAll(".report figure")) {
      const title = figure.querySelector(".chart-title").textContent;
      const drawing = figure.querySelector(".drawing > *");
      const says = figure.querySelector("figcaption .soft").textContent;
      if (!drawing || says === "" || drawing.getAttribute("aria-label") !== says) out.push(`${title}: not drawn, or without its sentence`);
      if (!figure.querySelector("details table tbody tr")) out.push(`${title}: no numbers`);
      if (drawing && Math.abs(drawing.getBoundingClientRect().width - figure.clientWidth) > 2) out.push(`${title}: ${drawing.getBoundingClientRect().width} px in ${figure.clientWidth}`);
    }
    return [...out, document.querySelectorAll(".report figure").length >= 8 ? "" : "too few charts"].filter((one) => one !== "").join("\n");
  });
}

async function read(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at(kSeason);
    await shown(page);
    out.push(await drawings(page), await desk.faults());
    await desk.picture("evidence-1280");

    await page.getByRole("navigation", { name: "In this report" }).getByRole("link", { name: "Squads", exact: true }).click();
    await page.waitForFunction(() => document.activeElement.id === "squads");
    await page.reload();
    await shown(page);
    await page.waitForFunction(() => document.activeElement.id === "squads" && Math.abs(document.activeElement.getBoundingClientRect().top) < 60);
    const funnel = page.locator("figure", { hasText: "Squads beside what chance would do" });
    await funnel.getByText("The numbers of this chart").click();
    await funnel.getByRole("button", { name: "expected" }).click();
    await funnel.getByRole("button", { name: "expected" }).click();
    const expected = (await funnel.locator("tbody td:nth-child(3)").allTextContents()).map(Number);
    out.push(that(expected.length === 24 && expected.every((each, at) => at === 0 || each <= expected[at - 1]), `sorted as ${expected}`));
    out.push(await desk.faults());

    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Download as JSON" }).click()]);
    const kept = JSON.parse(readFileSync(await download.path(), "utf8"));
    out.push(that(download.suggestedFilename() === "evidence-2026-09-01-2026-11-30.json" && kept.sections.length > 8, "the download is not the report"));

    await page.setViewportSize(kPhone);
    await page.waitForFunction(() => [...document.querySelectorAll(".drawing > *")].every((one) => one.getBoundingClientRect().width < 412));
    out.push(await drawings(page), await desk.faults());
    await desk.picture("evidence-412");
    await page.setViewportSize(kUsual);
    return all(out);
  });
}

async function periods(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/evidence");
    await shown(page);
    const address = () => page.evaluate(() => location.hash);
    out.push(that((await address()) === `#/evidence?from=2026-08-31&to=${kDay}`, `the season so far is ${await address()}`));
    await page.getByRole("link", { name: "The last four weeks" }).click();
    await page.waitForFunction(() => !location.hash.includes("2026-08-31"));
    await shown(page);
    await page.goBack();
    await page.waitForFunction(() => document.querySelector("input[type=date]").value === "2026-08-31");
    await shown(page);

    await page.getByLabel("First day").fill("2026-12-01");
    await page.getByRole("button", { name: "Work it out" }).click();
    await page.getByText("The last day must not be before the first.").waitFor();
    await desk.picture("evidence-fault");
    await page.getByLabel("First day").fill("2025-09-01");
    await page.getByLabel("Last day").fill("2025-11-30");
    await page.getByRole("button", { name: "Work it out" }).click();
    await page.getByText("No hours and no injuries are on record in this period").waitFor({ timeout: 30_000 });
    await desk.picture("evidence-empty");
    out.push(await desk.faults());

    // Stopped while it is worked out, and asked for again.
    let held;
    await page.route("**/api/season/**", (one) => (held = one));
    await page.getByRole("link", { name: "This season so far" }).click();
    await page.getByRole("button", { name: "Stop it" }).click();
    await page.getByText("Stopped. Nothing was changed.").waitFor();
    out.push(that((await page.locator("progress").count()) === 0, "the progress goes on after it was stopped"));
    await held.abort().catch(() => {});
    await page.unroute("**/api/season/**");
    await page.getByRole("button", { name: "Try again" }).click();
    await shown(page);

    await page.getByRole("button", { name: "Español" }).click();
    await page.getByRole("heading", { name: "En breve" }).waitFor({ timeout: 30_000 });
    const text = await page.locator(".report").innerText();
    out.push(that((await page.locator(".report").getAttribute("lang")) === "es" && (await page.textContent("main h1")) === "Resultados", "not in Spanish"));
    out.push(that(!/\b(the|of|and|with|injuries|weeks|squads|hours)\b/i.test(text), `English in it: ${text.match(/.{0,60}\b(?:the|of|and|with|injuries|weeks|squads|hours)\b.{0,60}/i)?.[0]}`));
    out.push(await drawings(page));
    out.push(await desk.faults());
    await desk.picture("evidence-es");
    return all(out);
  });
}

// On paper: every table open, no heading alone at a page's end, and its foot says of what and when.
async function onPaper(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    await desk.at(kSeason);
    await shown(page);
    const pages = await printedPages(page, "evidence");
    const headings = await page.locator(".report :is(h2, h3, h4, .chart-title, caption)").allTextContents();
    const text = pages.flat().join(" ");
    return all(
      paperFaults(pages, { foot: "Quillmere Juniors", numbered: (at, of) => `Page ${at} of ${of}`, headings }),
      that(!/Work it out|Download as JSON|In this report/.test(text), "something that is clicked is printed"),
    );
  });
}

export const evidence = [
  { name: "evidence: printed on A4", run: onPaper },
  { name: "evidence: the season's report read, sorted, taken away, at two widths", run: read },
  { name: "evidence: periods, faults, an empty one, stopped, Spanish", run: periods },
];
