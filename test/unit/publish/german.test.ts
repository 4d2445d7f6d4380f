// A German note, rendered and published: no English word of ours is left in what a reader sees, the numbers are those of the same
// note in English, decimal commas stand where readers look and points where machines do.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { createNoteParser } from '../../../src/note/markdown.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { functions } from '../../../src/formula/catalogue.ts';
import { publishCard } from '../../../src/publish/card.ts';
import { publishData } from '../../../src/publish/data/dataPackage.ts';
import { unescapeHtml } from '../../../src/publish/embed.ts';
import { publishMarkdown } from '../../../src/publish/markdown/markdownPost.ts';
import { publishNarration } from '../../../src/publish/narration.ts';
import { planSheet } from '../../../src/publish/planSheet.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { printedValues, recheckPost } from '../../../src/publish/recheck.ts';
import { differenceSentence, faultSentence } from '../../../src/publish/recheckWords.ts';
import { spokenText } from '../../../src/publish/spoken.ts';
import { evenwaterMarkdown } from '../../../src/render/plugin.ts';

const root = path.resolve(import.meta.dirname, '../../..');
const text = fs.readFileSync(path.join(root, 'test/fixtures/posts/wasserlinsen.tank.md'), 'utf8');
const read = (source: string): Note => readNote(source, undefined, undefined, { fileIsNote: true });
const options = { stem: 'wasserlinsen', toolVersion: '0.0.0', published: '2026-04-13' };

const wordsIn = (from: string): string[] => from.match(/\p{L}{2,}/gu) ?? [];

