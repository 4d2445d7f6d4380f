// New notes and repeats in German: every text and name of every template is said, the notes read as the English ones do, and
// English notes are what they were.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { newNote } from '../../../src/edits/newNote.ts';
import { saysNoLights, type NewNoteAnswers } from '../../../src/edits/newNoteAnswers.ts';
import { templates } from '../../../src/edits/newNoteTemplates.ts';
import { libraryMeasures } from '../../../src/edits/planLibrary.ts';
import { repeatNote } from '../../../src/edits/repeatNote.ts';
import { measureIn, ownTreated, templateIn } from '../../../src/edits/templateLanguage.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { repeatFacts } from '../../../src/protocol/planSeal.ts';
import { isName, isReserved } from '../../../src/protocol/names.ts';
import { cautionsOf } from '../../../src/render/cautions.ts';
import { newNoteNames, newNoteTexts } from '../../../src/words/de/newNoteTexts.ts';
import { languages, type Language } from '../../../src/words/languages.ts';
import { newNoteWords } from '../../../src/words/newNote.ts';

const surroundings = { today: '2026-05-02', timeZone: 'Europe/Amsterdam' };
const read = (text: string): Note => readNote(text, new Map(), undefined, { fileIsNote: true });
const noteIn = (language: Language, answers: NewNoteAnswers): Note => read(newNote(answers, { ...surroundings, language }));

/** What the templates and the library ask to have said. */
function asked(): { texts: Set<string>; names: Set<string> } {
  const [texts, names] = [new Set<string>(), new Set<string>()];
  const recorder = { text: (english: string) => { texts.add(english); return english; }, name: (english: string) => { names.add(english); return english; } };
  for (const template of templates) assert.deepEqual(templateIn(recorder, template), template, 'English is left as it is');
  for (const measure of libraryMeasures) assert.deepEqual(measureIn(recorder, measure), measure);
  ownTreated(recorder);
  return { texts, names };
}

/** `60 x 30 x 36 cm`, `35 g/kg`: alike in every language. */
const onlyFigures = (text: string): boolean => /^[\d x]+ (?:cm|g\/kg)$/.test(text);

const placeholders = (text: string): string[] => (text.match(/TREATED|CONTROL|WITH|\{\? = /g) ?? []).sort();

/** Answers that bring in the lines of a template in other combinations. */
const variations: readonly NewNoteAnswers[] = [
  {}, { treatment: 'Moos' }, { tanks: 'a, b, c' }, { tanks: 'a' }, { measure: libraryMeasures.map((each) => each.id).join(', ') }, { lightOff: 'none', length: '3 h' },
];

suite('new note in German: its words', () => {
  const { texts, names } = asked();

  test('every text of every template has one, and none is left over', () => {
    assert.deepEqual(Object.keys(newNoteTexts).sort(), [...texts].filter((each) => !onlyFigures(each)).sort());
  });

  test('every name that a template gives has one, and none is left over', () => {
    assert.deepEqual(Object.keys(newNoteNames).filter((each) => !names.has(each)), []);
    for (const template of templates) {
      const { treated, control, values, plan } = templateIn(newNoteWords('de'), template);
      const given = [treated.id, control!.id, ...values.flatMap(({ lines }) => lines.map((line) => line.split(' = ')[0]!.replace(/TREATED|CONTROL/, 'x'))),
        ...plan.flatMap(({ lines }) => lines.flatMap((line) => /\bid: ([^,]+)/.exec(line)?.[1] ?? []))];
      const english = [template.treated.id, template.control!.id, ...template.values.flatMap(({ lines }) => lines.map((line) => line.split(' = ')[0]!.replace(/TREATED|CONTROL/, 'x'))),
        ...template.plan.flatMap(({ lines }) => lines.flatMap((line) => /\bid: ([^,]+)/.exec(line)?.[1] ?? []))];
      given.forEach((name, index) => { assert.ok(isName(name) && !isReserved(name), name); assert.notEqual(name, english[index]); });
      assert.equal(new Set(given).size, new Set(english).size, template.name);
    }
  });

  test('with the same gaps, in no English, addressed to nobody', () => {
    for (const [english, german] of Object.entries(newNoteTexts)) {
      assert.deepEqual(placeholders(german), placeholders(english), english);
      const bare = german.replace(/\{[^}]*\}|[„“]|WITH/g, '');
      assert.doesNotMatch(bare, /\b(?:the|and|of|is|are|with|there|this|write|tanks?|has|from|Sie|Ihr\w*|du|dein\w*)\b/u, english);
      assert.doesNotMatch(bare, /\d\.\d/, `decimal comma: ${english}`);
    }
  });

  test('a word by which the lights stay as they are is understood in every language', () => {
    for (const language of languages) assert.ok(saysNoLights(newNoteWords(language).noLights));
  });
});

