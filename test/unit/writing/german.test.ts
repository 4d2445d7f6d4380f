// The generated prose in German: whole paragraphs against texts that were read and approved, no English left in them, slips of
// German grammar by pattern, and the same figures in both languages.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { functions } from '../../../src/formula/catalogue.ts';
import { plainWords } from '../../../src/formula/plainWords.ts';
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
const samples = new URL('../../../samples/', import.meta.url);

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

/** What stands outside quotes: the author's own words are quoted and stay as they are. */
function unquoted(text: string): string {
  let before = '';
  for (let now = text; now !== before;) { before = now; now = now.replace(/„[^„“]*“|‚[^‚‘]*‘/g, '„“'); text = now; }
  return text;
}

/** Conditions of the plan in words come from the formula room, whose tests hold their German. */
function withoutConditions(text: string, note: Note): string {
  const conditions = [...note.protocol!.stopRules.map((rule) => rule.when?.text), ...note.protocol!.equalise.map((step) => step.accept?.text)];
  return conditions.reduce<string>((left, condition) => (condition === undefined ? left : left.replace(plainWords(condition.trim(), note.context), '„Bedingung“')), text);
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

  const every = new Map([...notes, ...notesIn(folder), ...notesIn(samples).map(([name, text]): [string, string] => [`sample ${name}`, text])]);
  for (const [name, text] of every) {
    test(`${name}: no English outside quotes and no slips of grammar in German`, () => {
      const note = readNote(inLanguage(text, 'de'), files);
      assertGerman(prose(note).map((each) => withoutConditions(each, note)));
    });
    test(`${name}: the same figures stand in both languages`, () => {
      const [one, other] = ['en', 'de-AT'].map((language) => prose(readNote(inLanguage(text, language), files)));
      assert.equal(other!.length, one!.length);
      one!.forEach((paragraph, index) => assert.deepEqual(figuresOf(other![index]!), figuresOf(paragraph), `${paragraph}\n${other![index]!}`));
    });
  }

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
