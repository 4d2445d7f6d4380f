// Problems of a note's structure: each with its exact range, and its fix applied.
import assert from 'node:assert/strict';
import { readSyntax, type SyntaxOptions } from '../../../src/note/readSyntax.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import { noteCodes } from '../../../src/problems/codes/note.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';

const head = '```protocol\nquestion: x\n```\n\n';

function applyFix(text: string, problem: Problem): string {
  const edits = [...problem.fixes[0]!.edits].sort((a, b) => b.range.start - a.range.start);
  return edits.reduce((changed, { range, newText }) => changed.slice(0, range.start) + newText + changed.slice(range.end), text);
}

/** Codes with the text they mark, for a note with this body. */
function found(body: string, options: SyntaxOptions = {}): [string, string][] {
  const text = head + body;
  return readSyntax(text, undefined, options).problems.map((each) => [each.code, text.slice(each.range.start, each.range.end)]);
}

/** The body after the first fix of its only problem; the mended note must have no problem left. */
function mended(body: string): string {
  const text = head + body;
  const { problems } = readSyntax(text);
  assert.equal(problems.length, 1, JSON.stringify(problems));
  const changed = applyFix(text, problems[0]!);
  assert.deepEqual(readSyntax(changed).problems, [], changed);
  return changed.slice(head.length);
}

