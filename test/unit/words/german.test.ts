// German sentences: every code has one, it says what the English one says of its arguments, and no English is left in it.
import { deepEqual, match, notEqual, ok } from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { templates } from '../../../src/edits/newNoteTemplates.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { functions } from '../../../src/formula/catalogue.ts';
import { describedIn } from '../../../src/formula/catalogue/described.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import type { Fix, MessageArguments, Problem } from '../../../src/problems/problem.ts';
import { describeKey, schemaPaths } from '../../../src/protocol/describedKeys.ts';
import { assistWords } from '../../../src/words/assist.ts';
import { functionWords, operandWords } from '../../../src/words/de/functionHelp.ts';
import { keyHelp } from '../../../src/words/de/keyHelp.ts';
import { phrases as germanPhrases } from '../../../src/words/de/phrases.ts';
import { inputs } from '../../../src/words/de/problems/formula.ts';
import { designReasons } from '../../../src/words/de/reasons.ts';
import { warningReasons } from '../../../src/words/de/warningReasons.ts';
import { quantityHelp } from '../../../src/words/de/quantityHelp.ts';
import { unitKinds, unitRemarks } from '../../../src/words/de/unitHelp.ts';
import { quantityMeans, unitRemark } from '../../../src/words/quantityHelp.ts';
import { measures } from '../../../src/quantities/measures.ts';
import { unitTable } from '../../../src/quantities/units.ts';
import { templateTitles } from '../../../src/words/de/templates.ts';
import { editSentence } from '../../../src/words/edits.ts';
import { editSentences, type EditMessageCode } from '../../../src/words/en/edits.ts';
import { fixTitles } from '../../../src/words/en/fixes.ts';
import { phrases } from '../../../src/words/en/phrases.ts';
import { slipWords, type SlipCode } from '../../../src/words/en/slips.ts';
import { reasonMarkdown } from '../../../src/words/reasons.ts';
import { slipSentence } from '../../../src/words/slips.ts';
import { templateWords } from '../../../src/words/templates.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';
import { asked, isGerman, marked, shownIn } from './isGerman.ts';

/** Codes among the arguments that are English words too, so that only German has to turn them. */
const saidInWords: Readonly<Record<string, readonly string[]>> = { 'level-not-reached': ['⟦side⟧'] };

const codes = Object.keys(problemCodes) as ProblemCode[];

