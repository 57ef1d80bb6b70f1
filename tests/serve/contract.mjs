// Every answer against schema/openapi.yaml: status, content type, headers, body; and on every answer whatsoever the
// house's headers. What is seen is kept, so that what was described and never seen can be told.
import Ajv from "ajv/dist/2020.js";
import { operations, readOpenapi, resolved } from "../../tools/openapi.mjs";

const kHouse = {
  "content-security-policy": "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'; object-src 'none'",
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-embedder-policy": "require-corp",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy": "camera=(self), microphone=(), geolocation=(), payment=(), usb=()",
};
const kDate = /^(Sun|Mon|Tue|Wed|Thu|Fri|Sat), \d{2} [A-Z][a-z]{2} \d{4} \d{2}:\d{2}:\d{2} GMT$/;  // RFC 9110, 5.6.7
const kMostMillisecondsAgo = 120000;
const kStrictTransport = "max-age=63072000; includeSubDomains";
const kTypes = { "application/json": "application/json; charset=utf-8", "text/plain": "text/plain; version=0.0.4; charset=utf-8", "application/zip": "application/zip", "application/pdf": "application/pdf", "text/calendar": "text/calendar; charset=utf-8" };
const kBegin = { "application/zip": "PK\u0003\u0004", "application/pdf": "%PDF-", "text/calendar": "BEGIN:VCALENDAR\r\n" };
const kOwnFiles = new Set(["/", "/index.html", "/page.css"]);

// Readers pass over keys that they do not know, so the page leaves objects open; here every key must be described.
function closed(schema) {
  if (Array.isArray(schema)) return schema.map(closed);
  if (schema === null || typeof schema !== "object") return schema;
  const out = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  return schema.type === "object" && schema.properties && schema.additionalProperties === undefined ? { ...out, additionalProperties: false } : out;
}

export class Contract {
  constructor() {
    this.page = readOpenapi();
    this.ajv = new Ajv({ allErrors: true, strict: true, strictRequired: false, strictTypes: false, validateSchema: true });
    this.ajv.addVocabulary(["example"]);
    this.parts = closed({ components: { schemas: this.page.components.schemas } });
    this.ajv.addSchema({ $id: "page", $defs: this.moved(this.parts.components.schemas) });
    this.operations = operations(this.page).map((one) => ({ ...one, pattern: new RegExp(`^${one.path.replace(/\{\w+\}/g, "[A-Za-z0-9_-][A-Za-z0-9_.-]{0,63}")}$`) }));
    this.validators = new Map();
    this.seen = new Map();
    this.faults = new Map();
    this.answers = 0;
  }

  // '#/components/schemas/X' as '#/$defs/X' of one schema.
  moved(node) {
    return JSON.parse(JSON.stringify(node).replaceAll("#/components/schemas/", "page#/$defs/"));
  }

  fits(schema, value) {
    const key = JSON.stringify(schema);
    if (!this.validators.has(key)) this.validators.set(key, this.ajv.compile(this.moved(closed(schema))));
    const validate = this.validators.get(key);
    return validate(value) ? "" : this.ajv.errorsText(validate.errors, { separator: "; " });
  }

  fault(what) {
    this.faults.set(what, (this.faults.get(what) ?? 0) + 1);
  }

  check(request, answer) {
    this.answers++;
    const path = request.path.split("?")[0];
    const at = `${request.method} ${path.length > 80 ? `${path.slice(0, 80)}...` : path}: ${answer.status}`;
    for (const what of headerFaults(request, answer, path)) this.fault(`${at}: ${what}`);
    const method = request.method === "HEAD" ? "GET" : request.method;
    if (method === "GET" && kOwnFiles.has(path) && [200, 304].includes(answer.status)) return;
    const operation = this.operations.find((one) => one.method === method && one.pattern.test(path) && !this.shadowed(one, path));
    const candidates = [[operation?.name, operation?.operation.responses[answer.status]], ["anything", this.page["x-answers-to-anything"][answer.status]]];
    const misfits = [];
    for (const [name, response] of candidates.filter(([, one]) => one)) {
      const misfit = this.misfit(resolved(this.page, response), request, answer);
      if (misfit === "") {
        const key = `${name} ${answer.status}${answer.json?.error ? ` ${answer.json.error}` : ""}`;
        this.seen.set(key, (this.seen.get(key) ?? 0) + 1);
        if (name !== "anything" && answer.status < 300) this.checkRequest(at, operation, request);
        return;
      }
      misfits.push(misfit);
    }
    this.fault(`${at}: ${misfits.length === 0 ? "not described" : misfits.join("; ")} ${answer.text.slice(0, 300)}`);
  }

