// Who may sign in to the demo that ./run serves, as its demo.env has it.
import { readFileSync } from "node:fs";

export class Mistake extends Error {}

// The roles' passwords and secrets: LEAD_PASSWORD, LEAD_SECOND, COACH_PASSWORD, ...
export function secretsOf(file, role = "lead") {
  let text;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    throw new Mistake(`${file}: found no file that can be read (${error.code}), expected the demo.env that ./run names`);
  }
  const secrets = Object.fromEntries([...text.matchAll(/^([A-Z_]+)=(.*)$/gm)].map(([, name, value]) => [name, value]));
  for (const name of [`${role.toUpperCase()}_PASSWORD`, `${role.toUpperCase()}_SECOND`]) {
    if (!secrets[name]) throw new Mistake(`${file}: found no ${name}, expected the demo.env that ./run names`);
  }
  return secrets;
}
