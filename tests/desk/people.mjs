// People and privacy, as the lead does it.
import { all, that } from "../serve/expect.mjs";
import { withDesk } from "./harness.mjs";

async function accounts(house) {
  return withDesk(house, {}, async (desk) => {
    await desk.at("#/people");
    await desk.picture("people");
    const rows = await desk.page.locator("tbody tr").count();
    return all(that(rows >= 5, `${rows} accounts`), await desk.faults());
  });
}

export const people = [{ name: "people: who may come in", run: accounts }];