suite('problems of a note\'s structure', () => {
  test('a claim without its closing brace', () => {
    assert.deepEqual(found('Lost {2.9 % = first-loss by then.'), [['claim-not-closed', '{2.9 % = first-loss']]);
    assert.equal(mended('Lost {2.9 % = first-loss by then.'), 'Lost {2.9 % = first-loss} by then.');
    assert.equal(mended('Lost {2.9 % = percent-fall(mat.DO, light-off..22:30), and more.'), 'Lost {2.9 % = percent-fall(mat.DO, light-off..22:30)}, and more.');
    assert.equal(mended('Lost {2.9 mg/L = fall(mat.DO, (a)..b) in mg/L, and'), 'Lost {2.9 mg/L = fall(mat.DO, (a)..b) in mg/L}, and');
    assert.equal(mended('Saw {4 mg/L = stated "Handbook, p. 2" there.'), 'Saw {4 mg/L = stated "Handbook, p. 2"} there.');
    assert.equal(mended('{it fell if rate(mat.DO) < 0 mg/L/h.'), '{it fell if rate(mat.DO) < 0 mg/L/h}.');
    assert.equal(mended('Lost {2.9 % = first-loss and then {3 % = second-loss}.'), 'Lost {2.9 % = first-loss} and then {3 % = second-loss}.');
    assert.equal(mended('{4 mg/L = stated "Handbook}. He said "hello".'), '{4 mg/L = stated "Handbook"}. He said "hello".');
  });

  test('a claim cut by the structure of the text', () => {
    const row = '| what | how |\n|---|---|\n| loss | {2.9 % | half = first-loss} |\n';
    assert.deepEqual(found(row), [['claim-cut', '{2.9 % | half = first-loss}']]);
    assert.equal(mended('| a | b | c |\n|---|---|---|\n| {2.9 % | half = first-loss} | x | y |\n'), '| a | b | c |\n|---|---|---|\n| {2.9 % \\| half = first-loss} | x | y |\n');
    assert.deepEqual(found('Lost {2.9 % =\n\nfirst-loss} then.'), [['claim-cut', '{2.9 % =\n\nfirst-loss}']]);
    assert.equal(mended('Lost {2.9 % =\n\nfirst-loss} then.'), 'Lost {2.9 % = first-loss} then.');
    assert.equal(mended('> Lost {2.9 % =\n>\n> first-loss} then.'), '> Lost {2.9 % = first-loss} then.');
    assert.equal(mended('Lost {2.9 % = a\n- b} then.'), 'Lost {2.9 % = a - b} then.');
    assert.equal(mended('{it fell if a\n> 3 mg/L}'), '{it fell if a > 3 mg/L}');
    assert.equal(mended('## Lost {2.9 % =\nfirst-loss}'), '## Lost {2.9 % = first-loss}');
  });

  test('claims where nothing is checked', () => {
    assert.deepEqual(found('![lost {2.9 % = a}](x.png) and {3 = b}'), [['claim-in-image-text', '{2.9 % = a}']]);
    assert.deepEqual(found('<div>\nlost {2.9 % = a}\n</div>'), [['claim-in-html', '{2.9 % = a}']]);
    assert.deepEqual(found('<!--\nlost {2.9 % = a}\n-->\n\n<style>\na {b = c}\n</style>'), []);
  });

  test('a claim without spaces or without words', () => {
    assert.deepEqual(found('lost {2.9 %=first-loss} and'), [['claim-wants-spaces', '{2.9 %=first-loss}']]);
    assert.deepEqual(found('stieg um {2.9 %=änderung} und'), [['claim-wants-spaces', '{2.9 %=änderung}']]);
    assert.equal(mended('lost {2.9 %=first-loss} and'), 'lost {2.9 % = first-loss} and');
    assert.equal(mended('lost {2.9 % =first-loss} and'), 'lost {2.9 % = first-loss} and');
    assert.equal(mended('lost {?= mean(mat.DO)} and'), 'lost {? = mean(mat.DO)} and');
    assert.equal(mended('lost { = first-loss} and'), 'lost {? = first-loss} and');
  });

  test('plain braces are left alone', () => {
    for (const body of ['{a}', '{x=1}', '{x}=1', 'a set {1, 2, 3}', 'the brace { opens. Then a = b follows.', 'unclosed { here, if you like', '{{ page.title if x }} {% if a %}',
      '`{2 = x`', '$\\sum_{i = 1$', '\\{2.9 % = x', 'a {b\n\nc} d', '{.class #id}', '{a != b}', '{a <= 3}', '{{2 = x}}', '$$\n{2 = x\n\ny\n$$']) {
      assert.deepEqual(found(body), [], body);
    }
  });

  test('misspelt block words', () => {
    for (const [word, meant] of [['Readings', 'readings'], ['reading', 'readings'], ['VALUES', 'values'], ['vlaues', 'values'], ['figures', 'figure'], ['method', 'methods'], ['readings:', 'readings'], ['limit', 'limits'], ['Result', 'results'], ['sumary', 'summary']] as const) {
      assert.deepEqual(found(`\`\`\`${word} a\nx\n\`\`\``), [['near-miss-block', word]]);
      assert.equal(mended(`\`\`\`${word} a\nx\n\`\`\``), `\`\`\`${meant} a\nx\n\`\`\``);
    }
    for (const word of ['js', 'text', 'yaml', 'csv', 'python', 'protobuf', 'vega-lite', 'console', 'value-list', 'Rust', 'readme']) {
      assert.deepEqual(found(`\`\`\`${word}\nx\n\`\`\``), [], word);
    }
  });

  test('a file named as a note without its plan', () => {
    const codes = (text: string): string[] => readSyntax(text, undefined, { fileIsNote: true }).problems.map(({ code }) => code);
    assert.deepEqual(codes('# x\n'), ['protocol-missing']);
    assert.deepEqual(codes(''), ['protocol-missing']);
    assert.deepEqual(codes('```Protocol\nquestion: x\n```\n'), ['near-miss-block']);
    assert.deepEqual(codes('```protocoll\nquestion: x\n```\n{2 = x'), ['near-miss-block']);
    assert.deepEqual(codes('```protocol\nquestion: x\n```\n'), []);
    assert.deepEqual(readSyntax('```Protocol\n```').problems, [], 'any other Markdown file is left alone');
    const plain = readSyntax('# x\n');
    assert.equal(readSyntax('# x\n', plain, { fileIsNote: true }).problems.length, 1);
  });

  test('fences left open', () => {
    assert.deepEqual(found('```values\na = b\n'), [['fence-not-closed', '```values']]);
    assert.equal(mended('```values\na = b\n'), '```values\na = b\n```\n');
    assert.equal(mended('```values'), '```values\n```');
    assert.equal(mended('> ~~~~ values\n> a = b\n\nText'), '> ~~~~ values\n> a = b\n> ~~~~\n\nText');
    assert.equal(mended('- ```values\n  a = b\n\nText'), '- ```values\n  a = b\n  ```\n\nText');
    assert.deepEqual(found('```js\nlet a\n'), [['fence-not-closed', '```js']]);
    assert.deepEqual(found('- ```js\n  let a\n\nText'), [], 'the end of a list closes a fence, as in any Markdown');
  });

  test('a closing fence of other marks', () => {
    assert.deepEqual(found('````values\na = b\n```\n'), [['fence-not-closed', '````values']]);
    assert.equal(mended('````values\na = b\n```\n'), '````values\na = b\n````\n');
    assert.equal(mended('```values\na = b\n~~~\n'), '```values\na = b\n```\n');
    assert.equal(readSyntax(`${head}\`\`\`values\na = b\n~~~\n`).blocks[1]!.content.text, 'a = b\n');
  });

  test('a fence that swallows the next block', () => {
    assert.deepEqual(found('```values\na = b\n\n```figure\nshow: [a]\n```\n'), [['fence-not-closed', '```values']]);
    assert.equal(mended('```values\na = b\n\n```figure\nshow: [a]\n```\n'), '```values\na = b\n\n```\n\n```figure\nshow: [a]\n```\n');
    assert.equal(mended('> ```values\n> a = b\n> ```figure\n> show: [a]\n> ```\n'), '> ```values\n> a = b\n> ```\n\n> ```figure\n> show: [a]\n> ```\n');
    assert.deepEqual(found('````text\n```values\na = b\n```\n````\n'), [], 'an example of a block is no block');
  });

  test('a claim that a digit or a sign stands against, whatever markup is between', () => {
    const touching = ['9{5.8 mg/L = a}', '{5.8 mg/L = a}7', '1.{5 mg/L = a}', '1\u202F{004 hPa = a}', '−{5.8 mg/L = a}', 'by -{5.8 mg/L = a}', '**9**{5.8 mg/L = a}', '<b>9</b>{5.8 mg/L = a}',
      '&#57;{5.8 mg/L = a}', '9\u200B{5.8 mg/L = a}', '9&shy;{5.8 mg/L = a}', '٩{5.8 mg/L = a}', '{5 = a}.8 mg/L'];
    for (const words of touching) assert.deepEqual(found(words).map(([code]) => code), ['claim-in-number'], words);
    const apart = ['in 2026, {5.8 mg/L = a}.', '{5.8 mg/L = a}–{6 mg/L = b}', 'pH {7 = a}; 2 {8 mg/L = b}', '({5.8 mg/L = a}) 3', 'the low-{5.8 mg/L = a} tank', '{5.8 mg/L = a}. 12 times', '`9`{5.8 mg/L = a}', '9\n{5.8 mg/L = a}\n7'];
    for (const words of apart) assert.deepEqual(found(words), [], words);
    assert.deepEqual(found('lost **9**{5.8 mg/L = a}'), [['claim-in-number', '9**{5.8 mg/L = a}']]);
  });

  test('two plans, two blocks of one name, a block that is code', () => {
    assert.deepEqual(found('```protocol\nquestion: y\n```'), [['second-protocol', '```protocol']]);
    assert.deepEqual(readSyntax(`${head}~~~protocol\n~~~`).problems[0]!.related.map(({ range }) => range), [{ start: 3, end: 11 }]);
    assert.deepEqual(found('```figure  oxygen\n```\n```figure oxygen\n```\n```readings oxygen\n```'), [['block-name-twice', 'oxygen']]);
    assert.deepEqual(found('text\n\n    ```values\n    a = b\n    ```\n'), [['block-indented', '```values']]);
    assert.equal(mended('text\n\n    ```values\n    a = b\n    ```\n'), 'text\n\n```values\na = b\n```\n');
    assert.deepEqual(found('<!--\n```protocol\n```\n-->'), []);
  });

  test('every code of the room: its example raises it, its sentence is one sentence, its fix has a title', () => {
    for (const [code, entry] of Object.entries(noteCodes)) {
      const { text } = exampleNote(entry.example);
      const raised = readSyntax(text, undefined, { fileIsNote: true }).problems.filter((each) => each.code === code);
      assert.ok(raised.length > 0, code);
      for (const each of raised) {
        assert.equal(each.fixes.length > 0, entry.fixable, code);
        assert.deepEqual(Object.keys(each.args).sort(), [...entry.args].sort(), code);
        assert.match(problemSentence(each), /^[A-Z`"].*[.?]$/s, code);
        assert.ok(!problemSentence(each).includes('undefined'));
        for (const mend of each.fixes) assert.notEqual(fixTitle(mend), mend.title, mend.title);
      }
    }
  });
});
