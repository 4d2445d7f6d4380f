// The generated prose in German: whole paragraphs against texts that were read and approved, no English left in them, slips of
// German grammar by pattern, and the same figures in both languages.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { baseProtocol, baseReadings, exampleNote } from '../../../src/problems/examples.ts';
import type { Pieces } from '../../../src/words/pieces.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { functions } from '../../../src/formula/catalogue.ts';
import { planSealText } from '../../../src/protocol/planSeal.ts';
import { englishWriting } from '../../../src/words/en/writing.ts';
import { germanWriting } from '../../../src/words/de/writing.ts';
import { sentencesOf } from '../../../src/words/de/sentences.ts';
import { writingWords } from '../../../src/words/writing.ts';
import { writeChecklist } from '../../../src/writing/checklist.ts';
import { isExplained } from '../../../src/writing/computing.ts';
import { paragraphText } from '../../../src/writing/figures.ts';
import { writeMethods } from '../../../src/writing/methods.ts';
import { writeResults } from '../../../src/writing/results.ts';

const folder = new URL('./notes/', import.meta.url);
const german = new URL('./notes/de/', import.meta.url);
const root = new URL('../../../', import.meta.url);

const files = new Map([['sonde.csv', new TextEncoder().encode('Zeit;Temperatur\n2026-03-14 20:00:00;24,9\n2026-03-14 21:00:00;24,7\n2026-03-14 22:00:00;24,6\n')]]);
const notesIn = (place: URL): [string, string][] => readdirSync(place).filter((name) => name.endsWith('.tank.md')).map((name) => [name.replace('.tank.md', ''), readFileSync(new URL(name, place), 'utf8')]);

/** The night with its plan sealed at 18:00, then a step added: the plan's own paragraph. */
function sealed(text: string): string {
  const seal = planSealText(readNote(text).protocol!, Date.parse('2026-03-14T17:00:00Z'));
  return text.replace('\nstop if:', `\nsealed: ${seal}\nstop if:`).replace('every: 30 min', 'every: 15 min');
}

const prose = (note: Note): string[] => [...writeMethods(note), ...writeResults(note)].map((each) => paragraphText(each.runs));
const checklist = (note: Note): string[] => writeChecklist(note).map((each) => [`${each.item} [${germanWriting.checklist.states[each.state]}]`, each.sentence, each.advice].filter((part) => part !== null).join(' | '));
const page = (note: Note): string => [
  ...[...writeMethods(note), ...writeResults(note)].map((each) => `[${each.topic}]\n${paragraphText(each.runs)}\n`), '[Checkliste]', ...checklist(note), '',
].join('\n');

/** What stands outside quotes, names of files left out: the author's own words are quoted and stay as they are. */
function unquoted(sentence: string): string {
  let text = sentence.replace(/\S+\.tank\.md/g, 'DATEI');
  let before = '';
  for (let now = text; now !== before;) { before = now; now = now.replace(/„[^„“]*“|‚[^‚‘]*‘/g, '„“'); text = now; }
  return text;
}

const english = /\b(?:the|and|of|were|with|from|to|by|at|on|it|is|are|that|which|not|no|than|each|both|all|for|reading|readings|tank|tanks|lights?|below|above|plants|animals|equipment|oxygen|recorded|stated|units?)\b|\bwas (?:read|taken|measured|met)\b/i;

const slips: readonly (readonly [string, RegExp])[] = [
  ['a doubled word', /(?<!\p{L})(\p{L}{2,}) \1(?!\p{L})/iu], ['a doubled space', / {2}/], ['a space before a mark', / [.,;:](?!\d)/], ['a doubled mark', /[.,;:]{2}|[.?!]\./],
  ['one with a plural', /(?<!\p{L})eine? (?:Messwerte|Becken(?: wurden)|Schritte|Punkte|Messungen|Ereignisse|Phasen)(?!\p{L})/u],
  ['a number word with a singular', /(?<!\p{L})(?:zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn) (?:Messwert|Schritt|Punkt|Messung|Ereignis|Phase|Nacht)(?!\p{L})/u],
  ['a case that does not fit', /\b(?:in|im) (?:das|der Raum|dem|beide|alle) |\bmit das |\bfür der |\bfür dem |\bum \d{1,2}\. |\bam \d\d?:/u],
  ['a decimal point', /\d\.\d/], ['a percent without its space', /\d%/], ['a clock time without Uhr', /\b\d\d:\d\d\b(?!.*\bUhr\b)/],
  ['a hole', /undefined|NaN|\[object|Infinity|\(\)|„“/], ['a small letter at the start', /(?:^|[.?!] )(?!pH\b)\p{Ll}/u], ['no end mark', /[^.?!“)]$/],
];

