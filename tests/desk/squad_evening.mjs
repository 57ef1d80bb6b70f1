// What tests of a squad's evening begin with: it is planned, opened, and its plan is on the screen.
import { planned } from "./planned.mjs";

export const kSquad = "u13-kestrels";

export const rows = (page) => page.locator(".ribbon-row").evaluateAll((all_rows) => all_rows.map((row) => row.dataset.drill));
export const cost = (page) => page.locator(".cost").innerText();
export const replanned = (page, was) => page.waitForFunction((before) => [...document.querySelectorAll(".ribbon-row")].map((row) => row.dataset.drill).join() !== before, was.join());

// The first training to come, by its place in the grid.
export async function openComing(desk) {
  const { page } = desk;
  await planned(desk, [kSquad]);
  await desk.at(`#/squad/${kSquad}`);
  await page.waitForSelector(".block-table");
  const href = await page.locator(".block-table thead a").evaluateAll((links) => {
    const today = new Date().toLocaleDateString("sv");
    const trainings = links.filter((link) => !/match|partido/.test(link.parentElement.textContent));
    return trainings.map((link) => link.getAttribute("href")).find((each) => /session=(.*)-\d\d\.\d\d$/.exec(each)[1] > today);
  });
  await page.goto(`${desk.url}${href}`);
  await page.waitForSelector(".ribbon-row");
  await page.waitForFunction(() => /\d\d:\d\d/.test(document.querySelector(".done-by")?.textContent ?? ""));
  return page;
}
