// Coaches: who has which squad, what was told of two weeks and asked for help with, and when phones were last heard of.
import { all, entry, kSession, that, wrapUp } from "../serve/expect.mjs";
import { kPhone, kWide, withDesk } from "./harness.mjs";

async function table(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const told = [wrapUp({ happened: "cut-short", did_it: "half" }), entry("drill-marked", { ...kSession, drill: "side-plank", mark: "needs-help" })];
    await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: told });
    await desk.at("#/coaches");
    const maren = page.locator("tbody tr", { hasText: "Maren" });
    await maren.getByText("side plank").waitFor();
    const said = await maren.textContent();
    const out = [that(/\d cut short/.test(said), said), await desk.faults()];
    await desk.picture("coaches");
    await page.getByRole("button", { name: "Coach", exact: true }).focus();
    await page.keyboard.press("Enter");
    out.push(that((await page.locator("th[aria-sort=ascending]").count()) === 1, "the keyboard does not sort"));
    await page.getByRole("button", { name: "Español" }).click();
    await maren.getByText("plancha", { exact: false }).waitFor();
    for (const viewport of [kWide, kPhone]) {
      await page.setViewportSize(viewport);
      await desk.picture(`coaches-es-${viewport.width}`);
      out.push(await desk.faults());
    }
    await maren.getByRole("link", { name: "Maren" }).click();
    await page.getByRole("dialog", { name: "Maren" }).waitFor();
    await page.goBack();
    await page.getByRole("heading", { name: "Entrenadores" }).waitFor();
    return all(out);
  });
}

export const coaches = [{ name: "coaches: two weeks of them, by the keyboard, in Spanish, and on to one", run: table }];
