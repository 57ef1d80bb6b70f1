// Coaches: who has which squad, what was told of two weeks and asked for help with, and when phones were last heard of.
import { all, entry, kSession, that, wrapUp } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, kWide, withDesk } from "./harness.mjs";

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
    return all(out);
  });
}

// A lesson written down for two, put right, read on one coach's own page, by back and forward, with hostile text in it.
async function lessons(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    const taught = async () => (await caller.get("/api/coaches")).json.coaches.flatMap((one) => one.taught.map(({ what }) => what));
    await desk.at("#/coaches");
    await page.getByRole("button", { name: "Write down a lesson" }).click();
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("Choose at least one coach.").waitFor();
    const ticks = page.locator("dialog input[type=checkbox]");
    const coaches = await ticks.count();
    for (let at = 0; at < Math.min(2, coaches); at += 1) await ticks.nth(at).check();
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("Say what was taught.").waitFor();
    await page.locator("dialog").getByLabel("What was taught").fill("é".repeat(150));
    await page.keyboard.press("Enter");
    await page.getByText("At most 200 bytes").waitFor();
    await page.locator("dialog").getByLabel("What was taught").fill("First evening, side by side");
    await desk.picture("coaches-lesson");
    const out = [await desk.faults()];
    await page.keyboard.press("Enter");
    await page.waitForSelector("dialog", { state: "detached" });
    const first = await taught();
    out.push(that(first.filter((what) => what === "First evening, side by side").length === Math.min(2, coaches), first.join("; ")));
    await page.locator("tbody tr", { hasText: "Maren" }).getByRole("link", { name: "Maren" }).click();
    await page.getByRole("heading", { name: "What was taught" }).waitFor();
    await page.getByRole("button", { name: /Put right the lesson/ }).first().click();
    await page.locator("dialog").getByLabel("What was taught").fill(`${kHostile[0]} ${kHostile[2]}`);
    await page.keyboard.press("Enter");
    await page.waitForSelector("dialog", { state: "detached" });
    const then = await taught();
    out.push(that(then.filter((what) => what.startsWith("<img")).length === 1 && then.length === first.length, `put right: ${then.join("; ")}`));
    out.push(that((await page.title()) !== "taken" && (await page.locator("main img").count()) === 0, "markup was run"));
    for (const viewport of [kUsual, kWide, kPhone]) {
      await page.setViewportSize(viewport);
      await desk.picture(`coach-${viewport.width}`);
      out.push(await desk.faults());
    }
    await page.setViewportSize(kUsual);
    await page.reload();
    await page.getByRole("button", { name: /Put right the lesson/ }).first().click();
    await page.getByRole("button", { name: "It never was" }).click();
    await page.getByText("No lesson is written down yet.", { exact: false }).waitFor();
    await page.goBack();
    await page.getByRole("table", { name: "Coaches" }).waitFor();
    await page.goForward();
    await page.getByRole("heading", { name: "What was taught" }).waitFor();
    await page.goto(`${desk.url}#/coaches/nobody-at-all`);
    await page.getByText("There is no such coach").waitFor();
    return all(out);
  });
}

// The season's end: answers of one coach written down, counted with how many have not answered, and taken back.
async function survey(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    const maren = (await caller.get("/api/coaches")).json.coaches.find(({ name }) => name === "Maren");
    await desk.at(`#/coaches/${maren.account}`);
    await page.getByRole("button", { name: "Write down answers" }).click();
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("Write down at least one answer.").waitFor();
    await dialog.getByRole("group", { name: "Was there time for the whole warm-up?" }).getByLabel("mostly").check();
    await dialog.getByLabel("Which drill do you leave out first, and why?").fill(kHostile[0]);
    await dialog.getByLabel("What would help most next season?").fill("x".repeat(150));
    await dialog.getByLabel("Anything else").fill(kHostile[2]);
    await desk.picture("coach-survey");
    const out = [await desk.faults()];
    await dialog.getByRole("button", { name: "Write it down" }).click();
    await dialog.waitFor({ state: "detached" });
    await page.getByText("Said on", { exact: false }).waitFor();
    await desk.picture("coach-answered");
    out.push(await desk.faults(), that((await page.title()) !== "taken" && (await page.locator("main img").count()) === 0, "markup was run"));
    await page.getByRole("link", { name: "All coaches" }).click();
    const counted = page.getByRole("table", { name: "Answers in counts" });
    await counted.waitFor();
    out.push(that(/1 of \d+ coaches has answered/.test(await page.textContent("main")), "not how many have not answered"));
    for (const viewport of [kWide, kPhone]) {
      await page.setViewportSize(viewport);
      await desk.picture(`coaches-survey-${viewport.width}`);
      out.push(await desk.faults());
    }
    await page.setViewportSize(kUsual);
    await page.getByRole("button", { name: "Undo" }).click();
    await counted.waitFor({ state: "detached" });
    const told = (await caller.get("/api/coaches")).json.coaches.find(({ account }) => account === maren.account);
    out.push(that(told.asked.length === 0, JSON.stringify(told.asked)));
    return all(out);
  });
}

export const coaches = [
  { name: "coaches: what was answered at the season's end, counted and taken back", run: survey },
  { name: "coaches: two weeks of them, by the keyboard, in Spanish", run: table },
  { name: "coaches: a lesson written down and put right, one coach's page", run: lessons },
];