function assertGerman(texts: readonly string[]): void {
  for (const text of texts) {
    assert.ok(!/„\s*“/.test(text), `an empty quote in: ${text}`);
    for (const sentence of sentencesOf(text)) {
      const bare = unquoted(sentence);
      const found = english.exec(bare);
      assert.ok(!found, `English “${found?.[0]}” in: ${sentence}`);
      for (const [name, pattern] of slips) {
        const slip = name === 'a hole' ? pattern.exec(sentence.replaceAll('„“', '')) : pattern.exec(bare);
        assert.ok(!slip, `${name} (${slip?.[0]}) in: ${sentence}`);
      }
    }
  }
}

/** Every figure of a text, a decimal comma turned into a point; ordinals of dates without their point. */
function figuresOf(text: string): string[] {
  return (text.replace(/(\d),(?=\d)/g, '$1.').match(/\d+(?:[.:]\d+)*/g) ?? []).sort();
}

const inLanguage = (text: string, language: string): string => text.replace(/^language: .*\n/m, '').replace('```protocol\n', `\`\`\`protocol\nlanguage: ${language}\n`);

suite('writing: German', () => {
  const notes = new Map(notesIn(german));
  notes.set('versiegelt', sealed(notes.get('nacht')!));
  for (const [name, text] of notes) {
    test(`${name}: the paragraphs are those that were approved`, () => {
      const expected = new URL(`${name}.expected.txt`, german);
      const written = page(readNote(text, files));
      if (process.env.APPROVE === '1') writeFileSync(expected, written);
      assert.equal(written, readFileSync(expected, 'utf8'));
    });
  }

  const from = (place: string, kind: string): [string, string][] => notesIn(new URL(place, root)).map(([name, text]) => [`${kind} ${name}`, text]);
  const every = new Map([...notes, ...notesIn(folder), ...from('samples/', 'sample'), ...from('samples/templates/', 'template'), ...from('test/fixtures/posts/', 'post'), ...from('test/fixtures/design/', 'design')]);
  for (const [name, text] of every) {
    test(`${name}: no English outside quotes and no slips of grammar in German`, () => {
      assertGerman(prose(readNote(inLanguage(text, 'de'), files)));
    });
    test(`${name}: the same figures stand in both languages`, () => {
      const [one, other] = ['en', 'de-AT'].map((language) => prose(readNote(inLanguage(text, language), files)));
      assert.equal(other!.length, one!.length);
      one!.forEach((paragraph, index) => assert.deepEqual(figuresOf(other![index]!), figuresOf(paragraph), `${paragraph}\n${other![index]!}`));
    });
  }

  test('any part of the plan may be missing, in any combination', () => {
    const keys = baseProtocol.split(/\n(?=\S)/).map((each) => each.trimEnd());
    const [head, ...rows] = baseReadings.trim().split('\n');
    fc.assert(fc.property(fc.subarray(keys), fc.subarray(rows), (parts, chosen) => {
      const note = readNote(exampleNote({ protocol: `language: de\n${parts.join('\n')}\n`, readings: `${head}\n${chosen.join('\n')}\n` }).text);
      if (note.protocol) assertGerman(prose(note));
    }), { numRuns: 60 });
  });

  test('numbers, moments and cases fit wherever a sentence counts', () => {
    const said = (pieces: Pieces<string | null>): string => pieces.join('');
    const { care, deviations, equal, names, light, sampling, evidence, results, design } = germanWriting;
    const clocks = ['21:00 Uhr', '22:00 Uhr', '23:00 Uhr'];
    const dates = ['1. September um 18:00 Uhr', '2. September um 06:00 Uhr'];
    assert.deepEqual([1, 2, 3, 15].map((count) => said(care.repeated({ count }))), [
      'Ein Messwert ist das Mittel mehrerer unmittelbar aufeinanderfolgender Ablesungen.', 'Zwei Messwerte sind Mittel mehrerer unmittelbar aufeinanderfolgender Ablesungen.',
      'Drei Messwerte sind Mittel mehrerer unmittelbar aufeinanderfolgender Ablesungen.', '15 Messwerte sind Mittel mehrerer unmittelbar aufeinanderfolgender Ablesungen.',
    ]);
    assert.equal(said(deviations.missedTimes(clocks)), 'Drei geplante Ablesungen entfielen: um 21:00, 22:00 und 23:00 Uhr.');
    assert.equal(said(deviations.missedTimes(dates)), 'Zwei geplante Ablesungen entfielen: am 1. September um 18:00 Uhr und am 2. September um 06:00 Uhr.');
    assert.equal(said(deviations.shifted([{ planned: clocks[0]!, taken: clocks[1]! }, { planned: dates[0]!, taken: dates[1]! }])),
      'Zwei Ablesungen fanden zu einer anderen Zeit statt als geplant: um 22:00 Uhr statt um 21:00 Uhr und am 2. September um 06:00 Uhr statt am 1. September um 18:00 Uhr.');
    assert.equal(said(deviations.earlyEnd({ last: dates[0]!, planned: dates[1]! })), 'Die letzte Ablesung fand am 1. September um 18:00 Uhr statt; der Plan reicht bis zum 2. September, 06:00 Uhr.');
    assert.equal(said(sampling.unplanned({ times: 2, first: '14. März 2026 um 20:00 Uhr', last: '23:00 Uhr' })), 'Gemessen wurde zweimal, am 14. März 2026 von 20:00 bis 23:00 Uhr; der Plan nennt keine Messzeiten.');
    assert.equal(said(sampling.unplanned({ times: 1, first: '14. März 2026 um 20:00 Uhr', last: '20:00 Uhr' })), 'Gemessen wurde einmal, am 14. März 2026 um 20:00 Uhr; der Plan nennt keine Messzeiten.');
    assert.equal(said(sampling.planned({ every: ['stündlich von 20:00 bis 22:00 Uhr', 'alle 10 min von 22:00 bis 23:00 Uhr'], from: '14. März 2026 um 20:00 Uhr', to: '23:00 Uhr', slots: 9 })),
      'Geplant waren neun Ablesungen zu festen Zeiten am 14. März 2026 von 20:00 bis 23:00 Uhr: stündlich von 20:00 bis 22:00 Uhr und alle 10 min von 22:00 bis 23:00 Uhr.');
    assert.equal(said(light.severalTimes({ off: dates, on: [] })), 'Das Licht ging am 1. September um 18:00 Uhr und am 2. September um 06:00 Uhr aus.');
    assert.equal(said(light.daily({ off: '22:00 Uhr', on: null, nights: 3 })), 'In jeder der drei Nächte ging das Licht um 22:00 Uhr aus.');
    assert.equal(said(equal.atMost({ quantity: 'der Sauerstoffgehalt', limit: '0,3 mg/L', strict: true, checked: 2, met: null, worst: '0,1 mg/L', holds: true, end: equal.end.firstReading })),
      'verlangte für den Sauerstoffgehalt weniger als 0,3 mg/L Unterschied; das war bei beiden gemeinsamen Ablesungen bis zur ersten Ablesung erfüllt (größter Unterschied: 0,1 mg/L)');
    assert.equal(said(equal.atMost({ quantity: 'die relative Dichte', limit: '0,001', strict: false, checked: 0, met: null, worst: null, holds: null, end: equal.end.event({ time: '22:00 Uhr', what: 'Pumpe aus' }) })),
      'verlangte für die relative Dichte höchstens 0,001 Unterschied; ob das bis 22:00 Uhr („Pumpe aus“) erfüllt war, zeigt keine gemeinsame Ablesung');
    assert.equal(said(equal.condition({ condition: 'X', checked: 1, met: '0', holds: false, end: equal.end.run })), 'verlangte Folgendes: X; das war bis zum Ende bei 0 von 1 Ablesung erfüllt');
    assert.equal(said(evidence.several({ treated: 3, controls: 1, citation: 'Hurlbert 1984' })),
      'Die Einheit des Vergleichs ist das Becken: Drei behandelte Becken und ein Vergleichsbecken zählen als drei und eins, gleich wie viele Messwerte jedes hat (Hurlbert 1984).');
    assert.equal(said(results.outside({ what: 'die Trübung', where: 'im Becken A', count: 2 })), 'Die Trübung im Becken A lag bei zwei Ablesungen außerhalb des Messbereichs; deshalb werden weder ein niedrigster Wert noch eine Änderung angegeben.');
    const matte = { id: 'm', label: 'offenes Becken' };
    assert.equal(names.inPlaces([{ all: false, places: [matte, { id: 'x', label: 'x' }] }, { all: false, places: ['room'] }]), 'im offenen Becken, im Becken „x“ und im Raum');
    assert.equal(said(design.observed({ tanks: [names.place(matte)], place: null })), 'Das offene Becken wurde beobachtet; der Plan nennt weder Behandlung noch Vergleich.');
    assert.equal(said(design.without({ keys: ['Pflanzen', 'Tiere'], tanks: 2 })), 'Keines der beiden Becken enthielt Pflanzen oder Tiere.');
    assert.equal(said(design.runningSince({ tanks: 'beide Becken', date: 'seit dem Frühjahr', several: true })), 'Laut Plan waren beide Becken in Betrieb: „seit dem Frühjahr“.');
  });

  test('quotes inside the author\'s words become single ones, and a sentence has one end mark', () => {
    const { design, stop } = germanWriting;
    assert.equal(design.question('Hält das „kleine“ Becken durch?').join(''), 'Die Frage des Versuchs lautete: „Hält das ‚kleine‘ Becken durch?“');
    assert.equal(design.hypothesis('Nein').join(''), 'Die Vermutung war: „Nein“.');
    assert.equal(stop.never({ condition: 'X', action: 'Pumpe an.' }).join(''), 'Nach Plan war der Versuch abzubrechen, sobald Folgendes galt: X („Pumpe an“). Das trat nicht ein.');
  });

  test('sentences end neither at ordinals nor at short forms', () => {
    assert.deepEqual(sentencesOf('Der Plan wurde am 14. März 2026 versiegelt. Im Text, z. B. Wasser, ca. 3 L. „Ende.“ Danach war Ruhe.'),
      ['Der Plan wurde am 14. März 2026 versiegelt.', 'Im Text, z. B. Wasser, ca. 3 L.', '„Ende.“', 'Danach war Ruhe.']);
  });

  test('the checklist finds in German what it finds in English, in sentences of the methods', () => {
    for (const [name, text] of notes) {
      const note = readNote(text, files);
      const methods = writeMethods(note).map((each) => paragraphText(each.runs)).join(' ');
      const told = writeChecklist(readNote(inLanguage(text, 'en'), files));
      writeChecklist(note).forEach((each, index) => {
        const { sentence } = told[index]!;
        const fromProse = (found: string | null): boolean => found === null || /^(?:in the text|im Text): /.test(found);
        if (!fromProse(sentence)) assert.notEqual(each.state, 'missing', `${name}: ${each.id}`);
        if (!fromProse(each.sentence) && !/^im Plan: /.test(each.sentence!) && each.id !== 'access' && each.id !== 'results') assert.ok(methods.includes(each.sentence!), `${name}: ${each.id}: ${each.sentence}`);
      });
    }
  });

  test('every table has every entry of the English ones', () => {
    const keys = (table: object, path = ''): string[] => Object.entries(table).flatMap(([key, entry]) =>
      (typeof entry === 'object' && entry !== null && !Array.isArray(entry) && !(entry instanceof RegExp) ? keys(entry as object, `${path}${key}.`) : [`${path}${key}`]));
    const own = new Set(keys(germanWriting));
    const { functions: _, ...others } = englishWriting;
    assert.deepEqual(keys(others).filter((key) => !own.has(key)), []);
  });

  test('every function that the methods may cite is explained in German', () => {
    const cited = functions.filter(isExplained).map((entry) => entry.name);
    assert.deepEqual([...cited, ...Object.keys(englishWriting.functions)].filter((name) => !Object.hasOwn(germanWriting.functions, name)), []);
    assert.ok(cited.length > 20);
    assertGerman(Object.values(germanWriting.functions));
  });

  test('every part of a plan that can change has a German name', () => {
    for (const part of Object.keys(readNote(notes.get('nacht')!).protocol!)) {
      const english = englishWriting.plan.changed({ time: '', parts: [part] });
      if (!english.includes(` ${part} `)) assertGerman([germanWriting.plan.changed({ time: '', parts: [part] })]);
    }
  });

  test('a tag finds its language; one that has no words of ours reads English', () => {
    assert.equal(writingWords('de-CH'), germanWriting);
    assert.equal(writingWords('DE'), germanWriting);
    assert.equal(writingWords('nl'), englishWriting);
    assert.equal(writingWords(undefined), englishWriting);
  });
});
