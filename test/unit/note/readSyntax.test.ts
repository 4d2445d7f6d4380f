// Blocks, claims, prose and headings of a note: what is found, and where.
import assert from 'node:assert/strict';
import { toDocumentOffset, toDocumentRange } from '../../../src/note/mappedText.ts';
import { readSyntax } from '../../../src/note/readSyntax.ts';
import type { NoteSyntax } from '../../../src/note/syntax.ts';

const head = '```protocol\nquestion: x\n```\n\n';
const claimsOf = (body: string): string[] => {
  const text = head + body;
  return readSyntax(text).claims.map(({ range }) => text.slice(range.start, range.end));
};
const proseOf = (body: string): string[] => readSyntax(head + body).prose.map(({ text }) => text.text);

suite('readSyntax', () => {
  test('finds blocks in lists and quotes, indented, with other marks and names', () => {
    const text = `${head}> ~~~ readings probe-a\n> time mat.DO\n> 20:00 8.21\n> ~~~~\n\n1.  \`\`\`\`values\n    a = b\n    \`\`\`\n    \`\`\`\`\n\n  \`\`\`figure\n   show: [a]\n  \`\`\`\n`;
    const { blocks } = readSyntax(text);
    assert.deepEqual(blocks.map(({ word, name, closed, content, startLine, endLine }) => [word, name, closed, content.text, startLine, endLine]), [
      ['protocol', null, true, 'question: x\n', 0, 3],
      ['readings', 'probe-a', true, 'time mat.DO\n20:00 8.21\n', 4, 8],
      ['values', null, true, 'a = b\n```\n', 9, 13],
      ['figure', null, true, ' show: [a]\n', 14, 17],
    ]);
    const readings = blocks[1]!;
    assert.equal(text.slice(readings.range.start, readings.range.end), '~~~ readings probe-a\n> time mat.DO\n> 20:00 8.21\n> ~~~~');
    const at = readings.content.text.indexOf('8.21');
    const range = toDocumentRange(readings.content, { start: at, end: at + 4 });
    assert.equal(text.slice(range.start, range.end), '8.21');
    assert.equal(toDocumentOffset(readings.content, readings.content.text.indexOf('20:00')), text.indexOf('20:00'));
  });

  test('places hold with carriage returns, tabs, null characters and a byte order mark', () => {
    const text = `\uFEFF${head}-\t\`\`\`readings\n\ttime\tmat.DO\n\t20:00\t8\0.21\n\t\`\`\`\n\n-\tlost {2.9\n\t% = a}\n`.replace(/\n/g, '\r\n');
    const { isNote, blocks, claims } = readSyntax(text);
    assert.ok(isNote);
    const { content } = blocks[1]!;
    assert.equal(content.text, 'time\tmat.DO\n20:00\t8\uFFFD.21\n');
    const row = content.text.indexOf('20:00');
    assert.equal(toDocumentOffset(content, row), text.indexOf('20:00'));
    assert.equal(claims[0]!.words.text, '2.9\n%');
    assert.equal(text.slice(claims[0]!.range.start, claims[0]!.range.end), '{2.9\r\n\t% = a}');
    const unit = toDocumentRange(claims[0]!.words, { start: 4, end: 5 });
    assert.equal(text.slice(unit.start, unit.end), '%');
  });

  test('an empty block and one without closing fence', () => {
    const text = `${head}\`\`\`methods\n\`\`\`\n\n\`\`\`values\na = b`;
    const [, methods, values] = readSyntax(text).blocks;
    assert.deepEqual([methods!.content.text, methods!.content.pieces], ['', [{ offset: 0, document: text.indexOf('methods') + 8, length: 0 }]]);
    assert.deepEqual([values!.closed, values!.content.text, values!.range.end], [false, 'a = b', text.length]);
  });

  test('finds claims wherever prose is', () => {
    const body = '# {1 = a}\n\n{2 = b}\n===\n\n> - {3 = c}\n\n| {4 = d} | {5 \\| 6 = e} |\n|---|---|\n| *{6 = f}* | [{7 = g}](u) |\n\n~~{8 = h}~~ {9 = stated "`a` | b"} text<br>{10 = i}';
    assert.deepEqual(claimsOf(body), ['{1 = a}', '{2 = b}', '{3 = c}', '{4 = d}', '{5 \\| 6 = e}', '{6 = f}', '{7 = g}', '{8 = h}', '{9 = stated "`a` | b"}', '{10 = i}']);
    const cell = readSyntax(head + body).claims[4]!;
    assert.equal(cell.words.text, '5 | 6');
    const six = toDocumentRange(cell.words, { start: 4, end: 5 });
    assert.equal((head + body).slice(six.start - 3, six.end), '\\| 6');
  });

  test('finds none in code, maths, HTML, link targets and comments', () => {
    assert.deepEqual(claimsOf('`{1 = a}` $x {2 = b} y$ $$\n{3 = c}\n$$ [t](u "{4 = d}") <b title="{5 = e}"> <!-- {6 = f} --> \\{7 = g}\n\n    {8 = h}\n\n```text\n{9 = i}\n```\n\n<!--\n{10 = j}\n-->\n\n[r]: /u "{11 = k}"'), []);
    assert.deepEqual(claimsOf('$$\n{1 = a}\n\n{2 = b}\n$$\n\n{3 = c}'), ['{3 = c}'], 'display maths with a blank line in it');
    assert.deepEqual(claimsOf('It cost $5 and {1 = a}, then $6.'), ['{1 = a}'], 'money is no maths');
    assert.deepEqual(claimsOf('$$\n\n{1 = a}'), ['{1 = a}'], 'a mark without its partner is plain text');
  });

  test('prose is what a reader reads, without code, maths, HTML, link targets and claims', () => {
    assert.deepEqual(proseOf('Lost **2.9** % of `3 mg/L` and {4 = a}; [5 mg/L](http://6.example/7) &plusmn; 8 <b>9</b> ![10](u) $11$.'),
      ['Lost 2.9 % of ', ' and ', '; 5 mg/L ± 8 9 ', '10', ' ', '.'].filter((run) => run.trim() !== ''));
    assert.deepEqual(proseOf('5<!-- x -->.1<b>0</b>\u200B mg\u00AD/L&shy;, 3<br>4 10<sup>2</sup>'), ['5.10 mg/L, 3', '4 10', '2'], 'what takes no room cuts no number');
    assert.deepEqual(proseOf('<p>fell to <b>5</b> mg/L</p>\n\n<!-- 6 mg/L -->\n'), ['fell to ', '5', ' mg/L']);
    assert.deepEqual(readSyntax(`${head}| tank | DO (mg/L) |\n|---|---|\n| mat | 5.1 |\n`).prose.map(({ heads }) => heads), [undefined, undefined, ['tank', ''], ['DO (mg/L)', 'mat']]);
    assert.deepEqual(proseOf('> one\n> two \\* 2*3'), ['one\ntwo * 2*3']);
  });

  test('headings, with their words', () => {
    const text = `${head}## A *night* of {2.9 % = a} \`DO\` ##\n\n> Second\n> line\n> ---\n`;
    assert.deepEqual(readSyntax(text).headings.map(({ level, text: words, line, range }) => [level, words, line, text.slice(range.start, range.end)]), [
      [2, 'A night of 2.9 % DO', 4, '## A *night* of {2.9 % = a} `DO` ##'],
      [2, 'Second line', 6, 'Second\n> line\n> ---'],
    ]);
  });

  test('a text without a protocol block holds nothing', () => {
    for (const text of ['', '# x {2 = a}', '```text\n```protocol\n```\n', '<!--\n```protocol\n```\n-->', '    ```protocol\n', '`` ``` ```protocol', '```protocolx\n```', '```Protocol\n```']) {
      const { cache: _cache, ...syntax } = readSyntax(text);
      assert.deepEqual(syntax, { text, isNote: false, blocks: [], claims: [], prose: [], headings: [], problems: [] });
    }
  });

  test('the same text gives the same value', () => {
    const first: NoteSyntax = readSyntax(`${head}{2 = a}`);
    assert.equal(readSyntax(`${head}{2 = a}`, first), first);
  });
});
