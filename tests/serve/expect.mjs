// What a test says when something is not as it should be; an empty text where it is.
import { randomBytes } from "node:crypto";

export const all = (...checks) => checks.flat().find((check) => check !== "") ?? "";

export function is(answer, status, key) {
  if (answer.status === status && (key === undefined || answer.json?.error === key)) return "";
  return `${answer.status} ${answer.text.slice(0, 300)}, not ${status} ${key ?? ""}\n${new Error().stack.split("\n")[2].trim()}`;
}

export const that = (holds, what) => (holds ? "" : `${what}\n${new Error().stack.split("\n")[2].trim()}`);

export const kDay = new Intl.DateTimeFormat("sv", { timeZone: "Europe/Berlin" }).format(new Date());
export const kSession = { squad: "u13-kestrels", day: kDay, start: "18:00" };

let made = 0;

// RFC 9562, version 7.
export function entryId() {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(Date.now(), 0, 6);
  bytes[6] = 0x70 | (bytes[6] & 15);
  bytes[8] = 0x80 | (bytes[8] & 63);
  return bytes.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

export function entry(kind, fields = {}) {
  return { id: entryId(), sequence: 100000 + ++made, device_time: new Date(Date.now() - 1000).toISOString(), kind, ...fields };
}

export const wrapUp = (fields = {}) => entry("wrap-up", { ...kSession, happened: "held", ...fields });
