// The demo club copied to a folder of its own, to be edited, and the program run on it as a user would.
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";

export class Club {
  constructor(program) {
    this.program = program;
    this.folder = mkdtempSync(join(tmpdir(), "lanework-club-"));
    cpSync("demo/quillmere", this.folder, { recursive: true });
    cpSync("catalogue", join(this.folder, "catalogue"), { recursive: true });
    this.squad = join(this.folder, "squads/u13-kestrels.toml");
    this.out = join(this.folder, "out");
  }

  path(name) {
    return join(this.folder, name);
  }

  // Exchanges a piece that must stand there.
  edit(name, piece, by) {
    const before = readFileSync(this.path(name), "utf8");
    if (!before.includes(piece)) throw new Error(`${name} has no ${piece}`);
    writeFileSync(this.path(name), before.replace(piece, () => by));
  }

  append(name, text) {
    writeFileSync(this.path(name), readFileSync(this.path(name), "utf8") + text);
  }

  run(...words) {
    const said = spawnSync(this.program, words, { encoding: "utf8", maxBuffer: 1 << 26 });
    return { status: said.status, out: said.stdout, lines: said.stderr.split("\n").filter((line) => line !== ""), err: said.stderr };
  }

  plan(...words) {
    return this.run("plan", "--squad", this.squad, "--catalogue", this.path("catalogue"), ...words);
  }

  card(...words) {
    return this.run("card", "--squad", this.squad, "--catalogue", this.path("catalogue"), "--out", this.out, ...words);
  }

  wrote() {
    return existsSync(this.out);
  }

  // A fault's line with the folder's name taken out.
  plain(line) {
    return line.split(`${this.folder}/`).join("").replaceAll("squads/../", "");
  }

  close() {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

// One case: the work gives '' when all is well, else what is wrong.
export function withClub(name, work) {
  return {
    name,
    run(program) {
      const club = new Club(program);
      try {
        return work(club) ?? "";
      } finally {
        club.close();
      }
    },
  };
}
