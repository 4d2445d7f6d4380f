// Numbers, times and durations in prose: what is read, in which unit, and what is left alone.
import assert from 'node:assert/strict';
import { readMentions } from '../../../src/claims/readMentions.ts';
import type { AnyMention } from '../../../src/claims/mentions.ts';

/** A mention as one short text, so that a whole sentence reads at a glance. */
function brief(mention: AnyMention): string {
  const marks = `${mention.approximate ? '~' : ''}${mention.bound ?? ''}`;
  const join = mention.joinedToNext ? '..' : '';
  switch (mention.kind) {
    case 'number': return `${marks}${mention.sign === '' ? '' : `${mention.sign}:`}${mention.value} d${mention.decimals}${mention.unit ? ` ${mention.unit.symbol}` : ''}${mention.halfWidth ? ` ±${mention.halfWidth.value}` : ''}${join}`;
    case 'clock': return `${marks}${mention.hour}:${String(mention.minute).padStart(2, '0')}${mention.second === null ? '' : `:${mention.second}`}${mention.date ? ` on ${mention.date.day}.${mention.date.month}` : ''}${join}`;
    case 'date': return `${mention.year ?? ''}-${mention.month}-${mention.day}`;
    case 'duration': return `${marks}${mention.duration / 60000} min step ${mention.step / 60000}${join}`;
    case 'unclear': return `unclear ${mention.text} -> ${mention.suggestion}`;
  }
}
const read = (words: string, language = 'en', names: readonly string[] = []): string[] => readMentions(words, { language, names }).map(brief);

