// Shows 1: from an empty database to the printed cards of three squads, by clicking as a lead does who comes by the link for
// the first time. It tells how many minutes it took; LANEWORK_PICTURES keeps a picture of each step.
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Authenticator } from "../../tools/authenticator.mjs";
import { all, that } from "../serve/expect.mjs";
import { withDesk } from "./harness.mjs";

const kMostMinutes = 10;
const kSquads = ["U10", "U13 Girls", "U16"];
const kPlayersEach = 12;
const kPassword = "seventeen grey gulls over the harbour";

const button = (page, name) => page.getByRole("button", { name, exact: true });
const label = (page, name) => page.getByLabel(name, { exact: true });

// As a club's secretary keeps it: a title above, the day first, a column that nobody needs.
function sheetText() {
  const given = ["Ada", "Bo", "Cleo", "Dara", "Eli", "Fay", "Gus", "Hope", "Ivo", "Jude", "Kit", "Lena"];
  const rows = kSquads.flatMap((squad, group) =>
    given.map((name, at) => `${name} ${["Marsh", "Fell", "Holm"][group]};${String(at + 13).padStart(2, "0")}/0${(at % 9) + 1}/${2017 - 3 * group};${squad};yes`));
  return `Mossbank Rovers, players 2026/27;;;\nPlayer;Date of birth;Team;Photo consent\n${rows.join("\n")}\n`;
}

class Walk {
  constructor(desk, page) {
    Object.assign(this, { desk, page, out: [], number: 0, began: Date.now() });
  }

  async step(name) {
    this.number += 1;
    await this.desk.picture(`ten-${String(this.number).padStart(2, "0")}-${name}`, this.page);
    const fault = await this.desk.faults(this.page);
    this.out.push(fault === "" ? "" : `${name}: ${fault}`);
  }

  to(step) {
    return this.page.locator("nav.parts").getByRole("link", { name: step, exact: true }).click();
  }
}

async function comeIn(walk, link) {
  const { page, desk } = walk;
  await page.goto(`${desk.url}#activate=${link}`);
  await page.getByRole("heading", { name: "Choose a password" }).waitFor();
  await page.getByLabel("Password", { exact: true }).fill(kPassword);
  await page.getByLabel("The same once more").fill(kPassword);
  await walk.step("password");
  await button(page, "Keep it").click();
  await page.getByLabel("Sign-in name").fill("lee");
  await page.getByLabel("Password").fill(kPassword);
  await walk.step("sign-in");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Set up a second factor" }).waitFor();
  const secret = (await page.locator("p.secret").innerText()).replace(/\s/g, "");
  await walk.step("second-factor");
  await page.getByLabel("Then type the six digits that the app shows:").fill(await new Authenticator(secret).next());
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: /Ten codes/ }).waitFor();
  await walk.step("codes");
  await button(page, "I have kept them").click();
  await page.waitForSelector("main h1");
}

async function season(walk) {
  const { page } = walk;
  await walk.desk.at("#/set-up", page);
  await label(page, "The club's name").fill("Mossbank Rovers");
  await label(page, "The season begins").fill("2026-08-31");
  await label(page, "Its last day").fill("2027-06-27");
  await label(page, "First Monday of the block").fill(mondayToCome());
  await walk.step("season");
}

// The next Monday, so that the cards are of evenings to come.
function mondayToCome() {
  const day = new Date();
  day.setDate(day.getDate() + ((8 - day.getDay()) % 7 || 7));
  return day.toLocaleDateString("sv");
}

async function places(walk) {
  const { page } = walk;
  await page.getByRole("link", { name: "Next: Places" }).click();
  await page.getByLabel("A new place").fill("North end");
  await button(page, "Add the place").click();
  await label(page, "Lanes").fill("3");
  await page.getByRole("img", { name: "3 lanes of 15 m, a cone every 5 m" }).waitFor();
  await walk.step("places");
}

async function players(walk) {
  const { page } = walk;
  await page.getByRole("link", { name: "Next: Players" }).click();
  await page.getByRole("heading", { name: "A list that is understood" }).waitFor();
  await walk.step("players-empty");
  await page.getByLabel("The spreadsheet, saved as CSV").setInputFiles({ name: "players 2026.csv", mimeType: "text/csv", buffer: Buffer.from(sheetText()) });
  await page.getByText(`${kSquads.length * kPlayersEach} rows; 1 row above the headings is passed over`).waitFor();
  await walk.step("players");
}

async function squads(walk) {
  const { page } = walk;
  await page.getByRole("link", { name: "Next: Squads" }).click();
  await button(page, "Make the 3 squads of the list").click();
  const form = (name) => page.locator("details", { has: page.locator("summary", { hasText: name }) });
  for (const [at, name] of kSquads.entries()) {
    await form(name).getByLabel("Start").first().fill(`1${7 + at}:30`);
    await form(name).getByRole("button", { name: "Another evening" }).click();
    await form(name).getByLabel("Start").last().fill(`1${7 + at}:30`);
  }
  await walk.step("squads");
}

