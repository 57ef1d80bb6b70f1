// The pictures of the lead's guide: each screen of the desk, of the demo on the real server.
import { entry } from "../../tests/serve/expect.mjs";

const kSize = { width: 1280, height: 860 };
const kTaller = { width: 1280, height: 1180 };

// By name: the address, what stands there once all of it is drawn, and what is done then.
const kScreens = {
  "desk-set-up": ["#/set-up/places", "main svg"],
  "desk-week": ["#/week", ".week-table"],
  "desk-squad": ["#/squad/u13-kestrels", ".block-table", (page) => scrolledTo(page, ".block-table")],
  "desk-evening": ["#/squad/u13-kestrels?session=2026-12-01-18.00", ".ribbon-row", leftOut],
  "desk-drill": ["#/drills/side-plank", "main svg"],
  "desk-injury-form": ["#/injuries?enter=new", "main svg"],
  "desk-evidence": ["#/evidence?from=2026-08-31&to=2026-11-25", "main h2"],
  "desk-board": ["#/releases", "main h1", drawn],
  "desk-people": ["#/people", "tbody tr"],
};

const scrolledTo = (page, selector) => page.locator(selector).first().evaluate((one) => window.scrollTo(0, one.getBoundingClientRect().top - 120));

async function leftOut(page) {
  await page.waitForFunction(() => /\d\d:\d\d/.test(document.querySelector(".done-by")?.textContent ?? ""));
  await page.getByRole("button", { name: "Side plank: leave it out" }).click();
  await page.waitForFunction(() => /left out/.test(document.querySelector(".cost")?.textContent ?? ""));
  await page.evaluate(() => scrollTo(0, 0));
  await page.waitForTimeout(900); // until the simulated finish has come too
}

async function drawn(page) {
  await page.getByRole("button", { name: "Draw a page for the board" }).or(page.getByRole("link", { name: "Draw a page for the board" })).click();
  await page.getByLabel("First day").fill("2026-08-24");
  await page.getByLabel("Last day").fill("2026-11-25");
  await page.getByRole("button", { name: "Draw it" }).click();
  await page.getByText("Drawn, and not given out.").waitFor();
}

// A player with a sprained ankle whose way back has begun.
async function oneInjury(page, demo, url) {
  const player = "Q131";
  const entered = async (...entries) => {
    const { verdicts } = (await demo.lead.post("/api/entries", { entries })).json;
    const not = verdicts.find(({ verdict }) => verdict !== "stored");
    if (not) throw new Error(JSON.stringify(not));
  };
  const made = (kind, fields) => ({ ...entry(kind, fields), device_time: undefined, sequence: undefined, player });
  const hurt = made("hurt", { place: "ankle" });
  const opened = made("injury-opened", { squad: "u14-jackdaws", day: "2026-11-24", what: ["region ankle", "side left", "setting training", "onset acute-sudden"], note: "Landed on another's foot." });
  const course = made("course-opened", { course: "general", carries: [hurt.id] });
  await entered(hurt, opened);
  await entered(course);
  await entered(made("step-begun", { course: course.id, step: "daily-life" }));
  await page.goto("about:blank");
  await page.goto(`${url}#/injuries/${opened.id}`);
  await page.getByRole("heading", { name: "The way back in steps" }).waitFor();
  await page.waitForFunction(() => document.querySelector(".waiting") === null);
  await page.waitForLoadState("networkidle");
}

// take(name, page): keeps the picture.
export async function deskPictures(browser, demo, url, moment, take) {
  const context = await browser.newContext({ viewport: kSize, timezoneId: "Europe/Berlin", locale: "en-GB", reducedMotion: "reduce", deviceScaleFactor: 1 });
  await context.addCookies([{ name: "lanework", value: demo.lead.cookie, domain: "127.0.0.1", path: "/", httpOnly: true, sameSite: "Strict" }]);
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date(moment));
  for (const [name, [hash, until, doing]] of Object.entries(kScreens)) {
    await page.goto("about:blank");
    await page.goto(`${url}${hash}`);
    await page.waitForSelector(until);
    await page.waitForFunction(() => document.querySelector(".waiting") === null);
    await page.waitForLoadState("networkidle");
    await doing?.(page);
    await take(name, page);
  }
  await page.setViewportSize(kTaller);
  await oneInjury(page, demo, url);
  await take("desk-injury", page);
  await context.close();
}