suite('claims: numbers in words', () => {
  const cases: readonly (readonly [string, readonly string[]])[] = [
    ['6.44 mg/L', ['6.44 d2 mg/L']],
    ['tank 2 fell 0.24 mg/L', ['2 d0', '0.24 d2 mg/L']],
    ['tank2 held 8.1 mg/l of O2', ['8.1 d1 mg/L']],
    ['CO2, NO3 and H2O', []],
    ['5.83 mg L⁻¹, 5.83 mg·L⁻¹ and 5.83 mg l-1', ['5.83 d2 mg/L', '5.83 d2 mg/L', '5.83 d2 mg/L']],
    ['0.3 mg L⁻¹ h⁻¹', ['0.3 d1 mg/L/h']],
    ['5.83 mg O2/L and 6 mg O₂ L⁻¹', ['5.83 d2 mg/L', '6 d0 mg/L']],
    ['24.3 ℃', ['24.3 d1 degC']],
    ['1\u200B5.83 mg/L', ['1 d0']],
    ['１5.83 mg/L', []],
    ['5.83１ mg/L', []],
    ['²5.83 mg/L', []],
    ['24.9°C', ['24.9 d1 degC']],
    ['24.9 °C (76.8 °F)', ['24.9 d1 degC', '76.8 d1 degF']],
    ['25.4 degrees Celsius', ['25.4 d1 degC']],
    ['1009.4 hectopascal', ['1009.4 d1 hPa']],
    ['1009.4 hectopascals', ['1009.4 d1 hPa']],
    ['0.24 milligrams per litre', ['0.24 d2 mg/L']],
    ['12 inches', ['12 d0 in']],
    ['2.5 to 4.9 %/h', ['2.5 d1 %/h..', '4.9 d1 %/h']],
    ['2.5–4.9 %/h', ['2.5 d1 %/h..', '4.9 d1 %/h']],
    ['2–3 mg/L', ['2 d0 mg/L..', '3 d0 mg/L']],
    ['2-3 mg/L', ['2 d0 mg/L..', '3 d0 mg/L']],
    ['2 – 3 mg/L', ['2 d0 mg/L..', '3 d0 mg/L']],
    ['between 2.5 and 4.9 % per hour', ['2.5 d1 %/h..', '4.9 d1 %/h']],
    ['from 2.5 %/h to 4.9 %/h', ['2.5 d1 %/h..', '4.9 d1 %/h']],
    ['2.9 percent', ['2.9 d1 %']],
    ['2.9 per cent', ['2.9 d1 %']],
    ['2.9 percentage points', ['2.9 d1 pp']],
    ['2.9 pp', ['2.9 d1 pp']],
    ['−0.24 mg/L', ['−:-0.24 d2 mg/L']],
    ['-0.24 mg/L', ['-:-0.24 d2 mg/L']],
    ['changed by -0.24 mg/L', ['-:-0.24 d2 mg/L']],
    ['+0.24 mg/L', ['+:0.24 d2 mg/L']],
    ['(−0.24 mg/L)', ['−:-0.24 d2 mg/L']],
    ['about 6.4 mg/L', ['~6.4 d1 mg/L']],
    ['~6.4 mg/L', ['~6.4 d1 mg/L']],
    ['nearly 10 %', ['~10 d0 %']],
    ['around 06:30', ['~6:30']],
    ['at about 6:30 am', ['~6:30']],
    ['6:30 pm', ['18:30']],
    ['6 am', ['6:00']],
    ['at noon', ['12:00']],
    ['06:30:15', ['6:30:15']],
    ['22:00–06:30', ['22:00..', '6:30']],
    ['9 h 30 min', ['570 min step 1']],
    ['9h30', ['570 min step 1']],
    ['9 hours and 30 minutes', ['570 min step 1']],
    ['30 min', ['30 d0 min']],
    ['30min', ['30 d0 min']],
    ['half an hour', ['0.5 d1 h']],
    ['an hour', ['1 d0 h']],
    ['a quarter of an hour', ['0.25 d2 h']],
    ['two and a half hours', ['2.5 d1 h']],
    ['an hour and a half', ['1.5 d1 h']],
    ['two tanks', ['2 d0']],
    ['twice', ['2 d0']],
    ['2026-03-15', ['2026-3-15']],
    ['2026-03-15 06:30', ['6:30 on 15.3']],
    ['2026-03-15T06:30', ['6:30 on 15.3']],
    ['15 March at 06:30', ['-3-15', '6:30']],
    ['March 15, 2026', ['2026-3-15']],
    ['6.44 ± 0.12 mg/L', ['6.44 d2 mg/L ±0.12']],
    ['6.44 mg/L ± 0.12 mg/L', ['6.44 d2 mg/L ±0.12']],
    ['(6.44 ± 0.12) mg/L', ['6.44 d2 mg/L ±0.12']],
    ['6.44 mg/L (± 0.12 mg/L)', ['6.44 d2 mg/L ±0.12']],
    ['6.44 +/- 0.12 mg/L', ['6.44 d2 mg/L ±0.12']],
    ['0.48 mg/L per hour', ['0.48 d2 mg/L/h']],
    ['0.48 mg/L an hour', ['0.48 d2 mg/L/h']],
    ['0.8 °C per hour', ['0.8 d1 K/h']],
    ['a 2-hour window', ['2 d0 h']],
    ['mat-2 and dark-1', []],
    ['the 2nd night', []],
    ['pH 7.2', ['7.2 d1 pH']],
    ['a pH of 7.2', ['7.2 d1 pH']],
    ['**6.44** mg/L', ['6.44 d2 mg/L']],
    ['[6.44 mg/L](figure-2.html)', ['6.44 d2 mg/L']],
    ['6.44&nbsp;mg/L', ['6.44 d2 mg/L']],
    ['6.44\u00a0mg/L', ['6.44 d2 mg/L']],
    ['6.44\nmg/L', ['6.44 d2 mg/L']],
    ['CO<sub>2</sub> at 12 mg/L', ['12 d0 mg/L']],
    ['17 in all', ['17 d0']],
    ['more than 3 mg/L', ['above3 d0 mg/L']],
    ['under 3 mg/L', ['below3 d0 mg/L']],
    ['1,009 hPa', ['1009 d0 hPa']],
    ['1,009.4 hPa', ['1009.4 d1 hPa']],
    ['7,31 mg/L', ['unclear 7,31 -> 7.31']],
    ['1.5 × 10^-3 mol/L', ['0.0015 d4 mol/L']],
    ['½ hour', ['0.5 d1 h']],
    ['1½ hours', ['1.5 d1 h']],
    ['15.03.2026', ['unclear 15.03.2026 -> ']],
    ['1/2 of them', []],
  ];
  for (const [words, expected] of cases) test(JSON.stringify(words), () => assert.deepEqual(read(words), expected));

  test('a comma is the decimal mark in Dutch and German, a point groups thousands there', () => {
    assert.deepEqual(read('7,31 mg/L', 'nl'), ['7.31 d2 mg/L']);
    assert.deepEqual(read('1.009,4 hPa', 'de'), ['1009.4 d1 hPa']);
    assert.deepEqual(read('7.31 mg/L', 'de'), ['unclear 7.31 -> 7,31']);
    assert.deepEqual(read('2,5–4,9 %', 'fr'), ['2.5 d1 %..', '4.9 d1 %']);
  });

  test('labels of tanks with numbers in them are no numbers', () => {
    assert.deepEqual(read('tank 2 fell 0.24 mg/L', 'en', ['tank 2']), ['0.24 d2 mg/L']);
  });
});
