// How days are written here: as the phone's own list of languages has it, 'es-AR' and not just 'es'. Plain 'en' says no
// country; then the day stands before the month, as in most of the world.

export function localeFor(language: string, phone: readonly string[]): string {
  const own = phone.find((one) => one.toLowerCase().split("-")[0] === language);
  const locale = own ?? language;
  return locale.toLowerCase() === "en" ? "en-GB" : locale;
}
