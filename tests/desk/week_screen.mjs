// Week on the real server with the demo's season: the lead sees whom to visit and why, goes there and comes back, looks at
// other weeks, and at who joins in, which stands in the book of reads.
import { all, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, kWide, withDesk } from "./harness.mjs";
import { planned } from "./planned.mjs";

const kDay = 86_400_000;
const iso = (time) => new Date(time).toISOString().slice(0, 10);

function mondays() {
  const now = new Date();
  const today = Date.parse(iso(now.getTime() - now.getTimezoneOffset() * 60_000));
  const monday = today - ((new Date(today).getUTCDay() + 6) % 7) * kDay;
  return { own: iso(monday), before: iso(monday - 7 * kDay) };
}

const heading = (page) => page.textContent("main h1");

async function decides(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await desk.at("#/week");
    const visits = page.locator("section[aria-labelledby=to-visit] .cards > li");
    const count = await visits.count();
    const first = (await visits.first().locator("h4").textContent()) ?? "";
    const reasons = await visits.first().locator("li").allTextContents();
    await page.getByText("Single-leg bridge", { exact: true }).waitFor();
    await desk.picture("week");
    const out = [
      that(count >= 1 && count <= 3, `${count} squads to visit`),
      that(reasons.length > 0 && reasons.every((reason) => /^(Not run|Nothing heard|Few did it|Help asked|Cut short|Not visited)/.test(reason)), reasons.join(" ")),
      that((await page.locator("section[aria-labelledby=help-asked] h4").first().textContent()) === "Single-leg bridge", "no drill that help was asked with, by its name"),
      that((await page.locator("section[aria-labelledby=to-review] li").count()) > 0, "no restriction to look at again"),
      await desk.faults(),
    ];
    const moved = await desk.shifts();
    out.push(that(moved < 0.1, `moved by ${moved}`));
    await visits.first().getByRole("link").click();
    await page.waitForFunction((name) => document.querySelector("main h1")?.textContent === name, first);
    await page.goBack();
    await page.waitForFunction(() => /^Week/.test(document.querySelector("main h1")?.textContent ?? ""));
    return all(out);
  });
}

async function weeks(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const { own, before } = mondays();
    await desk.at("#/week");
    const usual = await heading(page);
    await page.getByRole("link", { name: "Week before" }).click();
    await page.waitForFunction((was) => document.querySelector("main h1")?.textContent !== was, usual);
    await desk.settled();
    const out = [that(page.url().endsWith(`#/week/${before}`), page.url())];
    const earlier = await heading(page);
    const rows = await page.locator(".week-table tbody tr").count();
    out.push(that(rows === 24, `${rows} squads`), that((await page.locator(".week-table a.evening").count()) > 24, "too few evenings"));
    await page.reload();
    await desk.settled();
    out.push(that((await heading(page)) === earlier, "a reload goes elsewhere"));
    await page.goBack();
    await page.waitForFunction((was) => document.querySelector("main h1")?.textContent === was, usual);
    await page.goForward();
    await page.waitForFunction((was) => document.querySelector("main h1")?.textContent === was, earlier);
    // Any day leads to its week, and the address says the Monday.
    const wednesday = iso(Date.parse(own) + 2 * kDay);
    await desk.at(`#/week/${wednesday}`);
    await page.waitForFunction((monday) => location.hash === `#/week/${monday}`, own);
    out.push(that((await heading(page)) === usual, "another week than that of the day"));
    await desk.at("#/week/2031-05-05");
    out.push(that((await page.textContent("main")).includes("Nothing was entered in these two weeks."), "a week without entries does not say so"));
    return all(out);
  });
}

async function whoJoinsIn(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    await desk.at("#/week");
    const reads = async () => JSON.stringify((await caller.get("/api/reads")).json).split("u13-kestrels").length;
    const before = await reads();
    const look = page.getByRole("button", { name: "Under-13 Kestrels: who joins in" });
    await look.focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector("dialog details");
    const out = [that((await page.locator("dialog details[open]").count()) === 0, "names are there before they are asked for")];
    const dialog = (await page.textContent("dialog")) ?? "";
    out.push(that(/Joins in:\s*\d+ players/.test(dialog) && /Sits out, see a clinician:/.test(dialog), dialog.slice(0, 300)));
    await page.locator("dialog summary").first().press("Enter");
    const names = await page.locator("dialog details[open] li").count();
    await desk.picture("week-who");
    out.push(that(names > 5, `${names} names`), await desk.faults(), that((await reads()) > before, "it does not stand in the book of reads"));
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog", { state: "detached" });
    out.push(that(await look.evaluate((button) => button === document.activeElement), "the focus does not go back"));
    await page.getByRole("button", { name: "Without names" }).click();
    await look.click();
    await page.waitForSelector("dialog section");
    out.push(that((await page.locator("dialog details").count()) === 0, "names on the wall"));
    return all(out);
  });
}

