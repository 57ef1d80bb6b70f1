// Says a line aloud where the phone can; what is said stands on the screen as well.
export function speak(text: string, language: string): void {
  if (!("speechSynthesis" in window)) return;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(text);
  said.lang = language;
  speechSynthesis.speak(said);
}

export function hush(): void {
  if ("speechSynthesis" in window) speechSynthesis.cancel();
}

export function buzz(pattern: number | number[]): void {
  if ("vibrate" in navigator) navigator.vibrate(pattern);
}
