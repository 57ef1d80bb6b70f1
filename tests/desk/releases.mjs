// For the board: the lead draws a period and gives it out, a board member reads it.
import { all, entry, is, kDay, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kWide, withDesk } from "./harness.mjs";
import { paperFaults, printedPages } from "./paper.mjs";

const daysAgo = (days) => new Date(Date.parse(kDay) - days * 86400e3).toISOString().slice(0, 10);
const mondayOf = (day) => new Date(Date.parse(day) - ((new Date(day).getUTCDay() + 6) % 7) * 86400e3).toISOString().slice(0, 10);

async function given(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const out = [];
    await desk.at("#/releases");
    await page.getByText("Nothing has been given out yet").waitFor();
    await page.getByRole("button", { name: "Draw a page for the board" }).click();
    await page.getByLabel("First day").fill(daysAgo(30));
    await page.getByLabel("Last day").fill(daysAgo(1));
    await page.getByRole("button", { name: "Draw it" }).click();
    await page.getByRole("alert").waitFor();
    await desk.picture("releases-refused");
    await page.getByLabel("First day").fill(daysAgo(99));
    await page.getByRole("button", { name: "Draw it" }).click();
    await page.getByRole("heading", { name: "Is it done?" }).waitFor();
    await desk.picture("releases-drawn");
    out.push(await desk.faults());
    const { roster } = (await desk.caller.get("/api/squads/u13-kestrels")).json;
    await page.getByLabel("What you ask of the board, and what it costs").fill(`A hall for ${roster[0].name}.`);
    await page.getByRole("button", { name: "Give it to the board" }).click();
    const sure = page.locator("dialog").getByRole("button", { name: "Give it to the board" });
    await sure.click();
    await page.locator("dialog").getByText("Your lines name a player.").waitFor();
    await page.keyboard.press("Escape");
    await page.getByLabel("What you ask of the board, and what it costs").fill(`A hall in winter, 120 euros. ${kHostile[0]}`);
    await page.getByRole("button", { name: "Give it to the board" }).click();
    await page.locator("dialog").getByText("A hall in winter").waitFor();
    await desk.picture("releases-sure");
    await page.locator("dialog").getByRole("button", { name: "Give it to the board" }).click();
    await page.waitForFunction(() => location.hash === "#/releases/1");
    await page.getByRole("heading", { name: "Is it done?" }).waitFor();

    const board = await people.signIn("board");
    const window = await desk.window({ cookie: board.cookie });
    await desk.at("", window);
    out.push(that((await window.textContent("main h1")) === "For the board", "not the board's first screen"));
    out.push(that((await window.locator("nav.places li").count()) === 1 && (await window.getByRole("button", { name: "Draw a page" }).count()) === 0, "a board member is offered more"));
    await window.getByRole("rowheader").getByRole("link").click();
    await window.getByRole("heading", { name: "Is it done?" }).waitFor();
    const read = await window.textContent(".release");
    out.push(that(read.includes("A hall in winter, 120 euros.") && /evenings that were planned/.test(read), read.slice(0, 900)));
    for (const viewport of [kWide, kPhone]) {
      await window.setViewportSize(viewport);
      await desk.picture(`releases-board-${viewport.width}`, window);
      out.push(await desk.faults(window));
    }
    await window.goBack();
    await window.getByRole("rowheader").getByRole("link").waitFor();
    await window.goto(`${desk.url}#/people`);
    await window.getByText("There is nothing at this address").waitFor();
    return all(out);
  });
}

// Injuries of two squads, counted by agreement, and the hours of every evening: so that there are rates to print.
async function withRates(caller, device) {
  const weeks = await Promise.all(Array.from({ length: 15 }, (_, back) => caller.get(`/api/week/${mondayOf(daysAgo(7 * back + 7))}`)));
  const hours = weeks.flatMap(({ json }) => json.evenings).map(({ squad, day, start }) => entry("exposure-confirmed", { squad, day, start, setting: "training", minutes: 75, players: 14 }));
  const hurt = [];
  for (const [squad, many, region] of [["u13-kestrels", 7, "knee"], ["u16-merlins", 9, "ankle"], ["u10-wrens", 6, "thigh"]]) {
    const { roster } = (await caller.get(`/api/squads/${squad}`)).json;
    for (const { player } of roster.slice(0, many)) {
      hurt.push(...["injury-record", "statistics"].map((purpose) => entry("consent", { player, purpose, by: "guardian", answer: "given", day: daysAgo(99) })));
      hurt.push(entry("injury-opened", { player, squad, day: daysAgo(30 + many), what: ["setting training", `region ${region}`] }));
    }
  }
  const entries = [...hours, ...hurt];
  const answers = [];
  for (let at = 0; at < entries.length; at += 400) answers.push(await device.post("/api/sync", { client: 1, most: 0, entries: entries.slice(at, at + 400) }));
  return that(hours.length > 300 && answers.every(({ json }) => json.verdicts.every(({ verdict }) => verdict === "stored")), `${hours.length} evenings; ${answers.map(({ text }) => text.slice(0, 200)).join()}`);
}

// On paper: each page says of what it is, no heading stands alone, nobody is named, and in Spanish all words are.
async function onPaper(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller, people } = desk;
    const entered = await withRates(caller, people.device("lead"));
    const asked = `Two evenings of teaching, 120 euros. ${kHostile[0]} ${kHostile[2]}`;
    const made = await caller.post("/api/releases", { from: daysAgo(99), until: daysAgo(1), asked });
    const { json } = await caller.get("/api/squads");
    const names = [];
    for (const { id } of json.squads.slice(0, 3)) names.push(...(await caller.get(`/api/squads/${id}`)).json.roster.map(({ name }) => name));
    await desk.at("#/releases/1");
    await page.getByRole("heading", { name: "Is it done?" }).waitFor();
    const out = [entered, is(made, 201), await desk.faults()];
    const headings = () => page.locator(".release :is(h2, h3, h4, caption)").allTextContents();
    const english = await printedPages(page, "board-page-en");
    out.push(paperFaults(english, { foot: "Quillmere Juniors", numbered: (at, of) => `Page ${at} of ${of}`, headings: await headings() }));
    const text = english.flat().join(" ");
    out.push(that(english.length <= 2, `${english.length} pages`), that(names.every((name) => !text.includes(name)) && names.length > 20, "a child is named"));
    out.push(that(text.includes("Two evenings of teaching") && !text.includes("Print the page"), "not what is asked, or a button"));
    await page.getByRole("button", { name: "Español" }).click();
    await page.getByRole("heading", { name: "¿Se hace?" }).waitFor();
    const spanish = await printedPages(page, "board-page-es");
    out.push(paperFaults(spanish, { foot: "Quillmere Juniors", numbered: (at, of) => `Página ${at} de ${of}`, headings: await headings() }));
    out.push(that(spanish.length <= 2, `${spanish.length} pages in Spanish`));
    out.push(that(!/\b(the|hidden|not stated|knee|training)\b/i.test(spanish.flat().join(" ")), "an English word in the Spanish page"));
    return all(out);
  });
}

export const releases = [
  { name: "releases: printed on A4, in English and in Spanish", run: onPaper },
  { name: "releases: drawn, given out, and read by the board", run: given },
];
