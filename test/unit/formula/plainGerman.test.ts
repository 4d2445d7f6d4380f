// Formulas in plain German: every function has its phrase, and phrases stand in the case that their sentence asks for.
import assert from 'node:assert/strict';
import { functions } from '../../../src/formula/catalogue.ts';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { plainWords } from '../../../src/formula/plainWords.ts';
import { calls } from '../../../src/words/de/plainCalls.ts';
import { contextFrom } from './support.ts';

const german = exampleNote.replace('question:', 'language: de\nquestion:').replace('floating-mat tank', 'Mattenbecken').replace('open-surface tank', 'offenes Becken');
const example = contextFrom(german, { 'first-loss': 'percent-fall(mat.DO, 22:00..23:00)' });

suite('plain German', () => {
  test('every function has a phrase, and no other name has', () => {
    assert.deepEqual(Object.keys(calls).filter((name) => !name.includes(' ')).sort(), functions.map((each) => each.name).sort());
    for (const entry of functions) {
      const ofTank = entry.signatures.length > 1 && entry.signatures.some((each) => each.words !== undefined && each.parameters[0]?.type === 'tank');
      assert.equal(calls[`${entry.name} of tank`] !== undefined, ofTank, entry.name);
    }
  });

  for (const entry of functions) {
    test(`${entry.name}: reads as words`, () => {
      const words = plainWords(entry.example.formula, example);
      assert.doesNotMatch(words, /[{}()]|undefined|\s\s|mat\.|open\.|\b(?:the|of|and|in the|is|at)\b/u);
    });
  }

  const cases: [string, string][] = [
    ['rate(mat.DO, light-off..23:00) < rate(open.DO, light-off..23:00)', 'der Sauerstoffgehalt im Mattenbecken fiel zwischen Licht aus und 23:00 Uhr schneller als der im offenen Becken'],
    ['all(mat.T >= open.T, 21:00..end)', 'die Wassertemperatur im Mattenbecken ist mindestens die im offenen Becken, bei jedem Messwert zwischen 21:00 Uhr und dem Ende'],
    ['min(mat.DO) > 3.5 mg/L', 'der tiefste Wert des Sauerstoffgehalts im Mattenbecken ist größer als 3,5 mg/L'],
    ['mean(mat.DO) < mean(open.DO)', 'das Mittel des Sauerstoffgehalts im Mattenbecken ist kleiner als das im offenen Becken'],
    ['abs(mat.T - open.T) <= 0.5 degC', 'der Unterschied zwischen der Wassertemperatur im Mattenbecken und der Wassertemperatur im offenen Becken ist höchstens 0,5 °C'],
    ['time-of-min(mat.DO) > light-off', 'der Zeitpunkt des tiefsten Werts des Sauerstoffgehalts im Mattenbecken liegt nach Licht aus'],
    ['first-loss', 'der prozentuale Abfall des Sauerstoffgehalts im Mattenbecken zwischen 22:00 und 23:00 Uhr'],
    ['mean(steps(mat.DO, dark, every 2 h))', 'das Mittel der Änderungen des Sauerstoffgehalts im Mattenbecken während der Dunkelphase in Schritten von 2 h'],
    ['turning-point(mat.DO)', 'der Zeitpunkt, zu dem der Sauerstoffgehalt im Mattenbecken wieder zu steigen begann'],
    ['hours-below(mat.DO, 6 mg/L) > 2 h', 'die Dauer, für die der Sauerstoffgehalt im Mattenbecken unter 6 mg/L lag, ist größer als 2 h'],
    ['predicted-min(mat.DO, dark, dark 12 h, stocking 0.5)', 'der tiefste Sauerstoffgehalt, vorhergesagt aus dem Sauerstoffgehalt im Mattenbecken während der Dunkelphase, bei 12 h Dunkelheit, beim 0,5-Fachen der Atmung'],
    ['solubility(mat)', 'die Sauerstofflöslichkeit im Mattenbecken'],
    ['not resolved(change(mat.DO))', 'die Änderung des Sauerstoffgehalts im Mattenbecken ist nicht größer als die Messunsicherheit'],
    ['not (mat.DO < open.DO)', 'der Sauerstoffgehalt im Mattenbecken ist nicht kleiner als der im offenen Becken'],
    ['not (topped-up > light-off)', 'das Ereignis „1 L of water added“ liegt nicht nach Licht aus'],
    ['not any(mat.behaviour == gasping)', 'es gilt nicht: das Verhalten im Mattenbecken ist „gasping“, bei mindestens einem Messwert'],
    ['-rate(mat.DO, 22:00..00:00)', 'der stündliche Abfall des Sauerstoffgehalts im Mattenbecken zwischen 22:00 und 00:00 Uhr'],
    ['at(mat.DO, light-off + 1 h)', 'der Sauerstoffgehalt im Mattenbecken 1 h nach Licht aus'],
    ['at(mat.DO, start)', 'der Sauerstoffgehalt im Mattenbecken zu Beginn'],
    ['at(mat.DO, time-of-min(open.DO))', 'der Sauerstoffgehalt im Mattenbecken zum Zeitpunkt des tiefsten Werts des Sauerstoffgehalts im offenen Becken'],
    ['mat.DO > 5 mg/L and mat.T < 26 degC', 'der Sauerstoffgehalt im Mattenbecken ist größer als 5 mg/L, und die Wassertemperatur im Mattenbecken ist kleiner als 26 °C'],
  ];
  for (const [formula, expected] of cases) test(formula, () => assert.equal(plainWords(formula, example), expected));
});