suite('new note in German: the notes', () => {
  const found = (note: Note): string[] => note.problems.map((each) => `${each.code} ${each.severity}`).sort();

  for (const template of templates) {
    test(`${template.name}: has the problems of the English note and its claims`, () => {
      for (const answers of variations) {
        const [english, german] = [noteIn('en', { template: template.name, ...answers }), noteIn('de', { template: template.name, ...answers })];
        assert.deepEqual(found(german), found(english), JSON.stringify(answers));
        assert.deepEqual(german.problems.filter((each) => each.severity === 'error').map((each) => each.code), []);
        assert.equal(german.claims.length, english.claims.length);
        assert.equal(german.protocol!.language, 'de');
        const parts = (note: Note): readonly number[] => [note.protocol!.tanks, note.protocol!.events, note.protocol!.phases, note.protocol!.equalise, note.protocol!.stopRules, note.protocol!.limits, note.protocol!.schedule!.slots].map((each) => each.length);
        assert.deepEqual(parts(german), parts(english));
      }
    });

    test(`${template.name}: the plan card warns of the same things`, () => {
      const warned = (language: Language): string[] => cautionsOf(noteIn(language, { template: template.name }).protocol!).map((each) => each.id);
      assert.deepEqual(warned('de'), warned('en'));
    });
  }

  test('every instruction to the author is found', () => {
    const left = (note: Note): number => note.problems.filter((each) => each.code === 'template-text').length;
    assert.equal(left(noteIn('de', {})), left(noteIn('en', {})));
    const german = noteIn('de', {});
    const found = german.problems.filter((each) => each.code === 'template-text').map((each) => german.text.slice(each.range.start, each.range.end).replace(/\s+/g, ' '));
    for (const instruction of newNoteWords('de').instructions.filter((each) => !each.includes('im ersten Versuch'))) assert.ok(found.some((each) => each.includes(instruction)), instruction);
  });

  test('another treatment is asked about, in quotes, in no words of the template', () => {
    for (const { name } of templates) {
      const plan = noteIn('de', { template: name, treatment: 'Mooskugel, faustgroß' }).protocol!;
      assert.match(plan.question!.value, /^[^„]* „Mooskugel, faustgroß“[^„]*\?$/, name);
      assert.equal(plan.hypothesis, null);
      assert.equal(plan.tanks.find((tank) => tank.role?.value === 'treatment')?.label, 'behandeltes Becken');
    }
    const [mat] = templates;
    assert.equal(noteIn('de', { template: mat!.name, treatment: newNoteTexts[mat!.treatment] }).protocol!.question!.value, newNoteTexts[mat!.question]);
  });

  test('tanks that the author names', () => {
    assert.deepEqual(noteIn('de', { tanks: 'links, Quarantänebecken' }).protocol!.tanks.map((tank) => [tank.id, tank.label]), [['links', 'Becken links'], ['quarantänebecken', 'Quarantänebecken']]);
  });
});

suite('repeat in German', () => {
  test('a German note is repeated in German, a repeat of the repeat too', () => {
    const first = noteIn('de', { template: 'overnight-oxygen' });
    const result = repeatNote(first, 'matte.tank.md', '2026-05-16');
    assert.ok(result.ok);
    assert.deepEqual(result.text.split('\n').filter((line) => line.startsWith('#')), [
      '# Senkt eine Schwimmpflanzendecke das nächtliche Sauerstoffminimum? (Wiederholung)', '## Was gemessen wurde', '## Was geschah', '## Wie es gemacht wurde',
    ]);
    assert.ok(result.text.includes('Eine Wiederholung von matte.tank.md: derselbe Plan zu neuen Zeiten.'));
    const note = read(result.text);
    assert.deepEqual(note.problems.filter((each) => each.severity === 'error').map((each) => each.code), []);
    assert.equal(note.problems.filter((each) => each.code === 'template-text').length, 1);
    assert.deepEqual(repeatFacts(note.protocol!)!.changed, []);
    const again = repeatNote(note, 'matte-2026-05-16.tank.md', '2026-05-30');
    assert.ok(again.ok && again.text.startsWith('# Senkt eine Schwimmpflanzendecke das nächtliche Sauerstoffminimum? (Wiederholung)\n'));
  });

  test('a note in a language that we have no words in is repeated in English', () => {
    const result = repeatNote(read(newNote({}, surroundings).replace('place:', 'language: fr\nplace:')), 'a.tank.md', '2026-05-16');
    assert.ok(result.ok && result.text.includes('## What happened'));
  });
});

suite('new note in English', () => {
  test('with answers, drawn tanks and as a repeat it is what it was before there was another language', () => {
    const answered = newNote({ template: 'overnight-oxygen', treatment: 'lid, of glass', tanks: 'Left, right tank, c', measure: 'DO, T', every: '2 h' }, surroundings);
    const repeated = repeatNote(read(newNote({ template: 'heater-failure', every: '2 h' }, surroundings)), 'heater.tank.md', '2026-05-16');
    assert.ok(repeated.ok);
    assert.equal(`${answered}\n${repeated.text}`, readFileSync('test/fixtures/new-notes/english.md', 'utf8'));
  });

  test('is what is written where no language is asked for', () => {
    for (const { name } of templates) assert.equal(newNote({ template: name }, { ...surroundings, language: 'en' }), newNote({ template: name }, surroundings));
  });
});
