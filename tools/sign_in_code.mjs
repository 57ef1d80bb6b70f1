// What somebody of the demo that ./run serves types to sign in at the desk: name, password, and the code of this moment.
// usage: node tools/sign_in_code.mjs DEMO.ENV [lead | board | operator]
import { Authenticator } from "./authenticator.mjs";
import { Mistake, secretsOf } from "./demo_secrets.mjs";

const kUsage = "usage: node tools/sign_in_code.mjs DEMO.ENV [lead | board | operator]";

try {
  const [file, role = "lead", ...more] = process.argv.slice(2);
  if (!file || more.length > 0 || !/^[a-z]+$/.test(role)) throw new Mistake(`found ${process.argv.length - 2} words, expected a file and a role (${kUsage})`);
  const secrets = secretsOf(file, role);
  const code = await new Authenticator(secrets[`${role.toUpperCase()}_SECOND`]).next();
  console.log(`name      ${role}\npassword  ${secrets[`${role.toUpperCase()}_PASSWORD`]}\ncode      ${code} (good for half a minute, once)`);
} catch (error) {
  if (!(error instanceof Mistake)) throw error;
  console.error(`sign_in_code: ${error.message}`);
  process.exit(2);
}
