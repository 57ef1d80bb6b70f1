// The demo club with a block that has begun this week and an evening of the Under-13 Kestrels today, whatever day it is.
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const kDay = 86_400_000;
const iso = (time) => new Date(time).toISOString().slice(0, 10);
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
  cpSync("demo/quillmere", folder, { recursive: true });
  const today = Date.parse(day);
  const weekday = new Date(today).getUTCDay();
  const monday = today - ((weekday + 6) % 7) * kDay;
  edited(join(folder, "club.toml"), [
    [/(\[season\]\nfrom = )\S+(\nto = )\S+/, `$1${iso(monday - 60 * kDay)}$2${iso(monday + 200 * kDay)}`],
    [/first_monday = \S+/, `first_monday = ${iso(monday)}`],
    [/(\[\[holiday\]\]\nname = "[^"]*"\nfrom = \S+\nto = \S+\n+)+/, ""],
  ]);
  edited(join(folder, "squads/u13-kestrels.toml"), [[/weekday = "tuesday"/, `weekday = "${kWeekdays[weekday]}"`], [/(\[\[match\]\]\n(?:\w+ = .*\n)+\n*)+/, ""]]);
  return "18:00"; // its start
}
