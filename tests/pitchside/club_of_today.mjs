// The demo club of this week (tools/club_of_today.mjs) with an evening of the Under-13 Kestrels today, no match near and no
// holiday, whatever day it is.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { clubOfTheWeek } from "../../tools/club_of_today.mjs";

const kWeekdays = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];

function edited(file, edits) {
  let text = readFileSync(file, "utf8");
  for (const [pattern, by] of edits) {
    if (!pattern.test(text)) throw new Error(`${file} has no ${pattern}`);
    text = text.replace(pattern, by);
  }
  writeFileSync(file, text);
}

// day: '2026-11-27', by the server's clock.
export function clubOfToday(folder, day) {
  mkdirSync(dirname(folder), { recursive: true });
  clubOfTheWeek("demo/quillmere", folder, day);
  edited(join(folder, "club.toml"), [[/(\[\[holiday\]\]\nname = "[^"]*"\nfrom = \S+\nto = \S+\n+)+/, ""]]);
  edited(join(folder, "squads/u13-kestrels.toml"), [[/weekday = "tuesday"/, `weekday = "${kWeekdays[new Date(day).getUTCDay()]}"`], [/(\[\[match\]\]\n(?:\w+ = .*\n)+\n*)+/, ""]]);
  return "18:00"; // its start
}
