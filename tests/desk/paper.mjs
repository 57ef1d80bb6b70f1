// A screen as it comes out of a printer: A4 by the browser itself, its text page by page, and what is wrong with it.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const kPictures = process.env.LANEWORK_PICTURES; // the PDF is kept there too

const kMostBytes = 1_500_000; // the report of a whole season is 1.1 million

// Drawings stay drawings in print: a fill that the browser cannot write as a shape becomes a picture of a megabyte.
// Those within patterns, too, which pdfimages passes over.
export function weightFault(pdf) {
  const pictures = pdf.toString("latin1").split("/Subtype /Image").length - 1;
  return pdf.length > kMostBytes || pictures > 0 ? `printed it is ${pdf.length} bytes, with ${pictures} pictures in it` : "";
}

// The text of each page; its foot is the last line.
export async function printedPages(page, name) {
  const pdf = await page.pdf({ format: "A4" });
  const folder = mkdtempSync(join(tmpdir(), "lanework-paper-"));
  const file = join(folder, "page.pdf");
  writeFileSync(file, pdf);
  if (kPictures) writeFileSync(join(kPictures, `desk-${name}.pdf`), pdf);
  const fault = weightFault(pdf);
  if (fault) throw new Error(`${name}: ${fault}`);
  const text = execFileSync("pdftotext", ["-layout", file, "-"]).toString("utf8");
  rmSync(folder, { recursive: true });
  return text.split("\f").slice(0, -1).map((one) => one.split("\n").map((line) => line.trim()).filter((line) => line !== ""));
}

// Each page says of what it is and its number, and none ends with a heading.
export function paperFaults(pages, { foot, numbered, headings }) {
  const out = [];
  pages.forEach((lines, at) => {
    const last = lines.at(-1) ?? "";
    if (!last.includes(foot) || !last.endsWith(numbered(at + 1, pages.length))) out.push(`page ${at + 1} ends with '${last}'`);
    const before = lines.at(-2) ?? "";
    if (headings.includes(before)) out.push(`page ${at + 1}: the heading '${before}' stands alone at its end`);
  });
  return out.join("; ");
}