/** Words inside the texts of a folder's tables. */
function vocabulary(folder: string): Set<string> {
  const found = new Set<string>();
  for (const name of fs.readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).filter((each) => each.endsWith('.ts'))) {
    const code = fs.readFileSync(path.join(root, folder, name), 'utf8').replace(/^\s*(?:\/\/|\*|\/\*\*).*$/gmu, '');
    for (const [literal] of code.matchAll(/'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/gu)) for (const word of wordsIn(literal.replace(/\$\{[^{}]*\}/gu, ' '))) found.add(word.toLowerCase());
  }
  return found;
}

const german = vocabulary('src/words/de');
const english = vocabulary('src/words/en');
for (const entry of functions) for (const word of wordsIn(entry.words)) english.add(word.toLowerCase());

/** What a reader sees of a page: no tags, no code, no formula, no file, no text of the note as written. */
function seen(html: string): string {
  const attributes = [...html.replace(/<cite[^>]*>/gu, ' ').matchAll(/ (?:title|aria-label|alt)="([^"]*)"/gu)].map((each) => each[1]!);
  const body = html.slice(Math.max(0, html.indexOf('<body')))
    .replace(/<pre[\s\S]*?<\/pre>/gu, ' ').replace(/<code[\s\S]*?<\/code>/gu, ' ').replace(/<cite[\s\S]*?<\/cite>/gu, ' ').replace(/<style[\s\S]*?<\/style>/gu, ' ')
    .replace(/<td class="evenwater-source"[\s\S]*?<\/td>/gu, ' ').replace(/<section class="references"[\s\S]*?<\/section>/gu, ' ').replace(/<div class="evenwater-table raw">[\s\S]*?<\/table>/gu, ' ').replace(/<[^>]*>/gu, ' ');
  return unescapeHtml(`${body} ${attributes.join(' ')}`).replace(/\S+\.(?:DO|T|P)\S*|\S*[a-z]-[a-z]+\(\S*|\b[a-z-]+\([^)]*\)/gu, ' ');
}

/** English words of ours that are left; the author's own, those that German shares, and names of keys and formulas aside. */
function leftovers(shown: string, note: string): string[] {
  const author = new Set(wordsIn(note).map((each) => each.toLowerCase()));
  return [...new Set(wordsIn(shown).map((each) => each.toLowerCase()))].filter((word) => english.has(word) && !german.has(word) && !author.has(word)).sort();
}

/** Decimal points that a reader sees and the author did not write. */
const pointsIn = (html: string, note: string): string[] => (seen(html).replaceAll('ARRIVE 2.0', '').match(/(?<![\d.])\d+\.\d+(?![\d.])/gu) ?? []).filter((each) => !note.includes(each));

const preview = (source: string): string => {
  const note = read(source);
  const md = createNoteParser();
  evenwaterMarkdown(md, { noteFor: () => note, target: 'preview', interfaceLanguage: 'de' });
  return md.render(source);
};

/** The note with more in it that goes wrong or is missing. */
const troubled: readonly (readonly [name: string, change: (source: string) => string])[] = [
  ['as it is', (source) => source],
  ['claims that do not hold', (source) => source.replace('{8,18 mg/L', '{8,81 mg/L').replace('{7,77 mg/L', '{?').replace('< steepest-fall(linsen', '> steepest-fall(linsen').replace('= verlust-klar}', '= verlust-kaputt}')],
  ['no readings yet', (source) => source.replace(/(```readings\ntime[^\n]*\n)[\s\S]*?```/u, '$1```')],
  ['a stop rule not written up', (source) => source.replace(/\n {4}outcome: [^\n]*/u, '')],
  ['several nights', (source) => source.replace('light on: 2026-04-12 08:30', 'light on: 08:30').replace('end: 2026-04-12 09:00', 'end: 2026-04-14 09:00')],
  ['tanks that differ, an old calibration, no accuracy', (source) => source.replace('plants: keine', 'plants: keine\n    equipment: Ausströmer').replace(', calibrated: 2026-04-11', ', calibrated: 2025-01-01').replace(', accuracy: 0.2 degC', '')],
  ['an order, a seed, phases', (source) => source.replace('\nlimits:', '\norder: random\nseed: Igel\nphases:\n  Fütterung: 20:10 .. 20:40\nlimits:')],
  ['limits over days', (source) => source.replace(/ {2}- for: Schnecken[\s\S]*?Beispiel\n/u, '  - {criterion: "EPA 1986 warm water, other life stages", quantity: DO}\n')],
  ['a published time, accepted warnings', (source) => source.replace('\nlicence:', '\npublished: 2026-04-13 10:00\naccepted: [one-tank-per-role, same-tank-first]\nlicence:')],
  ['tanks that stand apart, an effect too small, a coarse plan', (source) => source.replace(/(\n20:00 +8\.18 +24\.3 +)8\.11/u, '$17.11').replace('every: 30 min', 'every: 4 h')
    .replace('\nlimits:', '\nexpect:\n  - {quantity: DO, effect: 0.005 mg/L, rate: 1.25 mg/L/h}\nlimits:').replace(', accuracy: 0.1 mg/L, resolution: 0.01 mg/L', ', accuracy: 0.15 mg/L, resolution: 0.05 mg/L')],
  ['a block that is empty', (source) => `${source}\n\`\`\`values\n\`\`\`\n\n\`\`\`figure\nshow: []\n\`\`\`\n`],
  ['a scale of words, repeats, a value out of range', (source) => source.replace('\nequalise:', '\n  V: {what: behaviour, scale: [ruhig, unruhig]}\n  N: {what: nitrate, unit: mg/L-N, with: Tropftest, accuracy: 1 mg/L-N}\nequalise:')
    + '\n```readings\ntime linsen.V klar.V linsen.N klar.N\n20:00 ruhig ruhig <0.5 1.0/1.2/1.1\n22:00 unruhig ruhig 2.0 -\n```\n'],
];

suite('a German note for readers', () => {
  test('the search for leftovers finds them: the same note in English is full of them', () => {
    assert.ok(leftovers(seen(preview(text.replace('language: de', 'language: en'))), text).length > 150);
  });

  for (const [name, change] of troubled) {
    test(`${name}: the preview has no English word of ours`, () => assert.deepEqual(leftovers(seen(preview(change(text))), change(text)), []));
    test(`${name}: the post has none either`, async () => {
      const { html } = await publishPost(read(change(text)), options);
      assert.match(html, /<html lang="de">/u);
      assert.deepEqual(leftovers(seen(html), change(text)), []);
      assert.deepEqual(pointsIn(html, change(text)), []);
    });
  }

  test('Markdown, card, narration and printed plan', async () => {
    const note = read(text);
    const [markdown] = await publishMarkdown(note, options);
    const plain = String(markdown!.content).replace(/`[^`]*`/gu, ' ').replace(/## Quellen[\s\S]*?\n## /u, ' ');
    const card = await publishCard(note, options);
    const drawing = card.files.find((each) => each.path.endsWith('card.svg'))!;
    for (const shown of [plain.replace(/\*[^*]+\*/gu, ' '), seen(String(drawing.content)), String(card.files[0]!.content).replace(/!\[[^\]]*\]\([^)]*\)/gu, ' '), publishNarration(note, 'wasserlinsen').text, seen(planSheet(note, options)!)]) {
      assert.deepEqual(leftovers(shown.replace(/\b\w+\.(?:DO|T|P)\b/gu, ' '), text), []);
    }
    assert.match(planSheet(note, options)!, /<html lang="de">/u);
  });

  test('open data: descriptions are German, numbers have points, the report of columns is the same', async () => {
    const files = (await publishData(read(text), options))!;
    const json = (name: string): string => Buffer.from(files.find((each) => each.path.endsWith(name))!.content as Uint8Array).toString('utf8');
    const said = ['datapackage.json', 'ro-crate-metadata.json'].flatMap((name) => [...json(name).matchAll(/"(?:description|title)": "((?:[^"\\\\]|\\\\.)*)"/gu)].map((each) => each[1]!));
    assert.ok(said.length > 50);
    const columns = /\b(?:[a-z]+_[a-z_0-9]+|treatment|control|room|result|claim|station|sea|computed|condition|stated|unchecked|yes|no|time|quantity|[a-z]+-(?:range|taken|out)|doubtful|corrected|repeated|word)\b/gu;
    assert.deepEqual(leftovers(said.filter((each) => !/^[\w.]+(?: \w+)*$/u.test(each)).join(' ').replace(columns, ' '), text).filter((word) => !['json', 'schema'].includes(word)), []);
    assert.match(json('readings-long.csv'), /,8\.18,/u);
    assert.match(json('readings-long.csv'), /dissolved oxygen/u);
  });

  test('the report of a recheck', async () => {
    const { html } = await publishPost(read(text), options);
    assert.ok((await recheckPost(html, '0.0.0')).holds);
    const altered = await recheckPost(html.replace('>8,18 mg/L</data>', '>8,19 mg/L</data>').replace(/data-sha256="\w/u, 'data-sha256="x'), '0.0.0');
    const said = [...altered.faults.map((each) => faultSentence(each, 'de')), ...altered.differences.map((each) => differenceSentence(each, 'de'))];
    assert.ok(altered.faults.length > 0 && altered.differences.length > 0);
    assert.deepEqual(leftovers(said.join(' ').replace(/„[^“]*“/gu, ' '), text), []);
  });
});

suite('a German note in an English editor', () => {
  test('problems are said in English, everything else in German', () => {
    const note = read(text.replace('show: [linsen.DO, klar.DO]', 'shwo: [linsen.DO, klar.DO]'));
    const md = createNoteParser();
    evenwaterMarkdown(md, { noteFor: () => note, target: 'preview' });
    const html = md.render(note.text);
    assert.match(html, />Error, line \d+: </u);
    assert.match(html, /Vorher angeglichen/u);
    assert.doesNotMatch(html, /Made alike beforehand/u);
  });
});

suite('a German note and its numbers', () => {
  const inEnglish = text.replace('language: de', 'language: en').replace(/(?<=\{(?:rund )?\d+),(?=\d)/gu, '.').replace('rund 2', 'about 2').replace('7:30 Uhr', '7:30').replace('5.0 Prozent', '5.0 per cent')
    .replace('Milligramm pro Liter', 'milligrams per litre').replace('3.1 Stunden', '3.1 hours').replace('auf {5,83 mg/L', 'auf {5.83 mg/L');

  test('the same values stand behind the same formulas in both languages', async () => {
    const values = async (source: string): Promise<string[]> => printedValues((await publishPost(read(source), options)).html).map((each) => `${each.formula} = ${each.value}`).sort();
    assert.deepEqual(read(inEnglish).claims.filter((each) => each.state !== 'holds').map((each) => each.syntax.words.text), []);
    assert.deepEqual(await values(text), await values(inEnglish));
  });

  test('every printed number of the German post is the English one with a comma', async () => {
    const shown = async (source: string): Promise<Map<string, string>> => new Map(printedValues((await publishPost(read(source), options)).html)
      .filter((each) => !/\p{L}{3,}/u.test(each.text)).map((each) => [`${each.formula}|${each.text.replace(/[.,]/gu, '')}`, each.text]));
    const [de, en] = [await shown(text), await shown(inEnglish)];
    let commas = 0;
    for (const [key, value] of de) {
      if (!en.has(key)) continue;
      assert.equal(value, en.get(key)!.replace(/(\d)\.(?=\d)/gu, '$1,'), key);
      commas += value.includes(',') ? 1 : 0;
    }
    assert.ok(commas > 100, String(commas));
  });

  test('a decimal point is left in the author’s own words and in the data alone', async () => {
    const { html } = await publishPost(read(text), options);
    assert.deepEqual(pointsIn(html, text), []);
    for (const { value } of printedValues(html)) assert.doesNotMatch(value, /\d,\d/u);
    const axis = [...html.matchAll(/<t(?:ext|span)[^>]*>([^<]*)<\/t(?:ext|span)>/gu)].map((each) => each[1]!);
    assert.ok(axis.some((each) => /^\d+,\d$/u.test(each)), 'axis labels have commas');
    assert.ok(axis.includes('12. Apr.'), 'days below the axis are German');
  });
});

suite('a German narration', () => {
  const cases: [string, string][] = [
    ['Um 7:30 Uhr stand es bei 5,83 mg/L.', 'Um sieben Uhr dreißig stand es bei fünf Komma acht drei Milligramm pro Liter.'],
    ['Am 12. April 2026 fiel es um 2,27 ± 0,01 mg/L.', 'Am zwölften April zweitausendsechsundzwanzig fiel es um zwei Komma zwei sieben plus oder minus null Komma null eins Milligramm pro Liter.'],
    ['1 h und 21 min in 1 Becken', 'eine Stunde und einundzwanzig Minuten in ein Becken'],
    ['1013,2 hPa bei 24,3 °C', 'eintausenddreizehn Komma zwei Hektopascal bei vierundzwanzig Komma drei Grad Celsius'],
    ['nach 3 Tagen 6 cm²', 'nach drei Tagen sechs Quadratzentimeter'],
    ['2–3 mg/L als N, um 00:00 Uhr', 'zwei bis drei Milligramm pro Liter als Stickstoff, um Mitternacht'],
    ['5,0 Prozent in 2 Wochen', 'fünf Komma null Prozent in zwei Wochen'],
  ];
  for (const [printed, said] of cases) test(printed, () => assert.equal(spokenText(printed, 'de'), said));
  test('no digit is left in the sheet of the note', () => assert.doesNotMatch(publishNarration(read(text), 'wasserlinsen').text.replace(/^\d+\. /gmu, ''), /\d/u));
});
