// Help asked in German: what is written into the note is the same as in English, what explains it is German.
import { deepEqual, match, notEqual, ok } from 'node:assert/strict';
import { complete } from '../../../src/assist/complete.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { plainWords } from '../../../src/formula/plainWords.ts';
import { signatureHelp } from '../../../src/assist/signatureHelp.ts';
import { noteAt, noteText, plan } from './support.ts';

const places: Readonly<Record<string, string>> = {
  'keys of the plan': noteText({ plan: '‸\n' }),
  'keys of a tank': noteText({ plan: plan.replace('    like: mat\n', '    like: mat\n    ‸\n') }),
  'names of tanks': noteText({ plan: 'tanks:\n  ‸\n' }),
  'quantities': noteText({ plan: plan.replace('what: water temperature', 'what: ‸') }),
  'units': noteText({ plan: plan.replace('what: water temperature, unit: degC', 'what: water temperature, unit: ‸') }),
  'codes to accept': noteText({ plan: `${plan}accepted: [‸]\n` }),
  'heads of readings': noteText({ readings: '‸\n' }),
  'times of readings': noteText({ readings: 'time   mat.DO\n20:00    8.21\n‸\n' }),
  'keys of a data file': noteText({ readings: 'from: probe.csv\n‸\n' }),
  'formulas': noteText({ values: 'x = ‸\n' }),
  'operands': noteText({ values: 'x = steps(mat.DO, ‸)\n' }),
  'moments': noteText({ values: 'x = at(mat.DO, ‸)\n' }),
  'claims': noteText({ prose: 'It read {‸}.' }),
  'blocks': noteText({ prose: '```‸\n' }),
  'figures': noteText({ prose: '```figure\n‸\n```\n' }),
};

/** What stands at places to type at is help, too. */
const withoutFillers = (insert: string): string => insert.replace(/\$\{(\d+):(?:[^}\\]|\\.)*\}/gu, '${$1}').replace(/plants: (?:none|keine)/gu, 'plants: none');
const english = /(?<![\p{L}-])(?:the|and|of|is|are|with|there|this|which|reading|readings|tank|tanks|written)(?![\p{L}-])/iu;
const explained = (documentation: string): string => documentation.replace(/```[^`]*```|`[^`]*`/gu, '').replace(/Quelle: [^\n]*/gu, '');

suite('assist: German', () => {
  for (const [name, marked] of Object.entries(places)) {
    test(name, () => {
      const { note, offset } = noteAt(marked);
      const [inEnglish, inGerman] = [complete(note, offset, 'en'), complete(note, offset, 'de')];
      ok(inGerman.length > 0);
      const labels = (note.protocol?.tanks ?? []).map((tank) => tank.label);
      deepEqual(inGerman.map(({ label, kind, sort, insert }) => ({ label, kind, sort, insert: withoutFillers(insert) })),
        inEnglish.map(({ label, kind, sort, insert }) => ({ label, kind, sort, insert: withoutFillers(insert) })));
      inGerman.forEach((each, index) => {
        const documentation = labels.reduce((text, label) => text.replaceAll(label, '…'), explained(each.documentation));
        // What the author of the note wrote stays: labels, instruments, events.
        const own = documentation.split(/\n\n| · |, /u).filter((piece) => !note.text.includes(piece.trim())).join(' ');
        ok(!english.test(own), `${each.label}: ${documentation}`);
        if (/\p{L}{3} \p{L}{2}/u.test(own)) notEqual(each.documentation, inEnglish[index]!.documentation, each.label);
      });
    });
  }

  test('a formula of an English note in German words', () => {
    const { context } = readNote(noteText());
    match(plainWords('min(mat.DO)', context, 'de'), /Sauerstoffgehalt.* im Becken „floating-mat tank“/);
    match(plainWords('min(mat.DO)', context), /dissolved oxygen in the floating-mat tank/);
  });

  test('signatures', () => {
    const { note, offset } = noteAt(noteText({ values: 'x = settled(mat.DO, ‸)\n' }));
    const [inEnglish, inGerman] = [signatureHelp(note, offset)!, signatureHelp(note, offset, 'de')!];
    deepEqual(inGerman.signatures.map((each) => each.label), inEnglish.signatures.map((each) => each.label));
    deepEqual(inGerman.signatures[0]!.parameters.map((each) => each.label), inEnglish.signatures[0]!.parameters.map((each) => each.label));
    match(inGerman.signatures[0]!.about, /^Die erste Messzeit/);
    match(inGerman.signatures[0]!.parameters[0]!.about, /^Messwerte eines Beckens/);
  });
});
