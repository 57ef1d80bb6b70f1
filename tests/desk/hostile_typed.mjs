// Hostile text in the fields that are on no form of their own: coming in, one's own account, an invitation, and every field that
// looks something up. Nothing of it is run, goes into the address, stays in the browser or widens the page.
import { all, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, withDesk } from "./harness.mjs";

const kWords = ["=cmd|'/C calc'!A0", "'\"`${7*7}{{7*7}}<script>document.title='taken'</script>", ...kHostile, "y".repeat(500)];
const kNextTryMilliseconds = 1100; // the server lets nobody try again at once

async function unharmed(desk, page, word) {
  const kept = await page.evaluate(() => JSON.stringify(localStorage) + JSON.stringify(sessionStorage));
  const faults = [];
  for (const viewport of [kPhone, kUsual]) {
    await page.setViewportSize(viewport);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    faults.push(that(wide <= 0, `${wide} px too wide at ${viewport.width} with ${word.slice(0, 30)}`));
  }
  return all(
    that((await page.title()) !== "taken" && (await page.locator("img[src=x]").count()) === 0, `markup was run: ${word.slice(0, 30)}`),
    that(kept.length < 120 && !page.url().includes(encodeURIComponent([...word].slice(0, 12).join(""))), `${word.slice(0, 30)} stays in the address or in the browser`),
    faults,
  );
}

async function comingIn(house) {
  return withDesk(house, { signed_in: false }, async (desk) => {
    const { page, people } = desk;
    const out = [];
    await page.goto(`${desk.url}#/coaches`);
    await page.waitForSelector("#door-title");
    const typed = async (name, password) => {
      await page.getByLabel("Sign-in name").fill(name);
      await page.getByLabel("Password").fill(password);
      await page.keyboard.press("Enter");
    };
    for (const word of kWords) {
      await typed(word, word);
      await page.waitForFunction(() => document.querySelector("button.main[aria-disabled=false]") !== null && document.querySelector(".fault") !== null);
      out.push(that(/do not belong together|cannot be taken|Too many tries|too often/.test(await page.textContent(".fault")), await page.textContent(".fault")));
      out.push(await unharmed(desk, page, word));
      await page.waitForTimeout(kNextTryMilliseconds);
    }
    await desk.picture("hostile-sign-in");
    out.push(await desk.faults());
    await typed("lead", people.password("lead"));
    const code = page.getByLabel("Six digits, or a recovery code");
    await code.waitFor();
    for (const word of kWords.slice(0, 4)) {
      await code.fill(word);
      await page.keyboard.press("Enter");
      await page.waitForSelector(".fault");
      out.push(await unharmed(desk, page, word));
      await page.waitForTimeout(kNextTryMilliseconds);
    }
    await code.fill(await people.authenticators.lead.next());
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "Coaches" }).waitFor();
    return all(out);
  });
}

async function ownAccount(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/account");
    for (const word of kWords) {
      await page.getByLabel("The password that you have").fill(word);
      await page.getByLabel("The new password").fill(word);
      await page.getByRole("button", { name: "Change it" }).click();
      await page.waitForSelector(".fault, .refused");
      out.push(await unharmed(desk, page, word));
      await page.waitForTimeout(kNextTryMilliseconds);
    }
    await desk.picture("hostile-account");
    return all(out, await desk.faults());
  });
}

// Each looked for, none found, and the way out stands there.
async function lookedUp(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills");
    for (const label of ["Word in it", "Word that coaches say"]) {
      await page.setViewportSize(kUsual);
      for (const word of kWords) {
        await page.getByLabel(label).fill(word);
        await page.getByRole("heading", { name: "No drill fits all of that" }).waitFor();
        out.push(await unharmed(desk, page, word));
      }
      await desk.picture(`hostile-drills-${label.length}`);
      out.push(await desk.faults());
      await page.getByRole("button", { name: "Show all" }).first().click();
      await page.getByRole("heading", { name: "No drill fits all of that" }).waitFor({ state: "detached" });
    }
    await desk.at("#/people?part=child");
    await page.getByRole("button", { name: "Find a child by name" }).click();
    for (const word of kWords) {
      await page.getByLabel("Name, or the beginning of it").fill(word);
      await page.getByText("0 children", { exact: true }).waitFor();
      out.push(await unharmed(desk, page, word));
    }
    await desk.at("#/injuries?enter=new");
    for (const word of kWords) {
      await page.getByLabel("Or type it").fill(word);
      await page.getByRole("button", { name: "Enter it" }).click();
      await page.getByText("Choose where, on the map or by typing.").waitFor();
      out.push(await unharmed(desk, page, word));
    }
    await desk.picture("hostile-region");
    return all(out, await desk.faults());
  });
}

// Whatever a name is, the account is made, listed and found as it was typed; a sign-in name that is none is refused by its field.
async function invited(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/people");
    for (const [at, word] of kWords.entries()) {
      await page.setViewportSize(kUsual);
      await page.getByRole("button", { name: "Invite somebody" }).click();
      await page.getByLabel("Name", { exact: true }).fill(word);
      await page.getByLabel("Sign-in name").fill(word);
      await page.getByRole("button", { name: "Make the account" }).click();
      await page.locator("dialog").locator(".fault, .refused, [aria-invalid]").first().waitFor();
      out.push(await unharmed(desk, page, word));
      await page.getByLabel("Name", { exact: true }).fill([...word].slice(0, 40).join(""));
      await page.getByLabel("Sign-in name").fill(`hostile.${at}`);
      await page.getByRole("button", { name: "Make the account" }).click();
      await page.getByLabel("The link", { exact: true }).waitFor();
      out.push(await unharmed(desk, page, word));
      if (at === 1) await desk.picture("hostile-invited");
      await page.locator("dialog").getByRole("button", { name: "Close" }).click();
      await page.locator("tbody tr", { hasText: `hostile.${at}` }).waitFor();
    }
    await page.setViewportSize(kPhone);
    await desk.picture("hostile-accounts");
    return all(out, await desk.faults());
  });
}

export const hostileTyped = [
  { name: "hostile text: coming in", run: comingIn },
  { name: "hostile text: one's own account", run: ownAccount },
  { name: "hostile text: whatever looks something up", run: lookedUp },
  { name: "hostile text: an invitation", run: invited },
];
