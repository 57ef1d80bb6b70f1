// Names of files from what people call things: 'north-end' of 'North end', 'u13-girls-2' where one is there already.

export function idFrom(name: string, taken: string[]): string {
  const plain = name.normalize("NFKD").replace(/\p{Diacritic}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40);
  if (plain === "") return name.trim() === "" ? "" : idFrom(`squad ${taken.length + 1}`, taken);
  let id = plain;
  for (let count = 2; taken.includes(id); count++) id = `${plain}-${count}`;
  return id;
}
