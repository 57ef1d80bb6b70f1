// Sealing what lies on the phone: AES-GCM with 256 bits and a fresh random nonce of 96 for each text (NIST SP 800-38D,
// 8.2.2). What a text is about goes in with it, so that none opens in another's place.

export type KeyName = "device" | "people";
type Bytes = Uint8Array<ArrayBuffer>;

export interface Sealed {
  how: "A256GCM";
  key: KeyName;
  nonce: Bytes;
  bytes: Bytes;
}

const kNonceBytes = 12;

const about = (key: KeyName, what: string): Bytes => new TextEncoder().encode(`lanework ${key} ${what}`);

// what: where the text lies, 'entry 17'.
export async function seal(name: KeyName, key: CryptoKey, what: string, value: unknown): Promise<Sealed> {
  const nonce = crypto.getRandomValues(new Uint8Array(kNonceBytes));
  const text = new TextEncoder().encode(JSON.stringify(value));
  const bytes = await crypto.subtle.encrypt({ name: "AES-GCM", iv: nonce, additionalData: about(name, what) }, key, text);
  return { how: "A256GCM", key: name, nonce, bytes: new Uint8Array(bytes) };
}

// Throws where it was changed, is another's, or was sealed under another key.
export async function open(key: CryptoKey, what: string, sealed: Sealed): Promise<unknown> {
  const text = await crypto.subtle.decrypt({ name: "AES-GCM", iv: sealed.nonce, additionalData: about(sealed.key, what) }, key, sealed.bytes);
  return JSON.parse(new TextDecoder().decode(text)) as unknown;
}

export function newKey(extractable: boolean): Promise<CryptoKey> {
  return crypto.subtle.generateKey({ name: "AES-GCM", length: 256 }, extractable, ["encrypt", "decrypt"]);
}

export function keyOf(raw: BufferSource): Promise<CryptoKey> {
  return crypto.subtle.importKey("raw", raw, "AES-GCM", false, ["encrypt", "decrypt"]);
}
