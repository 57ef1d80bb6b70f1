// One's own account: a second factor set up on the first day, a password changed, other sessions ended; and a desk that
// nobody uses is covered.
import { Authenticator } from "../../tools/authenticator.mjs";
import { all, that } from "../serve/expect.mjs";
import { withDesk } from "./harness.mjs";
import { qrFault } from "./qr.mjs";

const kPassword = "seventeen grey gulls";

async function firstDay(house) {
  return withDesk(house, {}, async (desk) => {
    const { caller } = desk;
    const out = [];
    const made = await caller.post("/api/accounts", { sign_in: "second.lead", name: "Another lead", role: "lead" });
    const page = await desk.window({});
    await page.goto(`${desk.url}#activate=${made.json.link}`);
    await page.getByLabel("Password", { exact: true }).fill("password");
    await page.getByLabel("The same once more").fill("password");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.waitForSelector(".fault");
    await page.getByLabel("Password", { exact: true }).fill(kPassword);
    await page.getByLabel("The same once more").fill(kPassword);
    await page.waitForTimeout(1100);
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByLabel("Sign-in name").fill("second.lead");
    await page.getByLabel("Password").fill(kPassword);
    await page.keyboard.press("Enter");
    const secret = (await page.locator("p.secret").textContent()).replace(/\s/g, "");
    await desk.picture("second-factor", page);
    out.push(await desk.faults(page), that(/^[A-Z2-7]{32}$/.test(secret), secret));
    const opens = await page.getByRole("link", { name: "Or open it in an app on this device" }).getAttribute("href");
    out.push(that(opens.startsWith("otpauth://totp/") && new URL(opens).searchParams.get("secret") === secret, opens), await qrFault(page, opens, "second-factor"));
    const digits = page.getByLabel("Then type the six digits that the app shows:");
    await digits.fill("000000");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".fault");
    const authenticator = new Authenticator(secret);
    await digits.fill(await authenticator.next());
    await page.keyboard.press("Enter");
    await page.waitForSelector("ul.secret");
    await desk.picture("recovery-codes", page);
    const [recovery] = await page.locator("ul.secret li").allTextContents();
    out.push(await desk.faults(page));
    await page.getByRole("button", { name: "I have kept them" }).click();
    await page.waitForSelector("main h1");

    // Five minutes later a change wants the code once more: here the server says so by itself, told through the page.
    await desk.at("#/account", page);
    await desk.picture("own-account", page);
    out.push(await desk.faults(page));
    await page.getByLabel("The password that you have").fill("not that one at all");
    await page.getByLabel("The new password").fill("eighteen grey gulls");
    await page.getByRole("button", { name: "Change it" }).click();
    await page.getByText("That is not the password that you have now.").waitFor();
    await page.waitForTimeout(1100);
    await page.getByLabel("The password that you have").fill(kPassword);
    await page.getByRole("button", { name: "Change it" }).click();
    await page.getByText("The password is changed").waitFor();
    await page.getByRole("button", { name: "Set up another" }).click();
    await page.getByRole("dialog", { name: "Once more: the code" }).waitFor();
    await desk.picture("step-up", page);
    out.push(await desk.faults(page));
    await page.getByLabel("Six digits, or a recovery code").fill(recovery);
    await page.keyboard.press("Enter");
    await page.locator("p.secret").waitFor();
    await page.getByRole("button", { name: "Close" }).click();
    return all(out);
  });
}

// The clock is the browser's: half an hour goes by on it, and none on the server's.
async function covered(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    await page.clock.install();
    await desk.at("#/people?part=child&squad=u13-kestrels");
    await page.getByRole("table", { name: "Under-13 Kestrels" }).waitFor();
    await page.clock.fastForward(31 * 60 * 1000);
    await page.waitForSelector("#door-title");
    await desk.picture("covered");
    const above = await page.evaluate(() => [[20, 20], [innerWidth - 20, innerHeight - 20], [innerWidth / 2, 300]].every(([x, y]) => document.elementFromPoint(x, y)?.closest("dialog.door") !== null));
    const seen = await page.getByText("Halewick").isVisible();
    const out = [that(above && !seen, "something of the screen is seen"), await desk.faults()];
    await page.emulateMedia({ media: "print" });
    out.push(that(!(await page.getByText("Halewick").isVisible()), "it would be printed"));
    return all(out);
  });
}

export const ownAccount = [
  { name: "own account: the first day of a lead, from the link to the ten codes; and another password", run: firstDay },
  { name: "own account: a desk that nobody uses is covered", run: covered },
];
