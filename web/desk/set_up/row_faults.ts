// What is certainly wrong with a row of the players' sheet, before the server has read any of it; the server's own faults of
// the list, by row, when it has.
import type { Fault } from "../../shared/api.ts";
import { type Column, kHeadings } from "./sheet.ts";
import { type DatesAre, mayBeDate } from "./sheet_dates.ts";

export type RowTrouble = "no-name" | "no-date" | "no-such-day" | "no-squad" | "twice" | "told";
export interface RowFault {
  row: number; // from 0, below the headings
  at?: number; // the column of the sheet
  trouble: RowTrouble;
  told?: Fault; // by the server
  first?: number; // row of which this is a repetition
}

export type OfRoster = Fault & { file?: string; line?: number };

export function rowFaults(rows: string[][], columns: (Column | "")[], dates: DatesAre): RowFault[] {
  const at = (column: Column) => columns.indexOf(column);
  const names = [at("name"), at("first_name"), at("last_name")].filter((one) => one >= 0);
  const [birth, squad] = [at("birth"), at("squad")];
  const known = new Map<string, number>();
  return rows.flatMap((cells, row) => {
    const out: RowFault[] = [];
    const name = names.map((one) => cells[one] ?? "").join(" ").trim();
    if (names.length > 0 && name === "") out.push({ row, at: names[0] as number, trouble: "no-name" });
    const born = birth < 0 ? "" : (cells[birth] ?? "").trim();
    if (birth >= 0 && born === "") out.push({ row, at: birth, trouble: "no-date" });
    if (born !== "" && !mayBeDate(born, dates)) out.push({ row, at: birth, trouble: "no-such-day" });
    if (squad >= 0 && (cells[squad] ?? "").trim() === "") out.push({ row, at: squad, trouble: "no-squad" });
    const key = `${name.toLowerCase()} ${born}`;
    const first = known.get(key);
    if (name !== "" && first !== undefined) out.push({ row, trouble: "twice", first });
    if (first === undefined) known.set(key, row);
    return out;
  });
}

const kHeadingLines = 2; // of roster.csv as it is sent: rows begin on its second line

// The server's, by the line and the heading of the list that was sent.
export function toldFaults(faults: OfRoster[], columns: (Column | "")[]): RowFault[] {
  return faults.flatMap((told) => {
    if (told.line === undefined || told.line < kHeadingLines) return [];
    const column = (Object.keys(kHeadings) as Column[]).find((one) => kHeadings[one] === told.field);
    const at = column === undefined ? -1 : columns.indexOf(column);
    return [{ row: told.line - kHeadingLines, trouble: "told" as const, told, ...(at >= 0 ? { at } : {}) }];
  });
}
