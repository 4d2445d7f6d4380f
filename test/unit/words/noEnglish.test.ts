// Every English text of our tables is replaced by a mark; then German notes are read, shown, published and helped with in German.
// Where the mark appears, something still reaches for the English table.
import { deepEqual, ok } from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { complete } from '../../../src/assist/complete.ts';
import { signatureHelp } from '../../../src/assist/signatureHelp.ts';
import { newNote } from '../../../src/edits/newNote.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { createNoteParser } from '../../../src/note/markdown.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import { publishCard } from '../../../src/publish/card.ts';
import { publishMarkdown } from '../../../src/publish/markdown/markdownPost.ts';
import { publishNarration } from '../../../src/publish/narration.ts';
import { planSheet } from '../../../src/publish/planSheet.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { evenwaterMarkdown } from '../../../src/render/plugin.ts';
import { reasonMarkdown } from '../../../src/words/reasons.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';

const mark = '⟦English⟧';
type Table = Record<string, unknown>;

/** Words that a note is searched for and read by, not told in: they serve every language. */
const forReading = /claimWords|findWords|numberWords|unitWords|checklistFinds|grammar/u;

const folder = path.resolve('src/words/en');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((each) => each.endsWith('.ts') && !forReading.test(each));
const kept: [Table, string, unknown][] = [];

/** The texts that a function makes become the mark; what is no text (a pattern, a number) stays. */
function marked(value: unknown): unknown {
  if (typeof value === 'string') return value === '' ? value : mark;
  if (typeof value === 'function') return (...args: unknown[]): unknown => markedResult((value as (...args: unknown[]) => unknown)(...args));
  return value;
}

function markedResult(value: unknown): unknown {
  return typeof value === 'string' ? (value === '' ? value : mark) : Array.isArray(value) ? [mark] : value;
}

function markTable(table: Table): void {
  for (const [key, value] of Object.entries(table)) {
    if (typeof value === 'object' && value !== null && !(value instanceof RegExp) && !(value instanceof Set) && !(value instanceof Map)) { markTable(value as Table); continue; }
    kept.push([table, key, value]);
    table[key] = marked(value);
  }
}

const fixtures = ['samples/naechtlicher-ausstroemer.tank.md', 'test/fixtures/posts/wasserlinsen.tank.md', ...readdirSync('test/unit/writing/notes/de').filter((each) => each.endsWith('.tank.md')).map((each) => `test/unit/writing/notes/de/${each}`)];
const texts = (): [string, string][] => [...fixtures.map((name): [string, string] => [name, readFileSync(name, 'utf8')]),
  ...['overnight-oxygen', 'behaviour', 'blank'].map((template): [string, string] => [template, newNote({ template }, { today: '2026-03-14', timeZone: 'Europe/Vienna', language: 'de' })])];
const read = (text: string): Note => readNote(text, undefined, undefined, { fileIsNote: true });

const shown = (text: string, where: string): void => {
  const at = text.indexOf(mark);
  ok(at < 0, `${where}: …${text.slice(Math.max(0, at - 160), at + 60)}`);
};

suite('German without the English tables', () => {
  suiteSetup(async () => { for (const file of files) for (const table of Object.values(await import(path.join(folder, file)) as Table)) if (typeof table === 'object' && table !== null) markTable(table as Table); });
  suiteTeardown(() => { for (const [table, key, value] of kept.reverse()) table[key] = value; });

  test('the tables are marked', () => {
    ok(kept.length > 1000, String(kept.length));
    deepEqual(problemSentence({ code: 'formula-empty', args: {} }), mark);
  });

  test('problems, fixes, reasons', () => {
    for (const code of Object.keys(problemCodes) as ProblemCode[]) {
      const { text, files: data } = exampleNote(problemCodes[code].example);
      for (const problem of readNote(text, data, undefined, { fileIsNote: true }).problems) {
        for (const said of [problemSentence(problem, 'de'), ...problem.fixes.map((each) => fixTitle(each, 'de')), ...problem.related.map((each) => fixTitle({ title: each.message, args: each.args }, 'de'))]) shown(said, problem.code);
      }
      if (problemCodes[code].severity !== 'error') shown(reasonMarkdown(code, 'de'), code);
    }
  });

  test('preview, post, Markdown, card, narration and plan', async () => {
    for (const [name, text] of texts()) {
      const note = read(text);
      const options = { stem: 'nacht', toolVersion: '0.0.0', published: '2026-07-20' };
      const md = createNoteParser();
      evenwaterMarkdown(md, { noteFor: () => note, target: 'preview', interfaceLanguage: 'de' });
      shown(md.render(note.text), `${name}: preview`);
      shown((await publishPost(note, options)).html, `${name}: post`);
      for (const file of [...await publishMarkdown(note, { ...options, frontMatter: true }), ...(await publishCard(note, options)).files]) if (typeof file.content === 'string') shown(file.content, `${name}: ${file.path}`);
      shown(publishNarration(note, 'nacht').text, `${name}: narration`);
      shown(planSheet(note, { stem: 'nacht', toolVersion: '0.0.0' }) ?? '', `${name}: plan`);
    }
  });

  test('completion and signatures at every line of a note', () => {
    for (const [name, text] of texts().slice(0, 2)) {
      const note = read(text);
      for (let offset = text.indexOf('\n'); offset >= 0; offset = text.indexOf('\n', offset + 1)) {
        shown(JSON.stringify(complete(note, offset, 'de')), `${name} at ${offset}`);
        shown(JSON.stringify(signatureHelp(note, offset, 'de')), `${name} at ${offset}`);
      }
    }
  });
});
