// Coaches: who has which squad, and when their phones were last heard of.
import { all, that } from "../serve/expect.mjs";
import { withDesk } from "./harness.mjs";

async function table(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    await desk.at("#/coaches");
    await desk.picture("coaches");
    const heading = page.getByRole("button", { name: "Coach", exact: true });
    await heading.focus();
    await page.keyboard.press("Enter");
    const sorted = await page.locator("th[aria-sort=ascending]").count();
    return all(that(sorted === 1, "the keyboard does not sort"), await desk.faults());
  });
}

export const coaches = [{ name: "coaches: the table, by the keyboard", run: table }];
