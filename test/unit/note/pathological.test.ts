// Hostile texts: reading a note's structure stays linear, so that no text can stop the editor. Each text is read at two sizes in a worker
// that is killed when it takes too long.
import assert from 'node:assert/strict';
import { Worker } from 'node:worker_threads';
import { mayBeNote } from '../../../src/note/readSyntax.ts';

const head = '```protocol\nquestion: x\n```\n\n';
const texts: Record<string, (size: number) => string> = {
  'open braces': (size) => '{'.repeat(size),
  'open claims': (size) => '{2 % = a '.repeat(size),
  'open claims on lines': (size) => '{2 % = a\n'.repeat(size),
  'open claims in paragraphs': (size) => '{2 % = a\n\n'.repeat(size),
  'claims': (size) => '{2 % = a} '.repeat(size),
  'claims with strings': (size) => '{2 % = stated "a } b"} '.repeat(size),
  'open strings': (size) => '{2 % = stated " '.repeat(size),
  'escaped quotation marks': (size) => '{2 % = stated "\\" '.repeat(size),
  'one open string and many braces': (size) => `{ "${'\\"{'.repeat(size)}`,
  'braces in braces': (size) => '{a '.repeat(size) + '= b}'.repeat(size),
  'closing braces': (size) => '}'.repeat(size),
  'backslashes': (size) => `{${'\\'.repeat(size)} = a}`,
  'dollar signs': (size) => '$a '.repeat(size),
  'double dollar signs': (size) => '$$ a\n\n'.repeat(size),
  'escaped dollar signs': (size) => `$a${'\\$'.repeat(size)}`,
  'backslashes before dollar signs': (size) => `$a${'\\\\'.repeat(size)}`,
  'claims in quotes': (size) => '> {2 %\n> = a}\n'.repeat(size),
  'claims in deep lists': (size) => Array.from({ length: Math.min(80, size) }, (_, depth) => `${'  '.repeat(depth)}- {2 = a}`).join('\n').repeat(1),
  'nested quotes': (size) => `${'>'.repeat(Math.min(90, size))} {2 = a`,
  'a long line': (size) => 'words and {2 % = a} '.repeat(size),
  'table cells': (size) => `|${'a|'.repeat(8)}\n|${'-|'.repeat(8)}\n${`|${'{2 = a|'.repeat(8)}\n`.repeat(size / 10)}`,
  'a wide row': (size) => `| a | b |\n|---|---|\n|${' {2 = \\| a |'.repeat(size)}`,
  'open fences': (size) => '```values x\n'.repeat(size),
  'fences': (size) => '```values\na = b\n```\n'.repeat(size / 4),
  'near misses': (size) => '```Valuess\na = b\n```\n'.repeat(size / 4),
  'links around claims': (size) => '[{2 = a}](u) '.repeat(size),
  'images around claims': (size) => '![{2 = a}](u) '.repeat(size),
  'HTML around claims': (size) => `<div>\n${'{2 = a} { '.repeat(size)}\n</div>`,
  'emphasis around claims': (size) => '*{2 = a}* _b_ '.repeat(size),
  'entities': (size) => '&plusmn; 2 &nbsp;'.repeat(size),
  'indented code': (size) => '    ```values\n'.repeat(size),
};

const program = `
  const { parentPort } = require('node:worker_threads');
  import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(new URL('../../../src/note/readSyntax.ts', import.meta.url).href)}); })
    .then(({ readSyntax }) => parentPort.on('message', (text) => {
      const times = [0, 0, 0].map(() => { const start = performance.now(); readSyntax(text, undefined, { fileIsNote: true }); return performance.now() - start; });
      parentPort.postMessage(Math.min(...times));
    }));`;
let worker: Worker | undefined;

/** Milliseconds that reading the text takes, the best of three; rejects after twenty seconds. */
function measure(text: string): Promise<number> {
  worker ??= new Worker(program, { eval: true, execArgv: [] });
  const running = worker;
  return new Promise((resolve, reject) => {
    const fail = (error: Error): void => { worker = undefined; void running.terminate(); reject(error); };
    const timer = setTimeout(() => fail(new Error('takes more than 20 s')), 20_000);
    running.once('message', (time: number) => { clearTimeout(timer); running.removeListener('error', fail); resolve(time); });
    running.once('error', fail);
    running.postMessage(text);
  });
}

suite('hostile texts', () => {
  suiteTeardown(() => worker?.terminate());

  for (const [name, make] of Object.entries(texts)) {
    test(`${name}: ten thousand of them`, async () => {
      // Four times the text: linear is 4, quadratic 16. Times under 60 ms are noise; a busy machine gets another try.
      const tries: string[] = [];
      for (let attempt = 0; attempt < 4; attempt += 1) {
        const small = await measure(head + make(2_500));
        const large = await measure(head + make(10_000));
        if (large < 60 || large / small < 10) return;
        tries.push(`${small.toFixed(1)} ms, then ${large.toFixed(1)} ms`);
      }
      assert.fail(tries.join('; '));
    }).timeout(60_000);
  }

  test('plain Markdown of 15 000 lines costs next to nothing', () => {
    const text = 'A line about the protocol of a `protocol`, no fence, ``` in it.\n'.repeat(15_000);
    const times = Array.from({ length: 9 }, () => { const start = performance.now(); mayBeNote(text); return performance.now() - start; });
    // One millisecond is the aim; ten keep a busy machine from failing the test.
    assert.ok(Math.min(...times) < 10, `${Math.min(...times).toFixed(2)} ms`);
  });
});
