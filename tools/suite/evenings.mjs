// The demo squads and the evenings on which checks of the whole program try them.
export const kSquads = ["u10-wrens", "u13-kestrels", "u16-merlins"].map((name) => `demo/quillmere/squads/${name}.toml`);

export const kEvenings = {
  usual: [],
  short: ["--minutes", "12"],
  hopeless: ["--minutes", "5"],
  "long-and-full": ["--minutes", "25", "--turnout", "22"],
  few: ["--turnout", "5", "--late", "1"],
  "one-lane": ["--lanes", "1"],
  "day-before-match": ["--days-to-match", "1", "--minutes", "17"],
  free: ["--free", "--minutes", "18"],
};

export function eveningsOfAllSquads() {
  return kSquads.flatMap((squad) => Object.entries(kEvenings).map(([evening, flags]) => ({
    name: `${squad.replace(/.*\/|\.toml/g, "")}-${evening}`,
    flags: ["--squad", squad, ...flags],
  })));
}