  // '/api/pairings/claim' is a path of its own, not a place's value.
  shadowed(one, path) {
    return one.path.includes("{") && this.operations.some((other) => other.path === path);
  }

  misfit(response, request, answer) {
    const [type, content] = Object.entries(response.content ?? { none: {} })[0];
    if (answer.headers["content-type"] !== kTypes[type]) return `content type ${answer.headers["content-type"]}`;
    for (const [name, header] of Object.entries(response.headers ?? {})) {
      const { schema } = resolved(this.page, header);
      const value = [answer.headers[name.toLowerCase()]].flat()[0];
      const misfit = this.fits(schema, schema.type === "integer" ? Number(value) : value);
      if (misfit) return `${name}: ${misfit}`;
    }
    if (request.method === "HEAD" || type === "none") return answer.bytes.length === 0 ? "" : "a body where none is due";
    if (type === "text/plain") return "";
    if (kBegin[type]) return answer.bytes.toString("latin1").startsWith(kBegin[type]) ? "" : `no ${type}`;
    return answer.json === undefined ? "no JSON" : this.fits(content.schema, answer.json);
  }

  checkRequest(at, operation, request) {
    if (request.method !== "POST" || request.mayDiffer) return;
    const misfit = this.fits(operation.operation.requestBody.content["application/json"].schema, JSON.parse(request.body));
    if (misfit && operation.name !== "sync") this.fault(`${at}: taken, but the request is not as described: ${misfit}`);
  }

  // Each answer that the page describes: 'sync 426 update-first'.
  described() {
    const out = [];
    const add = (name, responses) => {
      for (const [status, one] of Object.entries(responses)) {
        const schema = resolved(this.page, resolved(this.page, one).content?.["application/json"]?.schema);
        const keys = schema?.properties?.error?.enum;
        if (keys) out.push(...keys.map((key) => `${name} ${status} ${key}`));
        else out.push(`${name} ${status}`);
      }
    };
    for (const { name, operation } of this.operations) add(name, operation.responses);
    add("anything", this.page["x-answers-to-anything"]);
    return out;
  }
}

export function headerFaults(request, answer, path) {
  const faults = [];
  for (const [name, value] of Object.entries(kHouse)) {
    if (answer.headers[name] !== value) faults.push(`${name}: ${answer.headers[name]}`);
  }
  const strict = answer.headers["strict-transport-security"];
  if (strict !== (request.secure ? kStrictTransport : undefined)) faults.push(`strict-transport-security: ${strict}`);
  const { date } = answer.headers;
  if (!kDate.test(date) || Math.abs(Date.now() - Date.parse(date)) > kMostMillisecondsAgo) faults.push(`date: ${date}`);
  const ofFile = kOwnFiles.has(path) && answer.status < 400;
  // A calendar may keep what it has, and asks each time whether it still is so.
  const kept = path.startsWith("/calendar/") && [200, 304].includes(answer.status) ? "private, no-cache" : "no-store";
  if (!ofFile && answer.headers["cache-control"] !== kept) faults.push(`cache-control: ${answer.headers["cache-control"]}`);
  for (const name of ["server", "x-powered-by", "access-control-allow-origin"]) {
    if (answer.headers[name] !== undefined) faults.push(`${name}: ${answer.headers[name]}`);
  }
  const names = answer.raw.filter((_, index) => index % 2 === 0).map((name) => name.toLowerCase());
  for (const name of names.filter((one, index) => names.indexOf(one) !== index)) faults.push(`${name} twice`);
  for (const cookie of answer.headers["set-cookie"] ?? []) faults.push(...cookieFaults(cookie, request.secure));
  return faults;
}

function cookieFaults(cookie, secure) {
  const [pair, ...attributes] = cookie.split("; ");
  const ends = attributes.at(-1) === "Max-Age=0";
  const wanted = ["Path=/", ...(secure ? ["Secure"] : []), "HttpOnly", "SameSite=Strict", ...(ends ? ["Max-Age=0"] : [])];
  const name = new RegExp(`^${secure ? "__Host-" : ""}lanework=${ends ? "" : "[A-Za-z0-9_-]{43}"}$`);
  const faults = [];
  if (!name.test(pair)) faults.push(`the cookie is ${pair.slice(0, 20)}...`);
  if (attributes.join() !== wanted.join()) faults.push(`the cookie has ${attributes.join("; ")}`);
  return faults;
}
