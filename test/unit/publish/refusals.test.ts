// When publishing is refused, and that equal notes give equal files in every form.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { main } from '../../../src/cli/main.ts';
import { sealBlock } from '../../../src/edits/sealTable.ts';
import { applyEdits } from '../../../src/edits/edit.ts';
import { readNote } from '../../../src/experiment/readNote.ts';

const root = path.resolve(import.meta.dirname, '../../..');
const fixtures = path.join(root, 'test/fixtures/posts');
const sample = readFileSync(path.join(root, 'samples/overnight-oxygen.tank.md'), 'utf8');

async function run(...args: string[]): Promise<{ code: number; out: string; progress: string }> {
  const out: string[] = [];
  const progress: string[] = [];
  const code = await main(args, { result: (text) => { out.push(text); }, progress: (text) => { progress.push(text); }, colours: false });
  return { code, out: out.join('\n'), progress: progress.join('\n') };
}

suite('publish: refusals', () => {
  let folder = '';
  setup(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-refusals-')); });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  async function refused(text: string, code: string): Promise<void> {
    const name = path.join(folder, 'night.tank.md');
    writeFileSync(name, text);
    const { code: exit, out } = await run('publish', name, '--to', path.join(folder, 'out'), '--as', 'html', '--as', 'markdown', '--as', 'card', '--as', 'narration', '--as', 'data', '--published', '2026-04-13');
    assert.equal(exit, 1, out);
    assert.match(out, new RegExp(` error ${code}: `));
    assert.throws(() => readdirSync(path.join(folder, 'out')));
  }

  test('a claim that no longer matches', () => refused(sample.replace('{7.77 mg/L =', '{7.87 mg/L ='), 'claim-mismatch'));
  test('a statement that is not true', () => refused(sample.replace('lowest-duckweed > 3 mg/L}', 'lowest-duckweed > 6 mg/L}'), 'statement-false'));
  test('a stop rule that was crossed and not written up', () => refused(sample.replace('when: duckweed.DO < 3.5 mg/L', 'when: duckweed.DO < 6 mg/L'), 'stop-rule-crossed'));

  test('a sealed block that was altered, though every claim still matches', async () => {
    const note = readNote(sample, new Map());
    const edit = sealBlock(note, 0, Date.UTC(2026, 3, 12, 8, 0));
    assert.ok(edit.ok, JSON.stringify(edit));
    const sealed = applyEdits(sample, edit.edits);
    assert.equal(readNote(sealed, new Map()).problems.filter((each) => each.severity === 'error').length, 0);
    await refused(sealed.replace('22:30         7.97', '22:30         7.98'), 'seal-broken');
  });

  test('a data file that is missing or changed', async () => {
    const text = readFileSync(path.join(fixtures, 'logger-night.tank.md'), 'utf8');
    await refused(text, 'data-file-missing');
    mkdirSync(path.join(folder, 'data'));
    writeFileSync(path.join(folder, 'data/probe.csv'), readFileSync(path.join(fixtures, 'data/probe.csv'), 'utf8').replace('8.40', '8.41'));
    await refused(text, 'data-file-changed');
  });

  test('an answer whose number does not hold refuses the card', async () => {
    const name = path.join(folder, 'night.tank.md');
    writeFileSync(name, sample.replace('\nby: ', '\nanswer: It fell to {5.93 mg/L = lowest-duckweed}.\nby: '));
    const { code, out } = await run('publish', name, '--to', path.join(folder, 'out'), '--as', 'card');
    assert.equal(code, 1);
    assert.match(out, /night\.tank\.md:\d+:\d+: error answer-differs: The answer in the protocol does not hold: “5\.93 mg\/L”: the readings give 5\.83 mg\/L\./);
  });

  test('accepted warnings do not refuse; the post names them', async () => {
    const { code, out } = await run('publish', path.join(fixtures, 'logger-night.tank.md'), '--to', folder);
    assert.equal(code, 0, out);
    assert.match(readFileSync(path.join(folder, 'logger-night.html'), 'utf8'), /<dt>Accepted<\/dt><dd>by the author, who looked at these warnings and lets them stand: animals-without-stop-rule, run-ends-early<\/dd>/);
  });

  test('equal notes give equal files in every form, wherever they stand; the time is the note\'s own', async () => {
    const forms = ['html', 'markdown', 'card', 'narration', 'data'].flatMap((form) => ['--as', form]);
    const digest = async (place: string): Promise<string> => {
      mkdirSync(path.join(folder, place, 'data'), { recursive: true });
      for (const file of ['logger-night.tank.md', 'data/probe.csv']) writeFileSync(path.join(folder, place, file), readFileSync(path.join(fixtures, file)));
      const { code, out } = await run('publish', path.join(folder, place, 'logger-night.tank.md'), '--to', path.join(folder, place, 'out'), ...forms);
      assert.equal(code, 0, out);
      const hash = createHash('sha256');
      const walk = (below: string): void => {
        for (const entry of readdirSync(path.join(folder, place, 'out', below), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
          const name = path.join(below, entry.name);
          if (entry.isDirectory()) walk(name); else hash.update(name).update(readFileSync(path.join(folder, place, 'out', name)));
        }
      };
      walk('');
      return hash.digest('hex');
    };
    const zone = process.env['TZ'];
    const first = await digest('a');
    process.env['TZ'] = 'Pacific/Auckland';
    try { assert.equal(await digest('b/c'), first); } finally { if (zone === undefined) delete process.env['TZ']; else process.env['TZ'] = zone; }
    const crate = JSON.parse(readFileSync(path.join(folder, 'a/out/logger-night-data/ro-crate-metadata.json'), 'utf8')) as { '@graph': { '@id': string; datePublished?: string }[] };
    assert.equal(crate['@graph'].find((each) => each['@id'] === './')!.datePublished, '2026-05-10T18:00:00+02:00');
  });
});
