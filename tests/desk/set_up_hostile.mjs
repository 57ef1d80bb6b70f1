// Set up with hostile text in every field: quotation marks, markup, emoji, letters from right to left, five hundred letters, a
// formula. Nothing of it is run, widens the page or comes back as anything else; what the server refuses it says.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { all, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, withDesk } from "./harness.mjs";
import { firstLead, nothingYet } from "./set_up.mjs";

const kWords = ["=cmd|'/C calc'!A0", "'\"`${7*7}{{7*7}}", ...kHostile, `${"y".repeat(500)}`];
const kMostRows = 8;

const quoted = (cell) => `"${cell.replaceAll('"', '""')}"`;

// Each a name once; squads by three of them.
function sheetText() {
  const rows = Array.from({ length: 3 * kMostRows }, (_, at) => [`${kWords[at % kWords.length].slice(0, 70)} ${at}`, `20${11 + (at % 3)}-0${1 + (at % 9)}-11`, ["=U13", "U14 <b>", "فريق U12"][at % 3], "x"]);
  return `Name,Date of birth,Squad,<script>document.title='taken'</script>\n${rows.map((row) => row.map(quoted).join(",")).join("\n")}\n`;
}

async function every(page, word, out) {
  const fields = page.locator("main input[type=text]:visible, main input:not([type]):visible");
  for (let at = 0; at < (await fields.count()); at++) await fields.nth(at).fill(word);
  out.push(that((await page.title()) !== "taken", `markup was run: ${word.slice(0, 40)}`));
}

async function hostile(house) {
  const { ledger, club } = nothingYet(house, "hostile");
  return withDesk(house, { signed_in: false, folder: ledger, flags: ["--plan-from", club] }, async (desk) => {
    const lee = await firstLead(house, ledger, desk.people.nobody());
    const page = await desk.window({ cookie: lee.cookie });
    const out = [];
    const to = (name) => page.locator("nav.parts").getByRole("link", { name, exact: true }).click();
    const looked = async (name) => {
      for (const viewport of [kPhone, kUsual]) {
        await page.setViewportSize(viewport);
        await desk.picture(`hostile-${name}-${viewport.width}`, page);
        const fault = await desk.faults(page);
        out.push(fault === "" ? "" : `${name} at ${viewport.width}: ${fault}`);
      }
    };
    await desk.at("#/set-up", page);
    await page.getByRole("button", { name: "Add a holiday" }).click();
    for (const word of kWords) await every(page, word, out);
    await looked("season");
    await page.getByLabel("The club's name").fill(kHostile[0]);
    await page.getByLabel("Name", { exact: true }).fill(kWords[0]);
    for (const [name, day] of [["The season begins", "2026-08-31"], ["Its last day", "2027-06-27"], ["First Monday of the block", "2026-11-30"], ["From", "2026-12-21"], ["To, with that day", "2026-12-27"]]) {
      await page.getByLabel(name, { exact: true }).fill(day);
    }
    await to("Places");
    for (const word of kWords.slice(0, 3)) {
      await page.getByLabel("A new place").fill(word);
      await page.getByRole("button", { name: "Add the place" }).click();
    }
    for (const word of kWords) await every(page, word, out);
    await every(page, kHostile[0], out);
    await looked("places");
    await to("Players");
    await page.getByLabel("Or paste the cells here").fill(sheetText().replaceAll(",", "\t").replaceAll('"', ""));
    await page.getByRole("button", { name: "Use them" }).click();
    await page.getByLabel("The spreadsheet, saved as CSV").setInputFiles({ name: `${kHostile[0]}.csv`, mimeType: "text/csv", buffer: Buffer.from(sheetText()) });
    await page.getByText("Show all 24 rows").click();
    out.push(that((await page.title()) !== "taken", "markup of the sheet was run"));
    await looked("players");
    await to("Squads");
    await page.getByRole("button", { name: "Make the 3 squads of the list" }).click();
    for (const form of await page.locator("details").all()) await form.getByRole("button", { name: "Add a match" }).click();
    for (const day of await page.getByLabel("Day", { exact: true }).all()) if ((await day.getAttribute("type")) === "date") await day.fill("2026-12-12");
    for (const word of kWords) await every(page, word, out);
    // Each its own name again: two of one name are a fault, and not what is tried here.
    for (const [at, form] of (await page.locator("details").all()).entries()) {
      await form.getByLabel("Name", { exact: true }).fill(`${kHostile[0]} ${at}`);
      await form.getByLabel("Against").fill(kHostile[3]);
    }
    await looked("squads");
    await to("House routines");
    await page.getByRole("button", { name: /ours and change it/ }).first().click();
    await page.getByText(/once they know it/).waitFor();
    await page.locator("summary", { hasText: "a word to coaches" }).click();
    for (const word of kWords) await every(page, word, out);
    await every(page, kHostile[0], out);
    await looked("routine");
    await page.getByRole("button", { name: "Check and save" }).click();
    await page.getByText(/Everything is saved\.|would not be sound|not saved/i).first().waitFor();
    await looked("saved");
    out.push(that((await page.getByText("Everything is saved.").count()) === 1, await page.locator("main section.sheet").last().innerText()));
    await to("Cards and coaches");
    await page.getByRole("button", { name: "Plan all squads" }).click();
    await page.getByRole("link", { name: /Print the cards/ }).first().waitFor({ timeout: 60_000 });
    await page.waitForFunction(() => document.querySelector(".bars .job") === null);
    await looked("then");
    out.push(that((await page.title()) !== "taken", "markup was run at the end"));
    const card = await page.getByRole("link", { name: /Print the cards/ }).first().getAttribute("href");
    const answer = await page.context().request.get(new URL(card, desk.url).href);
    out.push(that(answer.status() === 200 && (await answer.body()).subarray(0, 5).toString() === "%PDF-", `${card}: ${answer.status()}`));
    // As it was typed, and nowhere but in the folder's own files.
    out.push(that(readFileSync(join(club, "club.toml"), "utf8").includes("<img src=x"), "the name is another"), that(readdirSync(join(club, "squads")).every((name) => /^[a-z0-9-]+\.toml$/.test(name)), readdirSync(join(club, "squads")).join()));
    return all(out);
  });
}

export const setUpHostile = [{ name: "set up: hostile text in every field", run: hostile }];
