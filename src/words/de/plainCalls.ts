// What each function computes, as a German noun phrase: the noun, and what follows it. `{gen 1}` is the first operand in the
// genitive (`nom`, `acc`, `dat` likewise), `{at 2}` a moment as the time at which something is, `{in 1}` a tank with its `in`,
// `{where 1}` a column of oxygen without its noun, which the head says already.
import { noun, type Noun } from './grammar.ts';

export type GermanCall =
  | { readonly head: Noun; readonly rest: string } | { readonly plural: string; readonly rest: string }
  /** The first operand, and something after it. */
  | { readonly tail: string }
  /** A statement. */
  | { readonly clause: string };

const moment = noun('Zeitpunkt', 'der', { genitive: 'Zeitpunkts' });
const stretch = noun('Zeitraum', 'der');
const value = (adjective: string): Noun => noun('Wert', 'der', { adjective });
const reading = (adjective: string): Noun => noun('Messwert', 'der', { adjective });
const beyond = ' {gen 1}{window} gegenüber der Ausgangsphase, in den Behandlungsbecken über die in den Vergleichsbecken hinaus';

/** By function; `of tank` and the like where the operands ask for other words. A test holds that none is missing. */
export const calls: Readonly<Record<string, GermanCall>> = {
  at: { tail: ' {at 2}' },
  interpolate: { tail: ' {at 2}, abgelesen auf der Geraden zwischen zwei Messwerten' },
  first: { head: reading('erst'), rest: ' {gen 1}{window}' },
  last: { head: reading('letzt'), rest: ' {gen 1}{window}' },
  count: { head: noun('Zahl', 'die'), rest: ' der Messwerte {gen 1}{window}' },
  'count of condition': { head: noun('Zahl', 'die'), rest: ' der Messwerte{window}, bei denen gilt: {nom 1}' },
  missing: { head: noun('Zahl', 'die'), rest: ' der ausgefallenen Ablesungen {gen 1}{window}' },
  min: { head: value('tiefst'), rest: ' {gen 1}{window}' },
  max: { head: value('höchst'), rest: ' {gen 1}{window}' },
  mean: { head: noun('Mittel', 'das'), rest: ' {gen 1}{window}' },
  median: { head: noun('Median', 'der'), rest: ' {gen 1}{window}' },
  sd: { head: noun('Standardabweichung', 'die'), rest: ' {gen 1}{window}' },
  range: { head: noun('Spanne', 'die'), rest: ' {gen 1}{window}' },
  'time-of-min': { head: moment, rest: ' des tiefsten Werts {gen 1}{window}' },
  'time-of-max': { head: moment, rest: ' des höchsten Werts {gen 1}{window}' },
  all: { clause: '{nom 1}, bei jedem Messwert{window}' },
  any: { clause: '{nom 1}, bei mindestens einem Messwert{window}' },
  change: { head: noun('Änderung', 'die'), rest: ' {gen 1}{window}' },
  rise: { head: noun('Anstieg', 'der'), rest: ' {gen 1}{window}' },
  fall: { head: noun('Abfall', 'der'), rest: ' {gen 1}{window}' },
  'percent-change': { head: noun('Änderung', 'die', { adjective: 'prozentual' }), rest: ' {gen 1}{window}' },
  'percent-rise': { head: noun('Anstieg', 'der', { adjective: 'prozentual' }), rest: ' {gen 1}{window}' },
  'percent-fall': { head: noun('Abfall', 'der', { adjective: 'prozentual' }), rest: ' {gen 1}{window}' },
  rate: { head: noun('Änderung', 'die', { adjective: 'stündlich' }), rest: ' {gen 1}{window}' },
  'rate of fall': { head: noun('Abfall', 'der', { adjective: 'stündlich' }), rest: ' {gen 1}{window}' },
  slope: { head: noun('Steigung', 'die'), rest: ' der Ausgleichsgeraden durch die Messwerte {gen 1}{window}' },
  'robust-slope': { head: noun('Mediansteigung', 'die'), rest: ' {gen 1}{window}' },
  'steepest-fall': { head: noun('Abfall', 'der', { adjective: 'steilst' }), rest: ' {gen 1} je Stunde{window}{over}' },
  'steepest-rise': { head: noun('Anstieg', 'der', { adjective: 'steilst' }), rest: ' {gen 1} je Stunde{window}{over}' },
  'time-of-steepest-fall': { head: stretch, rest: ' des steilsten Abfalls {gen 1}{window}{over}' },
  'time-of-steepest-rise': { head: stretch, rest: ' des steilsten Anstiegs {gen 1}{window}{over}' },
  steps: { plural: 'Änderungen', rest: ' {gen 1}{window}{every}' },
  'percent-steps': { plural: 'Änderungen', rest: ' {gen 1} in Prozent{window}{every}' },
  'first-below': { head: moment, rest: ' des ersten Messwerts {gen 1} unter {dat 2}{window}' },
  'first-above': { head: moment, rest: ' des ersten Messwerts {gen 1} über {dat 2}{window}' },
  'hours-below': { head: noun('Dauer', 'die'), rest: ', für die {nom 1}{window} unter {dat 2} lag' },
  'hours-above': { head: noun('Dauer', 'die'), rest: ', für die {nom 1}{window} über {dat 2} lag' },
  settled: { head: moment, rest: ', ab dem {nom 1}{window} für {for} innerhalb von {within} blieb' },
  'turning-point': { head: moment, rest: ', zu dem {nom 1}{window} wieder zu steigen begann' },
  difference: { head: noun('Differenz', 'die'), rest: ' aus {dat 1} und {dat 2}{window}' },
  'percent-difference': { head: noun('Unterschied', 'der'), rest: ' zwischen {dat 1} und {dat 2} in Prozent des zweiten Werts{window}' },
  contrast: { head: noun('Änderung', 'die'), rest: beyond },
  'permutation-p': { head: noun('Permutations-p', 'das', { adjective: 'exakt' }), rest: ` der Änderung${beyond}` },
  resolved: { clause: '{nom 1} ist größer als die Messunsicherheit' },
  'gap-explained': { head: noun('Teil', 'der'), rest: ' des Unterschieds zwischen {dat 1} und {dat 2}{window}, den Temperatur, Druck und Salzgehalt erklären' },
  'gap-left': { head: noun('Unterschied', 'der'), rest: ' zwischen {dat 1} und {dat 2}{window}, den Temperatur, Druck und Salzgehalt nicht erklären' },
  solubility: { head: noun('Sauerstofflöslichkeit', 'die'), rest: ' bei {dat 1} und {dat 2}' },
  'solubility of tank': { head: noun('Sauerstofflöslichkeit', 'die'), rest: ' {in 1}' },
  saturation: { head: noun('Sauerstoffsättigung', 'die'), rest: ' {where 1}{window}' },
  deficit: { head: noun('Sättigungsdefizit', 'das'), rest: ' {where 1}{window}' },
  respiration: { head: noun('Atmung', 'die'), rest: ' nach {dat 1}{window}' },
  reaeration: { head: noun('Oberflächenaustausch', 'der'), rest: ' nach {dat 1}{window}' },
  'balance-point': { head: moment, rest: ', zu dem die Erzeugung nach {dat 1}{window} die Atmung erreichte' },
  'time-to': { head: noun('Zeit', 'die'), rest: ', die {nom 1}{window} brauchen würde, um {acc 2} zu erreichen' },
  'predicted-min': { head: noun('Sauerstoffgehalt', 'der', { adjective: 'tiefst' }), rest: ', vorhergesagt aus {dat 1}{window}{dark}{exchange}{stocking}' },
  'predicted-hours-below': { head: noun('Zeit', 'die'), rest: ' unter {dat 2}, vorhergesagt aus {dat 1}{window}{dark}{exchange}{stocking}' },
  'un-ionised-ammonia': { head: noun('Ammoniakgehalt', 'der'), rest: ' {in 1}' },
  'carbon-dioxide': { head: noun('Kohlendioxidgehalt', 'der'), rest: ' {in 1}' },
  salinity: { head: noun('Salzgehalt', 'der'), rest: ' {in 1}' },
  volume: { head: noun('Wasservolumen', 'das'), rest: ' {gen 1}' },
  length: { head: noun('Länge', 'die'), rest: ' {gen 1}' },
  width: { head: noun('Breite', 'die'), rest: ' {gen 1}' },
  height: { head: noun('Höhe', 'die'), rest: ' {gen 1}' },
  duration: { head: noun('Dauer', 'die'), rest: ' {gen 1}' },
  abs: { head: noun('Betrag', 'der'), rest: ' {gen 1}' },
  sqrt: { head: noun('Quadratwurzel', 'die'), rest: ' aus {dat 1}' },
  ln: { head: noun('Logarithmus', 'der', { adjective: 'natürlich', genitive: 'Logarithmus' }), rest: ' {gen 1}' },
  round: { tail: ', gerundet' },
};
