// The words of the pairing screen, as words/en.json has them under 'pairing'.
import type { PairingFault } from "./pairing.ts";

export interface PairingWords {
  title: string;
  how: string;
  link: string; // of the field
  go: string;
  asking: string;
  compare: string;
  code: string;
  waiting: string;
  paired: string;
  lasting: string;
  not_lasting: string;
  again: string;
  open: string;
  back: string;
  failed: Record<PairingFault, string>;
}