async function visits(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await planned(desk);
    await desk.at("#/week");
    const enter = page.getByRole("button", { name: /^Enter a visit:/ }).first();
    const name = ((await enter.getAttribute("aria-label")) ?? "").replace("Enter a visit: ", "");
    await enter.focus();
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog", { name: `Visit: ${name}` });
    await dialog.getByLabel("Evening").waitFor();
    await page.waitForFunction(() => document.querySelector(".seen-drill, dialog .visit-form > p:not(.soft) + .field"));
    await dialog.getByRole("button", { name: "Enter the visit" }).click();
    await dialog.getByText("Nothing was filled in yet.").waitFor();
    const drills = await dialog.locator(".seen-drill").count();
    if (drills > 0) await dialog.locator(".seen-drill").first().getByLabel("half").check();
    await dialog.getByLabel("What was taught").fill(kHostile[0]);
    await dialog.getByLabel("Agreed for next time").fill(kHostile[1].slice(0, 150));
    await dialog.getByLabel("What else you saw").fill(kHostile[3]);
    await desk.picture("week-visit");
    const out = [await desk.faults()];
    await page.setViewportSize(kPhone);
    out.push(await desk.faults());
    await desk.picture("week-visit-412");
    await page.setViewportSize(kUsual);
    await dialog.getByRole("button", { name: "Enter the visit" }).click();
    await page.waitForFunction((squad) => document.querySelector(".visited")?.textContent?.includes(squad), name);
    await desk.picture("week-visited");
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForFunction((squad) => !document.querySelector(".visited")?.textContent?.includes(squad), name);
    return { detail: all(out), note: `${drills} drills on the form` };
  });
}

async function withPlans(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await planned(desk);
    await desk.at("#/week");
    await page.waitForFunction(() => document.querySelector(".week-table")?.textContent?.includes("To come") || new Date().getDay() === 0, undefined, { timeout: 8000 });
    const told = (await page.textContent(".week-table")) ?? "";
    const counts = await page.locator(".week-table tbody th").first().innerText();
    const out = [that(/\d+ of \d+ min/.test(told), "no minutes of those planned"), that(/\d+ joins? in/.test(counts), counts)];
    for (const [name, viewport] of [["wide", kWide], ["usual", kUsual], ["phone", kPhone]]) {
      await page.setViewportSize(viewport);
      await desk.picture(`week-${name}`);
      out.push(await desk.faults());
    }
    await page.setViewportSize(kUsual);
    await page.getByRole("button", { name: "Español" }).click();
    await page.waitForFunction(() => /^Semana/.test(document.querySelector("main h1")?.textContent ?? ""));
    await page.waitForFunction(() => /Puente/.test(document.querySelector(".decisions")?.textContent ?? ""));
    await desk.picture("week-es");
    const spanish = await page.textContent("main");
    out.push(that(!/\b(Held|Not run|there|squad|join in)\b/.test(spanish), "English is left"), await desk.faults());
    const visit = page.locator(".decisions").getByRole("button").filter({ hasText: "visita" }).first();
    await visit.click();
    await page.waitForSelector("dialog .visit-form");
    await page.waitForFunction(() => document.querySelector(".seen-drill, dialog .visit-form > p:not(.soft) + .field"));
    await desk.picture("week-visit-es");
    const form = await page.locator("dialog").innerText();
    out.push(that(!/\b(most|half|few|Evening|Needs|drill)\b/.test(form), form.slice(0, 300)), await desk.faults());
    await page.keyboard.press("Escape");
    await page.emulateMedia({ media: "print" });
    out.push(that(!(await page.locator(".week-table button").first().isVisible()), "buttons are printed"));
    await desk.picture("week-print");
    return all(out);
  });
}

// All squads planned by one button: how far it has come is seen; called off, what waits is withdrawn.
async function plansAll(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    await desk.at("#/week");
    const ask = page.getByRole("button", { name: "Plan all squads" });
    await ask.focus();
    await page.keyboard.press("Enter");
    await page.locator(".bars").getByText(/Planning all squads: \d+ of 24/).waitFor();
    const out = [that(await ask.isDisabled(), "it can be asked for twice"), await desk.faults()];
    await desk.picture("week-plans-all");
    await page.locator(".bars").getByRole("button", { name: "Stop it" }).click();
    await page.getByText(/Called off: \d+ squads had been planned/).last().waitFor();
    const { jobs } = (await caller.get("/api/planning")).json;
    out.push(that(!jobs.some(({ state }) => state === "waiting"), "what was called off still waits"));
    out.push(that((await page.locator(".bars .job").count()) === 0, "the job does not end"));
    await desk.picture("week-called-off");
    out.push(await desk.faults());
    // Without names on the wall: neither the coaches' own words nor anybody's name.
    await page.getByRole("button", { name: "Without names" }).click();
    await page.reload();
    await desk.settled();
    out.push(that((await page.locator(".week-table .written").count()) === 0, "a coach's own words on the wall"));
    await page.getByRole("button", { name: /: who sits out or has swaps$/ }).first().click();
    await page.waitForSelector("dialog section");
    out.push(that((await page.locator("dialog details").count()) === 0, "names on the wall"));
    return all(out);
  });
}

