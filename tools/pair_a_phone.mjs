// Pairs a coach's phone with the demo that ./run serves: signs in as the lead, opens a link, and confirms the six digits
// that the phone shows.
// usage: node tools/pair_a_phone.mjs DEMO.ENV [--server http://127.0.0.1:8765] [--of coach]
import { createInterface } from "node:readline/promises";
import { parseArgs } from "node:util";
import { Authenticator } from "./authenticator.mjs";
import { Mistake, secretsOf } from "./demo_secrets.mjs";

const kUsage = "usage: node tools/pair_a_phone.mjs DEMO.ENV [--server http://127.0.0.1:8765] [--of coach]";

const kCodesOnTheirWay = 3; // that the server takes at any moment

class Lead {
  constructor(server) {
    this.server = server;
  }

  async ask(method, path, body) {
    const headers = { "content-type": "application/json", "lanework-request": "1", ...(this.cookie && { cookie: this.cookie }) };
    const answer = await fetch(`${this.server}/api/${path}`, { method, headers, body: body && JSON.stringify(body) }).catch(() => {
      throw new Mistake(`${this.server}: found nobody who answers, expected the server of ./run`);
    });
    const cookie = answer.headers.get("set-cookie");
    if (cookie) this.cookie = cookie.split(";")[0];
    return { status: answer.status, said: await answer.json().catch(() => ({})) };
  }

  // A code is good once: somebody who signed in a moment ago has used the one of now.
  async signIn({ LEAD_PASSWORD: password, LEAD_SECOND: second }) {
    const authenticator = new Authenticator(second);
    for (let tries = 0; tries < kCodesOnTheirWay; tries++) {
      const { status, said } = await this.ask("POST", "sign-in", { sign_in: "lead", password, code: await authenticator.next() });
      if (status < 300) return;
      if (said.error === "too-many-tries") throw new Mistake("found too many tries from here; wait a minute and start again");
      if (said.error !== "second-factor-wrong") break;
    }
    throw new Mistake("found nobody who may sign in as the lead, expected the demo.env of the server that runs");
  }

  async must(method, path, body) {
    const { status, said } = await this.ask(method, path, body);
    if (status >= 300) throw new Mistake(`${this.server}/api/${path}: found ${status} ${said.error ?? ""}, expected it to be done`);
    return said;
  }
}

async function pair() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { server: { type: "string", default: "http://127.0.0.1:8765" }, of: { type: "string", default: "coach" } },
  });
  if (positionals.length !== 1) throw new Mistake(kUsage);
  const secrets = secretsOf(positionals[0]);
  const lead = new Lead(values.server);
  await lead.signIn(secrets);
  const { accounts } = await lead.must("GET", "accounts");
  const owner = accounts.find((one) => one.sign_in === values.of);
  if (!owner) throw new Mistake(`--of: found '${values.of}', expected one of ${accounts.map((one) => one.sign_in).join(", ")}`);
  const { link, pairing } = await lead.must("POST", "pairings", { account: owner.account });
  console.log(`Open this on the phone, within ten minutes, once:\n\n  ${values.server}/#pair=${link}\n`);
  const asked = createInterface({ input: process.stdin, output: process.stdout });
  try {
    const code = (await asked.question("The six digits that the phone shows: ")).replace(/\D/g, "");
    const { status, said } = await lead.ask("POST", `pairings/${pairing}/confirm`, { code });
    if (status >= 300) throw new Mistake(`found ${code || "nothing"}, expected the digits of this link's phone (${said.what ?? status}); start again`);
  } finally {
    asked.close();
  }
  console.log("Paired. The phone fetches its squads and needs no signal from then on.");
}

try {
  await pair();
} catch (error) {
  if (!(error instanceof Mistake) && !String(error.code).startsWith("ERR_PARSE_ARGS")) throw error;
  console.error(error.message);
  process.exitCode = 2;
}
