// Squad on the real server with the demo's season: the lead asks for a plan, reads the block, opens an evening by the
// keyboard, tries things out on it and takes them back.
import { all, that } from "../serve/expect.mjs";
import { kPhone, kUsual, kWide, withDesk } from "./harness.mjs";
import { printedPages } from "./paper.mjs";
import { planned } from "./planned.mjs";
import { cost, kSquad, openComing, replanned, rows } from "./squad_evening.mjs";

async function asks(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await desk.at("#/squad");
    const out = [that((await page.locator(".squad-list a").count()) === 24, "not all squads"), await desk.faults()];
    await page.getByRole("link", { name: "Under-13 Kestrels" }).click();
    await page.getByRole("heading", { name: "No plan yet" }).waitFor();
    await desk.picture("squad-no-plan");
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Plan it anew" }).click();
    await page.waitForSelector(".block-table", { timeout: 30000 });
    out.push(that((await page.textContent("main")).includes("the most was worked out too") || (await page.textContent("main")).includes("was worked out too"), "the gap is not explained"));
    out.push(that((await page.locator(".bars .job").count()) === 0, "the job does not end"));
    return all(out);
  });
}

async function block(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
      await planned(desk, [kSquad]);
    await desk.at(`#/squad/${kSquad}`);
    await page.waitForSelector(".block-table");
    await page.waitForFunction(() => /, \d+ set/.test(document.querySelector(".targets-table")?.textContent ?? ""));
    const out = [];
    for (const [name, viewport] of [["wide", kWide], ["phone", kPhone], ["usual", kUsual]]) {
      await page.setViewportSize(viewport);
      await desk.picture(`squad-${name}`);
      out.push(await desk.faults());
    }
    out.push(that((await page.locator(".block-table tbody tr").count()) > 12, "too few drills"));
    out.push(that((await page.locator(".targets-table").first().locator("tbody tr").count()) === 9, "not nine families"));
    // The grid by the keyboard: one cell is in the order of Tab, arrows move, Enter opens, back comes back.
    const cells = page.locator(".block-table td[tabindex='0']");
    out.push(that((await cells.count()) === 1, `${await cells.count()} cells take the focus`));
    await cells.focus();
    for (const key of ["ArrowDown", "ArrowRight", "End"]) await page.keyboard.press(key);
    const at = () => page.evaluate(() => document.activeElement?.dataset["at"]);
    const [row, column] = (await at()).split(" ").map(Number);
    out.push(that(row === 1 && column > 6, await at()));
    await page.keyboard.press("Control+Home");
    out.push(that((await at()) === "0 0", await at()));
    await page.keyboard.press("Enter");
    await page.getByRole("link", { name: "Back to the block" }).waitFor();
    await page.waitForFunction(() => document.activeElement?.id === "one-evening");
    out.push(that(/session=\d{4}-\d{2}-\d{2}-\d{2}\.\d{2}$/.test(page.url()), page.url()), await desk.faults());
    await page.reload();
    await page.getByRole("link", { name: "Back to the block" }).waitFor();
    await page.goBack();
    await page.waitForSelector(".block-table");
    await page.goForward();
    await page.getByRole("link", { name: "Back to the block" }).waitFor();
    await desk.at(`#/squad/${kSquad}?session=2031-01-01-18.00`);
    out.push(that((await page.textContent("main")).includes("no evening then"), "an evening that there is not"));
    return all(out);
  });
}

