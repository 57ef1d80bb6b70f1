// For the board: the lead draws a period and gives it out, a board member reads it.
import { all, kDay, that } from "../serve/expect.mjs";
import { kPhone, kWide, withDesk } from "./harness.mjs";

const daysAgo = (days) => new Date(Date.parse(kDay) - days * 86400e3).toISOString().slice(0, 10);

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
    await page.getByRole("button", { name: "Give it to the board" }).click();
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

export const releases = [{ name: "releases: drawn, given out, and read by the board", run: given }];
