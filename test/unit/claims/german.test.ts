// Claims in German notes: numbers with units in words, number words, clock times, dates, `etwa`, causes. The figures are invented.
import assert from 'node:assert/strict';
import { readMentions } from '../../../src/claims/readMentions.ts';
import { dateLike, numberLike } from '../../../src/claims/rewrite.ts';
import type { AnyMention, DateMention, NumberMention } from '../../../src/claims/mentions.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { minute } from '../../../src/time/instant.ts';
import { utc } from '../../../src/time/zone.ts';

function brief(mention: AnyMention): string {
  const mark = `${mention.approximate ? '~' : ''}${mention.bound === null ? '' : `${mention.bound} `}`;
  const tail = mention.joinedToNext ? ' –' : '';
  switch (mention.kind) {
    case 'number': return `${mark}${mention.value} ${mention.unit?.symbol ?? '-'}${mention.halfWidth ? ` ± ${mention.halfWidth.value}` : ''}${tail}`;
    case 'clock': return `${mark}${mention.hour}:${String(mention.minute).padStart(2, '0')}${mention.halfWidth ? ` ± ${mention.halfWidth.duration / minute} min` : ''}${tail}`;
    case 'date': return `${mention.day}.${mention.month}.${mention.year ?? ''}`;
    case 'duration': return `${mark}${mention.duration / minute} min`;
    case 'unclear': return `unclear ${mention.text}`;
  }
}
const read = (words: string, language = 'de'): string[] => readMentions(words, { language }).map(brief);

suite('claims in German: what is read out of words', () => {
  const cases: [string, ...string[]][] = [
    ['rund 8,2 Milligramm pro Liter', '~8.2 mg/L'],
    ['etwa 24,5 Grad Celsius', '~24.5 degC'],
    ['nach einer halben Stunde', '0.5 h'],
    ['anderthalb Stunden', '1.5 h'],
    ['zweieinhalb Stunden', '2.5 h'],
    ['eine Viertelstunde später', '0.25 h'],
    ['nach drei Viertelstunden', '0.75 h'],
    ['eine Stunde lang', '1 h'],
    ['einundzwanzig Tage', '21 d'],
    ['um 6:30 Uhr', '6:30'],
    ['um 6.30 Uhr', '6:30'],
    ['um 6 Uhr', '6:00'],
    ['um 6 Uhr 30', '6:30'],
    ['um 20 Uhr 24,3 °C', '20:00', '24.3 degC'],
    ['um 20 Uhr 24 °C', '20:00', '24 degC'],
    ['um 20 Uhr 24 war es', '20:24'],
    ['gegen Mitternacht', '0:00'],
    ['06:04 Uhr ± 20 Minuten', '6:04 ± 20 min'],
    ['am 14. März um 22 Uhr', '14.3.', '22:00'],
    ['am 15.03.2026 um 06:30', '15.3.2026', '6:30'],
    ['mehr als 6,0 mg/L', 'above 6 mg/L'],
    ['mindestens 5 mg/L', 'at-least 5 mg/L'],
    ['weniger als 3 %', 'below 3 %'],
    ['2,5 bis 4,9 %/h', '2.5 %/h –', '4.9 %/h'],
    ['zwischen 2,5 und 4,9 % pro Stunde', '2.5 %/h –', '4.9 %/h'],
    ['0,47 mg/L in der Stunde', '0.47 mg/L/h'],
    ['82 Kiemenschläge pro Minute', '82 /min'],
    ['9 Stunden und 30 Minuten', '570 min'],
    ['ein pH-Wert von 7,2', '7.2 pH'],
    ['1.013,2 Hektopascal', '1013.2 hPa'],
    ['2,9 Prozent, also 0,3 Prozentpunkte mehr', '2.9 %', '0.3 pp'],
    ['5 Milligramm je Liter Nitrat-Stickstoff', '5 mg/L-N'],
    ['ein Becken von zweien'],
    ['die Hälfte', '0.5 -'],
  ];
  for (const [words, ...expected] of cases) test(words, () => assert.deepEqual(read(words), expected));

  test('in an English note the German words are words', () => assert.deepEqual(read('etwa zwei Stunden', 'en'), []));
  test('Swiss German writes a point and speaks German', () => assert.deepEqual(read('etwa 8.2 Milligramm pro Liter', 'de-CH'), ['~8.2 mg/L']));
  test('a mend is written in the language of the words', () => {
    const [number] = readMentions('nach drei Stunden', { language: 'de' });
    assert.equal(numberLike(number as NumberMention, 5), 'fünf');
    const [date] = readMentions('am 14. März 2026', { language: 'de' });
    assert.equal(dateLike(date as DateMention, 'am 14. März 2026', Date.UTC(2026, 4, 2), utc), '2. Mai 2026');
  });
});