async function tries(house) {
  return withDesk(house, {}, async (desk) => {
    const page = await openComing(desk);
    const out = [that(/Nothing: this is the evening as it is planned/.test(await cost(page)), await cost(page))];
    const usual = await rows(page);
    await desk.picture("squad-evening");
    out.push(await desk.faults());
    // Left out, with its reason and what came of it; then back.
    const from = Date.now();
    await page.getByRole("button", { name: "Side plank: leave it out" }).click();
    await replanned(page, usual);
    const milliseconds = Date.now() - from;
    out.push(that(/Side plank: left out/.test(await cost(page)), await cost(page)), that((await page.locator(".cost [lang=en]").count()) === 0, "a reason has no words of its own"));
    await desk.picture("squad-evening-without");
    out.push(await desk.faults());
    const without = await rows(page);
    await page.keyboard.press("Control+z");
    await replanned(page, without);
    out.push(that((await rows(page)).join() === usual.join(), "undone it is another"));
    await page.getByRole("button", { name: "Do it again" }).click();
    await replanned(page, usual);
    await page.getByRole("button", { name: "Let it in again: Side plank" }).click();
    await replanned(page, without);
    // By the arrows, and again by dragging.
    await page.getByRole("button", { name: "Side plank: earlier" }).press("Enter");
    await replanned(page, usual);
    const moved = await rows(page);
    out.push(that(moved.indexOf("side-plank") === usual.indexOf("side-plank") - 1, moved.join()), that(/stands elsewhere/.test(await cost(page)), await cost(page)));
    await page.getByRole("button", { name: "As planned" }).click();
    await replanned(page, moved);
    const box = (drill) => page.locator(`.ribbon-row[data-drill="${drill}"] .ribbon-sign`).boundingBox();
    await page.locator(".ribbon-row[data-drill='squat']").scrollIntoViewIfNeeded();
    const [one, other] = [await box("squat"), await box("single-leg-bridge")];
    await page.mouse.move(one.x + 9, one.y + one.height / 2);
    await page.mouse.down();
    await page.mouse.move(other.x + 9, other.y + other.height / 2, { steps: 6 });
    await desk.picture("squad-evening-dragged");
    await page.mouse.up();
    await replanned(page, usual);
    const dragged = await rows(page);
    out.push(that(dragged.indexOf("squat") < dragged.indexOf("single-leg-bridge"), dragged.join()));
    // Fewer minutes; and too few for what must be in it.
    await page.getByRole("button", { name: "As planned" }).click();
    await replanned(page, dragged);
    for (let minute = 0; minute < 8; minute++) await page.getByRole("button", { name: "Minutes of the slot: fewer" }).click();
    await replanned(page, usual);
    await page.waitForFunction(() => /The session takes .* less/.test(document.querySelector(".cost")?.textContent ?? ""));
    out.push(that((await rows(page)).length < usual.length, "twelve minutes hold as much as twenty"));
    await desk.picture("squad-evening-short");
    out.push(that((await page.textContent("main")).includes("The number of players of this try is not."), "it does not say what is not kept"));
    return { detail: all(out), note: `the new picture is there after ${milliseconds} ms` };
  });
}

// The connection drops what plans an evening: said in words, and asked for again.
async function withoutEngine(house) {
  return withDesk(house, {}, async (desk) => {
    const page = await openComing(desk);
    await page.route("**/*.wasm", (route) => route.abort());
    await page.reload();
    const alert = page.getByRole("alert").filter({ hasText: "did not come into this browser" });
    await alert.waitFor();
    await desk.picture("squad-no-engine");
    await page.unroute("**/*.wasm");
    await page.getByRole("button", { name: "Ask again" }).click();
    await page.waitForSelector(".ribbon-row");
    return that((await alert.count()) === 0, "it says still that it did not come");
  });
}

async function inOtherWords(house) {
  return withDesk(house, { locale: "es-ES" }, async (desk) => {
    const page = await openComing(desk);
    await page.waitForSelector(".ribbon-row");
    await page.waitForFunction(() => /Plancha/.test(document.querySelector(".ribbon")?.textContent ?? ""));
    await desk.picture("squad-evening-es");
    const out = [await desk.faults()];
    await page.setViewportSize(kPhone);
    await desk.picture("squad-evening-phone");
    out.push(await desk.faults());
    await page.setViewportSize(kUsual);
    await page.emulateMedia({ media: "print" });
    await desk.picture("squad-evening-print");
    out.push(that(!(await page.locator(".ribbon button").first().isVisible()), "buttons are printed"));
    await page.emulateMedia({ media: "screen" });
    await page.goto(`${desk.url}#/squad/${kSquad}`);
    await page.waitForSelector(".block-table");
    await desk.picture("squad-es");
    await page.emulateMedia({ media: "print" });
    await desk.picture("squad-es-print");
    const [last] = (await page.locator(".block-table thead a").last().innerText()).match(/\d+/);
    const [sheet] = await printedPages(page, "squad-es-paper");
    out.push(that(sheet.join(" ").includes(last), `the last session is not on the first sheet: ${sheet.slice(0, 20)}`));
    await page.emulateMedia({ media: "screen" });
    const told = await page.locator("main :not([lang=en])").evaluateAll((parts) => parts.map((part) => [...part.childNodes].filter((node) => node.nodeType === 3).map((node) => node.textContent).join(" ")).join(" "));
    out.push(that(!/\b(drill|week|Session|changes|Nothing)\b/.test(told), told.slice(0, 400)));
    return all(out);
  });
}

async function quick(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await planned(desk, [kSquad]);
    await desk.at("#/squad");
    const from = Date.now();
    await page.getByRole("link", { name: "Under-13 Kestrels" }).click();
    await page.waitForSelector(".block-table");
    const milliseconds = Date.now() - from;
    return { detail: that(milliseconds <= 1000 * house.patience, `${milliseconds} ms`), note: `the block is there after ${milliseconds} ms` };
  });
}

export const squad = [
  { name: "squad: no plan, one is asked for, and it is there", run: asks },
  { name: "squad: the block, in three widths and by the keyboard, back, forward and reload", run: block },
  { name: "squad: an evening tried out: left out, moved, dragged, shortened, undone", run: tries },
  { name: "squad: an evening whose planner does not come", run: withoutEngine },
  { name: "squad: in Spanish, on a phone and on paper", run: inOtherWords, long: true },
  { name: "squad: at once", run: quick },
];