suite('German: problems', () => {
  for (const code of codes) {
    test(`${code}: says what English says of its arguments`, () => {
      const args = marked(problemCodes[code].args);
      const sentence = problemSentence({ code, args }, 'de');
      match(sentence, /^[\p{Lu}\d„`⟦].*[.?]$/su, sentence);
      deepEqual(shownIn(sentence), shownIn(problemSentence({ code, args })).filter((each) => !saidInWords[code]?.includes(each)));
      isGerman(sentence, problemSentence({ code, args }));
    });
  }

  test('every example, its fixes and its related places are German', () => {
    for (const code of codes) {
      for (const each of raisedBy(code)) {
        const sentence = problemSentence(each, 'de');
        match(sentence, /^\S.*[.?]$/su);
        const own = ownPieces(each.args);
        isGerman(own.reduce((text, piece) => text.replaceAll(piece, '…'), sentence), null);
        for (const mend of each.fixes) notEqual(fixTitle(mend, 'de'), mend.title);
        for (const place of each.related) notEqual(fixTitle({ title: place.message, args: place.args }, 'de'), place.message);
      }
    }
  });
});

const ownPieces = (args: MessageArguments): string[] => Object.values(args).flat().map(String).filter((each) => /\p{L}{2}/u.test(each)).sort((a, b) => b.length - a.length);

function raisedBy(code: ProblemCode): readonly Problem[] {
  const { text, files } = exampleNote(problemCodes[code].example);
  return readNote(text, files, undefined, { fileIsNote: true }).problems.filter((each) => each.code === code);
}

suite('German: fixes, edits, slips', () => {
  for (const title of Object.keys(fixTitles) as (keyof typeof fixTitles)[]) {
    test(title, () => {
      const args = asked(fixTitles[title]);
      const fix = { title, args } as unknown as Fix;
      deepEqual(shownIn(fixTitle(fix, 'de')), shownIn(fixTitle(fix)));
      isGerman(fixTitle(fix, 'de'), fixTitle(fix));
    });
  }

  for (const code of Object.keys(editSentences) as EditMessageCode[]) {
    test(code, () => {
      const args = asked(editSentences[code]);
      const sentence = editSentence({ code, args }, 'de');
      match(sentence, /^[\p{Lu}⟦].*\.$/su);
      deepEqual(shownIn(sentence), shownIn(editSentence({ code, args })));
      isGerman(sentence, editSentence({ code, args }));
    });
  }

  test('every slip', () => {
    for (const slip of Object.keys(slipWords) as SlipCode[]) isGerman(slipSentence(slip, 'de'), slipSentence(slip));
  });

  test('every phrase, with the same pieces in it', () => {
    for (const code of Object.keys(phrases) as (keyof typeof phrases)[]) {
      const both = [germanPhrases, phrases].map((table) => table[code]('⟦1⟧', '⟦2⟧'));
      deepEqual(shownIn(both[0]!), shownIn(both[1]!), code);
      isGerman(both[0]!, both[1]!);
    }
  });
});

suite('German: help', () => {
  test('every function has its words, and none is left over', () => {
    deepEqual(Object.keys(functionWords).sort(), functions.map((each) => each.name).sort());
    for (const entry of functions) {
      const german = describedIn('de', entry);
      isGerman(german.definition, entry.definition);
      isGerman(german.units, null);
      if (/\p{L}{4,}/u.test(entry.equation.replaceAll(entry.name, '').replaceAll('mean)', ''))) notEqual(german.equation, entry.equation, entry.name);
      deepEqual(german.example, entry.example);
      deepEqual(describedIn('en', entry), entry);
    }
  });

  test('every operand has its words, those of one name are alike where English has them alike, and none is left over', () => {
    const used = new Map<string, Set<string>>();
    for (const entry of functions) {
      entry.signatures.forEach((signature, index) => {
        const german = describedIn('de', entry).signatures[index]!;
        [...signature.parameters, ...signature.options].forEach((operand, place) => {
          const own = `${entry.name}.${operand.name}`;
          const key = Object.hasOwn(operandWords, own) ? own : operand.name;
          used.set(key, (used.get(key) ?? new Set()).add(operand.about));
          isGerman([...german.parameters, ...german.options][place]!.about, operand.about);
        });
      });
    }
    deepEqual([...used.keys()].sort(), Object.keys(operandWords).sort());
    for (const [key, abouts] of used) deepEqual(abouts.size, 1, `${key} is said in several ways: ${[...abouts].join(' | ')}`);
  });

  test('every key of the plan has its words, and none is left over', () => {
    deepEqual(Object.keys(keyHelp).sort(), [...schemaPaths.values()].sort());
    for (const key of schemaPaths.keys()) isGerman(describeKey('de', key), key.description);
  });

  test('blocks, claims, options, refusals', () => {
    const [de, en] = [assistWords('de'), assistWords('en')];
    for (const table of ['blockHelp', 'claimHelp', 'keywordHelp', 'timeHelp', 'optionHelp', 'fileKeyHelp', 'shared', 'fillers'] as const) {
      for (const [key, words] of Object.entries(en[table])) isGerman((de[table] as Readonly<Record<string, string>>)[key]!, /^(?:name|label)$/.test(key) ? null : words);
    }
    for (const [refusal, sentence] of Object.entries(en.renameRefusals)) {
      const args = { name: '⟦name⟧', other: 'tank' } as const;
      const german = de.renameRefusals[refusal as keyof typeof de.renameRefusals](args);
      deepEqual(shownIn(german), shownIn(sentence(args)));
      isGerman(german, sentence(args));
    }
  });

  test('every quantity of the closed list, and every unit', () => {
    for (const entry of measures) isGerman(quantityMeans('de', entry), entry.means);
    deepEqual(Object.keys(quantityHelp).sort(), measures.map((each) => each.name).sort());
    for (const entry of unitTable) {
      ok(Object.hasOwn(unitKinds, entry.of), entry.of);
      if (entry.remark !== null) isGerman(unitRemark('de', entry)!, entry.remark);
    }
    deepEqual(Object.keys(unitRemarks).filter((symbol) => !unitTable.some((each) => each.symbol === symbol && each.remark !== null)), []);
    deepEqual(Object.keys(unitKinds).filter((kind) => !unitTable.some((each) => each.of === kind)), []);
  });

  test('why every problem matters that an author may let stand', () => {
    for (const code of codes) if (problemCodes[code].severity !== 'error') isGerman(reasonMarkdown(code, 'de'), problemCodes[code].why);
    for (const code of Object.keys(warningReasons) as ProblemCode[]) ok(Object.hasOwn(problemCodes, code) && !Object.hasOwn(designReasons, code), code);
  });

  test('every template of a new note', () => {
    deepEqual(Object.keys(templateTitles).sort(), templates.map((each) => each.name).sort());
    for (const template of templates) {
      isGerman(templateWords('de', template).title, template.title);
      isGerman(templateWords('de', template).about, template.about);
      deepEqual(templateWords('en', template).title, template.title);
    }
  });

  test('every input of an equation that can lie outside its range', () => {
    const sources = readdirSync('src/water').map((file) => readFileSync(path.join('src/water', file), 'utf8')).join('\n');
    const named = [...sources.matchAll(/outsideRange\(([^;]*)\)/g)].flatMap((match) => [...match[1]!.matchAll(/\['([^']+)'/g)].map((each) => each[1]!));
    ok(named.length > 20);
    deepEqual([...new Set(named)].filter((each) => !Object.hasOwn(inputs, each)), []);
  });
});
