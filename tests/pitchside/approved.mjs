// Pictures that somebody looked at and said are good: small grey ones in a folder, compared with what is there now, or made
// anew to be looked at again.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { halved, readBack, sideBySide, written } from "./grey_picture.mjs";

// So that Chromium draws the same on every machine.
export const kSteadyFlags = ["--no-sandbox", "--disable-gpu", "--font-render-hinting=none", "--disable-lcd-text", "--force-color-profile=srgb"];

// A pixel differs from 3 of 16 greys on, and a picture where 1 in 3000 do (22 of the smallest of the phone's). The app's own type is in the page and the picture
// at half its size, so that an edge drawn a little otherwise is less; two runs differ in no pixel, another word of seven letters in some 120.
const kLeastLevels = 3;
const kMostShare = 1 / 3000;

export class Approved {
  // where: {suite, folder, differs: where to put what differs, renew: the command that makes them anew}
  static async open(where, browser, renew = false) {
    const approved = Object.assign(new Approved(), where, { renews: renew, results: [] });
    approved.reader = await browser.newPage();
    if (renew) {
      rmSync(approved.folder, { recursive: true, force: true });
      mkdirSync(approved.folder, { recursive: true });
    }
    return approved;
  }

  async take(name, screenshot) {
    const picture = await halved(this.reader, screenshot);
    if (!this.renews) return void this.results.push(this.compared(name, picture));
    writeFileSync(join(this.folder, `${name}.png`), written(picture));
    const sizes = readdirSync(this.folder).map((file) => readFileSync(join(this.folder, file)).length);
    this.said = `${sizes.length} pictures, ${Math.round(sizes.reduce((sum, size) => sum + size, 0) / 1000)} kB, in ${this.folder}: look at each`;
  }

  compared(name, is) {
    const file = join(this.folder, `${name}.png`);
    const result = (passed, detail) => ({ name: `${this.suite}: ${name}`, passed, detail });
    if (!existsSync(file)) return result(false, `there is no ${file}; look at the screen, then: ${this.renew}`);
    const was = readBack(readFileSync(file), file);
    let differ = was.width === is.width && was.height === is.height ? 0 : is.levels.length;
    for (let at = 0; at < is.levels.length && differ < is.levels.length; at++) if (Math.abs(is.levels[at] - was.levels[at]) >= kLeastLevels) differ += 1;
    if (differ <= kMostShare * is.levels.length) return result(true, "");
    mkdirSync(this.differs, { recursive: true });
    const to = join(this.differs, `${name}.png`);
    writeFileSync(to, written(sideBySide(was, is, kLeastLevels)));
    const share = ((100 * differ) / is.levels.length).toFixed(2);
    return result(false, `${share} % of it is different (at most ${(100 * kMostShare).toFixed(2)} %): as it was, as it is and where, in ${to}. Is it meant? ${this.renew}`);
  }
}

// Of a program of its own: tells what differs, or what was made, and ends.
export function finish({ results, said }) {
  if (said) console.log(said);
  for (const { name, detail } of results.filter(({ passed }) => !passed)) console.log(`FAILED ${name}\n      ${detail}`);
  process.exit(results.every(({ passed }) => passed) ? 0 : 1);
}
