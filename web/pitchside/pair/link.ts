// The link that pairs: its secret stands behind the '#', which no browser sends anywhere, and leaves the address at once.

const kPair = /(?:^|#)pair=([A-Za-z0-9_-]{16,128})$/;

// Also of a link that was pasted whole; or of the secret alone.
export function secretIn(text: string): string | undefined {
  const trimmed = text.trim();
  return kPair.exec(trimmed)?.[1] ?? /^[A-Za-z0-9_-]{43}$/.exec(trimmed)?.[0];
}

export function takeSecret(place: Location, history: History): string | undefined {
  if (!place.hash.startsWith("#pair=")) return undefined;
  const secret = secretIn(place.hash);
  history.replaceState(null, "", place.pathname + place.search);
  return secret;
}
