// What ./run serves has evenings to come on any day of any year: the demo club moved by whole weeks.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { clubOfTheWeek } from "../../tools/club_of_today.mjs";
import { all, that } from "../serve/expect.mjs";

const kWeek = 7 * 86_400_000;
const kDays = ["2026-11-29", "2027-06-30", "2028-02-29", "2031-12-31"];

const dateIn = (folder, file, pattern) => Date.parse(pattern.exec(readFileSync(join(folder, file), "utf8"))[1]);
const firstMonday = (folder) => dateIn(folder, "club.toml", /first_monday = (\S+)/);
const firstMatch = (folder) => dateIn(folder, "squads/u14-lapwings.toml", /\[\[match\]\]\ndate = (\S+)/);
const birthOf = (folder) => Date.parse(/(\d\d)\/(\d\d)\/(\d{4})/.exec(readFileSync(join(folder, "roster.csv"), "utf8"))[0].split("/").reverse().join("-"));

// The weeks of its block, as the program counts them: the same on any day.
function planned(program, folder) {
  const said = JSON.parse(execFileSync(program, ["block", "--club", folder, "--squad", "u13-kestrels", "--json"], { maxBuffer: 1 << 26, stdio: "pipe" }).toString());
  return JSON.stringify(said).replace(/\d{4}-\d{2}-\d{2}/g, "a day").replace(/"\d{1,2} [A-Z][a-z]{2}"/g, "a day");
}

async function anyDay({ demo }) {
  const place = mkdtempSync(join(tmpdir(), "lanework-any-day-"));
  const out = [];
  try {
    const ages = firstMonday("demo/quillmere") - birthOf("demo/quillmere");
    const away = firstMatch("demo/quillmere") - firstMonday("demo/quillmere");
    for (const day of kDays) {
      const folder = join(place, "club");
      clubOfTheWeek("demo/quillmere", folder, day);
      const into = Date.parse(day) - firstMonday(folder);
      out.push(that(into >= 0 && into < kWeek, `${day}: its block begins on ${new Date(firstMonday(folder)).toISOString()}`));
      out.push(that(firstMonday(folder) - birthOf(folder) === ages && firstMatch(folder) - firstMonday(folder) === away, `${day}: somebody grew older, or a match moved`));
      execFileSync(demo.program, ["club", "check", "--club", folder]);
    }
    const last = join(place, "club");
    out.push(that(planned(demo.program, last) === planned(demo.program, "demo/quillmere"), "another block is planned"));
    return all(out);
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}

export const onAnyDay = [{ name: "the demo's club is the same on any day of any year, with its block begun this week", run: anyDay }];