// The table by the keyboard alone: one stop of Tab, arrows within, Enter opens.
async function byKeys(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const { before } = mondays();
    await desk.at(`#/week/${before}`);
    const here = () => page.evaluate(() => ({ stop: document.activeElement?.dataset.stop, words: document.activeElement?.textContent, tag: document.activeElement?.tagName, label: document.activeElement?.getAttribute("aria-label") }));
    const inOrder = () => page.locator('.week-table [tabindex="0"], .week-table a:not([tabindex]), .week-table button:not([tabindex])').count();
    const out = [that((await inOrder()) === 1, `${await inOrder()} stops of Tab`)];
    await page.getByRole("button", { name: "Plan all squads" }).focus();
    await page.keyboard.press("Tab");
    const first = await here();
    out.push(that(first.stop === "0 0 0" && first.tag === "A", `Tab leads to ${JSON.stringify(first)}`));
    const grid = page.getByRole("grid", { name: /^What was planned and what was done/ });
    out.push(that((await grid.count()) === 1, "no grid with a name"), that((await grid.getAttribute("aria-describedby")) === "week-keys" && (await page.locator("#week-keys").isVisible()), "nothing says how one moves"));
    out.push(that((await grid.getByRole("gridcell").count()) === 24 * 7 && (await grid.getByRole("rowheader").count()) === 24 && (await grid.getByRole("columnheader").count()) === 8, "it is no grid of squads by days"));
    await page.keyboard.press("ArrowRight");
    out.push(that((await here()).tag === "BUTTON", "the button beside the squad is passed over"));
    await page.keyboard.press("End");
    await page.keyboard.press("Control+End");
    out.push(that((await here()).stop === "23 8 0", `the end is ${(await here()).stop}`));
    await page.keyboard.press("Home");
    out.push(that((await here()).stop === "23 0 0", `Home leads to ${(await here()).stop}`));
    await page.keyboard.press("Control+Home");
    // To the first day of this squad's that has no evening: its cell says so.
    for (let press = 0; press < 9 && (await here()).tag !== "TD"; press++) await page.keyboard.press("ArrowRight");
    const empty = await here();
    out.push(that(/: nothing$/.test(empty.label ?? ""), `an empty day says ${JSON.stringify(empty)}`));
    await page.keyboard.press("Control+Home");
    for (let press = 0; press < 9 && !/^\d+ [2-8] /.test((await here()).tag === "A" ? (await here()).stop : ""); press++) await page.keyboard.press("ArrowRight");
    const evening = await here();
    out.push(that((await inOrder()) === 1, "more than one stop of Tab after moving"), await desk.faults());
    await desk.picture("week-keys");
    await page.keyboard.press("Tab");
    out.push(that((await here()).stop === undefined, "Tab does not leave the table"));
    await page.keyboard.press("Shift+Tab");
    out.push(that((await here()).stop === evening.stop, "the table forgets where one was"));
    const href = await page.evaluate(() => document.activeElement?.getAttribute("href"));
    await page.keyboard.press("Enter");
    await page.waitForFunction((wanted) => location.hash === wanted, href);
    await page.setViewportSize(kPhone);
    await desk.at(`#/week/${before}`);
    out.push(await desk.faults());
    return all(out);
  });
}

async function quick(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await desk.at("#/people");
    const from = Date.now();
    await page.evaluate(() => (location.hash = "#/week"));
    await page.waitForSelector(".week-table");
    const milliseconds = Date.now() - from;
    return { detail: that(milliseconds <= 1000 * house.patience, `${milliseconds} ms`), note: `the week is there after ${milliseconds} ms` };
  });
}

export const week = [
  { name: "week: whom to visit and why, there and back", run: decides },
  { name: "week: other weeks, deep links, back, forward and reload", run: weeks },
  { name: "week: who joins in, names one step deeper and noted", run: whoJoinsIn },
  { name: "week: a visit is entered, shown and taken back", run: visits },
  { name: "week: all squads planned, with progress, called off; and without names", run: plansAll },
  { name: "week: with plans, in three widths, in Spanish and on paper", run: withPlans, long: true },
  { name: "week: the table by the keyboard", run: byKeys },
  { name: "week: at once", run: quick },
];
