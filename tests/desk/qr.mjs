// A QR code as a reader of other hands sees it (zbar): from the screen as it is shown, and from a printed page at its true
// size.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { that } from "../serve/expect.mjs";

const kPictures = process.env.LANEWORK_PICTURES;
const kDotsPerInch = 150; // a page held before a phone gives at least as much
const kLeastMillimetres = 25; // of a link's code: read from a hand's length of paper (own judgement)

// The texts of all codes in a picture, in no order.
function readPicture(file) {
  const said = execFileSync("zbarimg", ["--quiet", "--raw", "--nodbus", "-Sdisable", "-Sqrcode.enable", file]).toString("utf8");
  return said.split("\n").filter((line) => line !== "");
}

function inFolder(work) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-qr-"));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// The texts of all codes on the pages of a PDF. A page without any is no fault.
export function codesOnPaper(pdf, { dots = kDotsPerInch, name } = {}) {
  return inFolder((folder) => {
    const file = join(folder, "page.pdf");
    writeFileSync(file, pdf);
    if (kPictures && name) writeFileSync(join(kPictures, `${name}.pdf`), pdf);
    execFileSync("pdftoppm", ["-r", String(dots), "-gray", "-png", file, join(folder, "page")]);
    return readdirSync(folder).filter((one) => one.endsWith(".png")).flatMap((one) => {
      try {
        return readPicture(join(folder, one));
      } catch (error) {
        if (error.status === 4) return []; // none found
        throw error;
      }
    });
  });
}

// The page's one code says the text: on the screen, and where the page is printed.
export async function qrFault(page, text, name) {
  const drawn = page.locator("svg.qr");
  const shot = await drawn.screenshot();
  const seen = inFolder((folder) => {
    const file = join(folder, "code.png");
    writeFileSync(file, shot);
    return readPicture(file);
  });
  const pdf = await page.pdf({ format: "A4" });
  const printed = codesOnPaper(pdf, { name: `desk-${name}-paper` });
  await page.emulateMedia({ media: "print" });
  const { width } = await drawn.boundingBox();
  const cut = await page.evaluate(() => [...document.querySelectorAll("textarea")].filter((one) => {
    const beyond = one.closest("dialog")?.getBoundingClientRect().right ?? innerWidth;
    return one.scrollHeight > one.clientHeight + 1 || one.getBoundingClientRect().right > beyond;
  }).length);
  await page.emulateMedia({ media: null });
  const millimetres = (width / 96) * 25.4;
  return [
    that(seen.join() === text, `on the screen the code says '${seen}', not '${text}'`),
    that(printed.join() === text, `on paper the code says '${printed}', not '${text}'`),
    cut > 0 ? `${cut} texts are cut off on paper` : "",
    that(millimetres >= kLeastMillimetres, `${millimetres} mm wide on paper`),
  ].find((fault) => fault !== "") ?? "";
}
