// What each slip of the search for formulas is called in German.
import type { SlipCode } from '../en/slips.ts';

export const slipWords: Readonly<Record<SlipCode, string>> = {
  'wrong-base': 'die Prozente beziehen sich auf den letzten Messwert statt auf den ersten',
  swapped: 'Anfang und Ende sind vertauscht',
  'other-tank': 'das ist das andere Becken',
  'factor-ten': 'das Komma ist verrutscht',
  'other-scale': 'das sind Grad der anderen Skala',
  'sea-level': 'mit dem Druck auf Meereshöhe gerechnet statt mit dem am Ort',
  'digits-swapped': 'zwei Ziffern sind vertauscht',
  sign: 'das Vorzeichen ist umgekehrt',
};
