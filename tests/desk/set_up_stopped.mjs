// Long work of setting up, as a person deals with it: all first plans are asked for, left alone, come back to, and stopped while they run; and
// back, forward and reload at every step.
import { all, that } from "../serve/expect.mjs";
import { withDesk } from "./harness.mjs";

const kSteps = [["Places", "places"], ["Players", "players"], ["Squads", "squads"], ["House routines", "routines"], ["Cards and coaches", "then"], ["Next season", "turn"]];

async function stopped(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    const jobs = async () => (await caller.get("/api/planning")).json.jobs;
    const bar = page.locator(".bars .job");
    await desk.at("#/set-up/then");
    await page.getByRole("button", { name: "Plan all squads" }).click();
    await bar.getByText(/Plans: [1-9]\d* of \d+ are made/).waitFor({ timeout: 60_000 });
    await desk.picture("set-up-planning");
    const out = [await desk.faults()];
    // Another screen, and back: the plans went on, and can still be stopped. So after a reload.
    await page.getByRole("link", { name: "Coaches", exact: true }).first().click();
    await page.getByRole("heading", { name: "Coaches" }).waitFor();
    await page.goBack();
    await bar.waitFor();
    await page.reload();
    await bar.waitFor();
    const waiting = (await jobs()).filter(({ state }) => state === "waiting").length;
    await page.getByRole("button", { name: "Stop it" }).click();
    await page.locator("main").getByText("Stopped: plans that nobody had begun are taken back.").waitFor({ timeout: 20_000 });
    await bar.waitFor({ state: "detached" });
    const after = await jobs();
    out.push(that(waiting > 3, `only ${waiting} waited: nothing was stopped`), that(after.every(({ state }) => state !== "waiting"), "some still wait"), that(after.some(({ state }) => state === "done"), "none was made"));
    await page.getByText("waits its turn").first().waitFor({ state: "detached" });
    await page.getByText("is being planned").first().waitFor({ state: "detached", timeout: 20_000 });
    out.push(that((await page.getByText("not asked for yet").count()) > 3, "those that were stopped are not told"));
    await desk.picture("set-up-stopped");
    out.push(await desk.faults());
    return all(out);
  });
}

async function everyStep(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    const here = () => page.locator("nav.parts [aria-current=step]").textContent();
    const settled = async (name) => {
      await page.locator("nav.parts [aria-current=step]", { hasText: name }).waitFor();
      await desk.settled();
    };
    await desk.at("#/set-up");
    await page.getByLabel("The club's name").fill("Quillmere Juniors and Friends");
    for (const [name, step] of kSteps) {
      await page.locator("nav.parts").getByRole("link", { name, exact: true }).click();
      await settled(name);
      out.push(that(page.url().endsWith(`#/set-up/${step}`), page.url()));
    }
    for (const [name] of kSteps.slice(0, -1).reverse()) {
      await page.goBack();
      await settled(name);
    }
    await page.goBack();
    await settled("Season");
    out.push(that((await page.getByLabel("The club's name").inputValue()) === "Quillmere Juniors and Friends", "what was typed is gone"));
    await page.goForward();
    await settled("Places");
    // What is typed is in the page alone: a reload asks first; stayed, it is there, and left, it is as it was saved.
    const asked = [];
    let stay = true;
    page.on("dialog", (dialog) => {
      asked.push(dialog.type());
      return stay ? dialog.dismiss() : dialog.accept();
    });
    await page.locator("main input").first().click(); // no browser asks where nobody did anything
    await page.evaluate(() => void setTimeout(() => location.reload(), 0));
    await page.waitForTimeout(500);
    await page.goBack();
    await settled("Season");
    out.push(that(asked.join() === "beforeunload", `asked: ${asked.join()}`), that((await page.getByLabel("The club's name").inputValue()) === "Quillmere Juniors and Friends", "not asked before it went"));
    stay = false;
    await page.reload();
    await settled("Season");
    out.push(that((await page.getByLabel("The club's name").inputValue()) === "Quillmere Juniors", "what was typed outlives the page"));
    for (const [name, step] of kSteps) {
      await page.goto(`${desk.url}#/set-up/${step}`);
      await settled(name);
      await page.reload();
      await settled(name);
      out.push(that((await here()) === name, `a reload of ${name} is at ${await here()}`));
    }
    return all(out, that(asked.length === 2, `asked ${asked.length} times`));
  });
}

export const setUpStopped = [
  { name: "set up: first plans stopped while they run, after another screen and a reload", run: stopped },
  { name: "set up: back, forward and reload at every step", run: everyStep },
];
