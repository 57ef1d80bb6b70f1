// A calendar's address on the squad's page, as the lead uses it: made, handed on, made anew, taken back; and who left.
import { all, kSession, that } from "../serve/expect.mjs";
import { kPhone, kUsual, withDesk } from "./harness.mjs";

const kHash = `#/squad/${kSession.squad}`;

async function link(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const part = page.locator(".calendar-link");
    const address = async () => {
      const at = await page.locator("dialog").getByLabel("The link", { exact: true }).inputValue();
      await page.keyboard.press("Escape");
      await page.waitForSelector("dialog[open]", { state: "detached" });
      return at;
    };
    await desk.at(kHash);
    await part.getByText("There is no link.").waitFor();
    const out = [that((await part.getByRole("button").count()) === 1, "more than one thing to do before there is a link"), await desk.faults()];
    await desk.picture("calendar-none");
    await part.getByRole("button", { name: "Make a link" }).press("Enter");
    const dialog = page.getByRole("dialog", { name: "The link, shown this once" });
    await dialog.waitFor();
    for (const [name, viewport] of [["phone", kPhone], ["usual", kUsual]]) {
      await page.setViewportSize(viewport);
      await desk.picture(`calendar-made-${name}`);
      out.push(await desk.faults());
    }
    const letter = await dialog.getByLabel("A message to send it in").inputValue();
    const shown = await dialog.getByRole("img", { name: "The link as a picture" }).count();
    const first = await address();
    out.push(that(/^http:\/\/127\.0\.0\.1:\d+\/calendar\/[A-Za-z0-9_-]{43}\.ics$/.test(first), first), that(letter.includes(first) && shown === 1, letter));
    out.push(that(!(await page.content()).includes(first.slice(-47)), "the link is still on the page"));
    await part.getByText("No calendar has read it yet.").waitFor();

    const path = (whole) => new URL(whole).pathname;
    const phone = people.nobody();
    const calendar = await phone.get(path(first));
    out.push(that(calendar.text.includes("SUMMARY:Under-13 Kestrels: warm-up"), calendar.text.slice(0, 300)));
    await page.reload();
    await part.getByText(/A calendar read it last on/).waitFor();
    await desk.picture("calendar-open");

    // Made anew only after the question; left alone, all is as it was.
    await part.getByRole("button", { name: "Make it anew" }).click();
    const sure = page.getByRole("dialog", { name: "Make the link anew?" });
    await desk.picture("calendar-sure");
    out.push(await desk.faults());
    await page.keyboard.press("Escape");
    await sure.waitFor({ state: "detached" });
    out.push(that((await phone.get(path(first))).status === 200, "made anew without a word"));
    await part.getByRole("button", { name: "Make it anew" }).click();
    await sure.getByRole("button", { name: "Make it anew" }).click();
    await dialog.waitFor();
    const second = await address();
    out.push(that(second !== first && (await phone.get(path(first))).status === 404 && (await phone.get(path(second))).status === 200, "the old one goes on"));

    // Somebody who had the squad leaves: the page says so until it is made anew.
    const { accounts } = (await desk.caller.get("/api/accounts")).json;
    const ours = accounts.find(({ role, charges, ended }) => role === "coach" && !ended && charges.some(({ squad }) => squad === kSession.squad));
    await page.waitForTimeout(1100); // both are told of by the second
    await desk.caller.post(`/api/accounts/${ours.account}/end`);
    await page.reload();
    await part.getByText("no longer has the squad and may still have the link").waitFor();
    out.push(that((await part.locator(".act-now").textContent()).includes(ours.name), "not by name"), await desk.faults());
    await desk.picture("calendar-left");

    await part.getByRole("button", { name: "Take it back" }).click();
    await page.getByRole("dialog", { name: "Take the link back?" }).getByRole("button", { name: "Take it back" }).click();
    await part.getByText(/The last one was taken back/).waitFor();
    out.push(that((await phone.get(path(second))).status === 404, "taken back and it answers"), await desk.faults());
    return all(out);
  });
}

async function inSpanish(house) {
  return withDesk(house, { locale: "es-ES" }, async (desk) => {
    const { page } = desk;
    const part = page.locator(".calendar-link");
    await desk.at(kHash);
    await part.getByRole("button", { name: "Hacer un enlace" }).click();
    await page.getByRole("dialog", { name: "El enlace, que solo se muestra esta vez" }).waitFor();
    const said = await page.locator("dialog").textContent();
    await page.keyboard.press("Escape");
    await part.getByText("Ningún calendario lo ha leído todavía.").waitFor();
    await desk.picture("calendar-spanish");
    return all(that(!/\{|\}/.test(said), said), await desk.faults());
  });
}

export const calendarLink = [
  { name: "squad: a calendar's address is made, made anew and taken back", run: link },
  { name: "squad: a calendar's address in Spanish", run: inSpanish },
];