const note = (prose: string): string => `# Nacht

\`\`\`protocol
question: Senkt eine Matte den Sauerstoff?
language: de
place: {time zone: Europe/Berlin}
tanks:
  mat: {role: treatment, label: Mattenbecken, plants: Wassersalat}
  open: {role: control, label: offenes Becken, plants: keine}
differs: [plants]
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 2026-03-15 06:00, end: 2026-03-15 06:00, every: 2 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: Sonde, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
\`\`\`

\`\`\`readings
time   mat.DO  open.DO
20:00  8.20    8.30
22:00  8.26    8.29
00:00  7.42    8.20
02:00  6.60    8.11
04:00  5.98    8.04
06:00  5.74    7.97
\`\`\`

${prose}
`;
const states = (prose: string): string[] => readNote(note(prose), undefined, undefined, { fileIsNote: true }).claims.map((claim) => claim.state);

suite('claims in German: checked', () => {
  const holding = [
    'Das Mattenbecken fiel auf {5,74 mg/L = min(mat.DO)}.',
    'Es waren {rund 5,8 Milligramm pro Liter = min(mat.DO)}.',
    'Tiefster Wert um {6 Uhr = time-of-min(mat.DO)}.',
    'Bis dahin {2,52 Milligramm je Liter = fall(mat.DO, dark)} weniger.',
    'Das waren {30,5 Prozent = percent-fall(mat.DO, dark)}.',
    'Die Dunkelheit dauerte {acht Stunden = duration(light-off..light-on)}.',
    'Je Stunde {zwischen 0,12 und 0,42 mg/L pro Stunde = -steps(mat.DO, dark, every 2 h) / 2 h}.',
  ];
  for (const prose of holding) test(prose, () => assert.deepEqual(states(prose), ['holds']));
  test('a wrong number does not hold, and the sign rule stands', () => {
    assert.deepEqual(states('Es fiel auf {5,47 mg/L = min(mat.DO)}.'), ['mismatch']);
    assert.deepEqual(states('Es fiel um {2,52 mg/L = change(mat.DO, dark)}.'), ['mismatch']);
  });
  test('words for a cause are pointed out, hedged ones are not', () => {
    const codes = (prose: string): string[] => readNote(note(prose), undefined, undefined, { fileIsNote: true }).problems.filter((each) => each.code === 'causal-wording').map((each) => String(each.args['word']));
    assert.deepEqual(codes('Wegen der Matte fiel er auf {5,74 mg/L = min(mat.DO)}.'), ['wegen']);
    assert.deepEqual(codes('Er fiel auf {5,74 mg/L = min(mat.DO)}, also zehrt die Matte.'), ['also']);
    // “also” before the same thing said in another way names no cause.
    assert.deepEqual(codes('Es fiel um {2,52 mg/L = fall(mat.DO, dark)}, also {30,5 % = percent-fall(mat.DO, dark)}.'), []);
    assert.deepEqual(codes('Als Sättigung, also mit Temperatur und Luftdruck, waren es {5,74 mg/L = min(mat.DO)}.'), []);
    assert.deepEqual(codes('Vielleicht fiel er wegen der Matte auf {5,74 mg/L = min(mat.DO)}.'), []);
    assert.deepEqual(codes('Er fiel durch die Nacht auf {5,74 mg/L = min(mat.DO)}.'), []);
  });
  test('what is filled in is German', () => {
    const [window] = readNote(note('Von {? = light-off..light-on} war es dunkel.')).claims;
    assert.equal(window!.computed, '22:00 bis 06:00');
    assert.equal(readNote(note('{? = fall(mat.DO, dark)}')).claims[0]!.computed, '2,52 mg/L');
  });
});
