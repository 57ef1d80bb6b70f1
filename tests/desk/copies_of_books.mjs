// People and privacy, 'Kept and copied': a copy that 'lanework backup' really made, one that was opened and noted, both grown
// old, and none at all; each time what is to be done.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { all, that } from "../serve/expect.mjs";
import { kPhone, kUsual, withDesk } from "./harness.mjs";

const kScreen = "#/people?part=house";
const kDay = 86_400_000;

// What whoever runs the server types (docs/guides/backups.md); what was printed.
function custody(house, ledger) {
  const [keys, copy] = [house.demo.file("keys"), house.demo.file("2026-11-27.backup")];
  const run = (...words) => {
    const { status, stdout, stderr } = spawnSync(house.demo.program, words, { encoding: "utf8", env: { ...process.env, TZ: "Europe/Berlin" } });
    if (status !== 0) throw new Error(`${words.join(" ")}: ${status} ${stderr}`);
    return stdout;
  };
  return {
    copy,
    keys: () => run("backup", "keys", "--out", keys),
    make: () => run("backup", "--ledger", ledger, "--to", copy, "--for", join(keys, "backup.public")),
    check: () => run("backup", "check", copy, "--private", join(keys, "backup.private"), "--key", join(ledger, "ledger.key")),
    note: (made) => run("backup", "checked", made, "--ledger", ledger),
  };
}

// As if all that was noted had been noted that long ago.
function grownOld(ledger, days) {
  const file = join(ledger, "backups.list");
  const older = (stamp) => `${new Date(Date.parse(stamp) - days * kDay + 3_600_000).toISOString().slice(0, 19)}+01:00`;
  const lines = readFileSync(file, "utf8").trim().split("\n").map((line) => JSON.parse(line));
  for (const line of lines) for (const key of ["made", "checked"]) if (line[key]) line[key] = older(line[key]);
  writeFileSync(file, lines.map((line) => `${JSON.stringify(line)}\n`).join(""));
}

async function copies(house) {
  const ledger = house.demo.folder();
  const server = custody(house, ledger);
  return withDesk(house, { folder: ledger }, async (desk) => {
    const { page } = desk;
    const part = page.getByRole("region", { name: "Copies of the books" });
    const out = [];
    // What stands there, after it was looked at on both sizes.
    const look = async (name) => {
      await desk.at(kScreen);
      await page.reload();
      await desk.settled();
      await part.waitFor();
      await desk.picture(`copies-${name}`);
      out.push(await desk.faults());
      return { said: await part.innerText(), due: await part.locator(".due").count(), opened: await part.locator("details[open]").count() };
    };
    const none = await look("none");
    out.push(that(/No copy of the books is known/.test(none.said) && none.due === 1 && none.opened === 1, JSON.stringify(none)));
    out.push(that(/lanework backup keys --out keys/.test(none.said) && /every night/i.test(none.said), `what to do is not said: ${none.said}`));

    server.keys();
    server.make();
    const made = await look("made");
    out.push(that(/Last copied less than a day ago: .*, to \d+-2026-11-27\.backup\./.test(made.said), made.said));
    out.push(that(/No copy has been opened/.test(made.said) && made.due === 1 && made.opened === 1, JSON.stringify(made)));

    const stamp = /lanework backup checked (\S+) --ledger/.exec(server.check())?.[1];
    out.push(that(made.said.includes(`lanework backup checked ${stamp} --ledger books`), `the command on the screen is not the one that was printed, of ${stamp}`));
    server.note(stamp);
    const noted = await look("noted");
    out.push(that(/The copy of .* was opened and read through less than a day ago: /.test(noted.said) && noted.due === 0 && noted.opened === 0, JSON.stringify(noted)));

    grownOld(ledger, 9);
    const old = await look("old");
    out.push(that(/copied 9 days ago: .*\s+One is due every night\./.test(old.said) && /through 9 days ago: .*\s+One is due to be opened every week/.test(old.said) && old.due === 2, JSON.stringify(old)));
    await page.setViewportSize(kPhone);
    await desk.picture("copies-old-412");
    out.push(await desk.faults());
    await page.setViewportSize(kUsual);
    await page.getByRole("button", { name: "Español" }).click();
    await page.getByText("Toca una cada noche.", { exact: false }).waitFor();
    await desk.picture("copies-old-es");
    out.push(await desk.faults());
    return all(out);
  });
}

export const copiesOfBooks = [{ name: "people: the copies of the books, made and tried and noted and grown old", run: copies }];