// One routine made the club's own: a drill moved by the keyboard, one taken out, one undone, one dragged.
async function routine(walk) {
  const { page } = walk;
  await page.getByRole("link", { name: "Next: House routines" }).click();
  await page.getByRole("heading", { name: "What your squads go by" }).waitFor();
  await walk.step("routines");
  await button(page, "Make Early teens ours and change it").click();
  await page.getByText(/once they know it/).waitFor();
  const rows = () => page.locator("[data-drill]").evaluateAll((lines) => lines.map((line) => line.dataset.drill));
  const before = await rows();
  await walk.step("routine");
  await page.getByRole("button", { name: "Side plank later" }).press("Enter");
  await page.getByRole("button", { name: "Take Squat out" }).click();
  await page.locator("[data-drill=squat]").waitFor({ state: "detached" });
  await button(page, "Undo").click();
  await page.locator("[data-drill=squat]").waitFor();
  await page.getByLabel("How much of Side plank").selectOption({ index: 0 });
  await page.getByText(/room for all of it|makes it fit like this/).waitFor();
  const from = await page.locator("[data-drill=hip-closing] .routine-name").boundingBox();
  const to = await page.locator("[data-drill=lunge-rotate-reach] .routine-name").boundingBox();
  await page.mouse.move(from.x + 20, from.y + 8);
  await page.mouse.down();
  await page.mouse.move(to.x + 20, to.y + 8, { steps: 6 });
  await page.mouse.up();
  const after = await rows();
  walk.out.push(that(after.join() !== before.join() && after.length === before.length, `not moved: ${after.join()}`));
  await page.waitForFunction(() => document.querySelector(".routine-edit.planning") === null);
  await walk.step("routine-changed");
}

async function saved(walk) {
  const { page } = walk;
  await button(page, "Check and save").click();
  await page.getByText("Everything is saved.").waitFor();
  await walk.step("saved");
}

async function cards(walk, lead) {
  const { page, desk } = walk;
  await page.getByRole("link", { name: "Next: Cards and coaches" }).click();
  await button(page, "Plan all squads").click();
  await page.getByRole("link", { name: "Print the cards of U16" }).waitFor({ timeout: 60_000 });
  await page.waitForFunction(() => document.querySelector(".bars .job") === null);
  await walk.step("planned");
  const links = await page.getByRole("link", { name: /Print the cards of/ }).evaluateAll((found) => found.map((one) => one.getAttribute("href")));
  walk.out.push(that(links.length === kSquads.length, `${links.length} links`));
  const took = (Date.now() - walk.began) / 60_000;
  for (const [at, link] of links.entries()) {
    const answer = await lead.request.get(new URL(link, desk.url).href);
    const bytes = await answer.body();
    walk.out.push(that(answer.status() === 200 && bytes.subarray(0, 5).toString() === "%PDF-", `${link}: ${answer.status()} ${bytes.subarray(0, 200)}`));
    if (process.env.LANEWORK_PICTURES) writeFileSync(join(process.env.LANEWORK_PICTURES, `desk-ten-cards-${at + 1}.pdf`), bytes);
  }
  return took;
}

async function coach(walk) {
  const { page } = walk;
  await button(page, "Invite a coach").click();
  const dialog = page.locator("dialog[open]");
  await dialog.getByLabel("Name").first().fill("Robin Sedge");
  await dialog.getByLabel("U13 Girls").check();
  await dialog.locator("button[type=submit]").click();
  await dialog.getByRole("img", { name: "The link as a picture" }).waitFor();
  await walk.step("coach");
  await dialog.getByRole("button", { name: "Close" }).click();
  await page.getByRole("button", { name: "Pair a phone of Robin Sedge" }).click();
  await dialog.getByRole("img", { name: "The link as a picture" }).waitFor();
  await walk.step("pair");
  await dialog.getByRole("button", { name: "Close" }).click();
}

async function tenMinutes(house) {
  const [ledger, club] = [house.demo.file("ten-ledger"), house.demo.file("ten-club")];
  mkdirSync(club);
  const run = (...words) => spawnSync(house.demo.program, [...words, "--ledger", ledger], { encoding: "utf8" });
  run("ledger", "new");
  const link = /^ {2}([A-Za-z0-9_-]{43})$/m.exec(run("account", "add", "--sign-in", "lee", "--role", "lead").stdout)[1];
  return withDesk(house, { signed_in: false, folder: ledger, flags: ["--plan-from", club] }, async (desk) => {
    const { page } = desk;
    const walk = new Walk(desk, page);
    await house.prepare?.(page);
    await comeIn(walk, link);
    await season(walk);
    await places(walk);
    await players(walk);
    await squads(walk);
    await routine(walk);
    await saved(walk);
    const took = await cards(walk, page.context());
    await coach(walk);
    return { detail: all([...walk.out, desk.said.join("\n")], that(took <= kMostMinutes, `${took.toFixed(1)} minutes`)), note: `${took.toFixed(1)} minutes from an empty database to the cards of three squads` };
  });
}

export const tenMinutesTests = [{ name: "ten minutes: from an empty database to the printed cards of three squads", run: tenMinutes }];
