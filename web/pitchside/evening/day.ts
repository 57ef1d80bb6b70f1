// Today as the phone's own clock and place have it: '2026-11-27', as a package names its evenings.
const two = (number: number): string => String(number).padStart(2, "0");
export const dayOf = (now: Date): string => `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
