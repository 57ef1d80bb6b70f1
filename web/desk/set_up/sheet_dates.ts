// Dates of birth as spreadsheets write them: 03/04/2014 is in March or in April, and only the whole column tells, or the lead.

export type DatesAre = "day-first" | "month-first" | ""; // "": as the server reads them (docs/formats/roster.md)

const kSlashed = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/;
const kDotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/; // always the day first
const kIso = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})/;

const two = (value: number): string => String(value).padStart(2, "0");

function dayOf(year: number, month: number, day: number): string | undefined {
  const at = new Date(Date.UTC(year, month - 1, day));
  return at.getUTCFullYear() === year && at.getUTCMonth() === month - 1 && at.getUTCDate() === day ? `${year}-${two(month)}-${two(day)}` : undefined;
}

const numbers = (found: RegExpExecArray): [number, number, number] => [Number(found[1]), Number(found[2]), Number(found[3])];

// What a column says of its own slashed dates; 'both': neither order fits all of them.
export function orderOf(cells: string[]): DatesAre | "none" | "both" {
  const found = cells.map((cell) => kSlashed.exec(cell.trim())).filter((one) => one !== null);
  if (found.length === 0) return "none";
  const day_first = found.some((one) => Number(one[1]) > 12);
  const month_first = found.some((one) => Number(one[2]) > 12);
  return day_first && month_first ? "both" : day_first ? "day-first" : month_first ? "month-first" : "";
}

// '2014-04-03' where the order is known; else the cell as it is.
export function isoDate(cell: string, dates: DatesAre): string {
  const slashed = dates === "" ? null : kSlashed.exec(cell.trim());
  if (!slashed) return cell;
  const [first, second, year] = numbers(slashed);
  return (dates === "day-first" ? dayOf(year, second, first) : dayOf(year, first, second)) ?? cell;
}

// False only where it is certain: months in letters, serial numbers and years of two digits are the server's to read.
export function mayBeDate(cell: string, dates: DatesAre): boolean {
  const text = cell.trim();
  const iso = kIso.exec(text);
  if (iso) {
    const [year, month, day] = numbers(iso);
    return dayOf(year, month, day) !== undefined;
  }
  const dotted = kDotted.exec(text);
  const found = dotted ?? kSlashed.exec(text);
  if (!found) return /\d/.test(text);
  const [first, second, year] = numbers(found);
  const day_first = dayOf(year, second, first) !== undefined;
  const month_first = dayOf(year, first, second) !== undefined;
  if (dotted || dates === "day-first") return day_first;
  return dates === "month-first" ? month_first : day_first || month_first;
}
