// `evenwater new` and `publish --plan`: from an empty folder to a plan without problems, and to a page for pencil.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Ajv } from 'ajv';
import { main } from '../../../src/cli/main.ts';
import { templates } from '../../../src/edits/newNoteTemplates.ts';

async function run(...args: string[]): Promise<{ code: number; out: string; progress: string }> {
  const out: string[] = [];
  const progress: string[] = [];
  const code = await main(args, { result: (text) => { out.push(`${text}\n`); }, progress: (text) => { progress.push(`${text}\n`); }, colours: false });
  return { code, out: out.join(''), progress: progress.join('') };
}

suite('command line: new', () => {
  let folder = '';
  setup(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-new-')); });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  test('ten answers give a plan that check has nothing against', async () => {
    const file = path.join(folder, 'deep/lid.tank.md');
    const made = await run('new', '--template', 'overnight-oxygen', '--question', 'Does a lid matter?', '--treatment', 'lid', '--tanks', 'left, right', '--measure', 'DO, T', '--place', 'Zwolle, 52.51, 6.09, Europe/Amsterdam',
      '--start', '2026-06-01 20:00', '--light-off', '22:00', '--every', '30 min', '--length', '14 h', '--to', file);
    assert.deepEqual([made.code, made.out, made.progress], [0, `written: ${file}\n`, '']);
    const checked = await run('check', folder);
    assert.match(checked.progress + checked.out, /0 errors, 0 warnings/);
    assert.equal((checked.progress + checked.out).match(/template-text/g)?.length, 2);
  });

  test('without a file the note goes to stdout; every template does', async () => {
    for (const { name } of templates) {
      const { code, out, progress } = await run('new', '--template', name, '--start', '2026-06-01');
      assert.deepEqual([code, progress], [0, ''], name);
      assert.match(out, /^# .*\n\n```protocol\n/);
    }
  });

  test('a note in German, whatever its sentences are told in, and its repeat', async () => {
    const made = await run('new', '--template', 'overnight-oxygen', '--start', '2026-06-01', '--language', 'de');
    assert.deepEqual([made.code, made.progress], [0, '']);
    assert.match(made.out, /^# Senkt .*\n\n```protocol\n[\s\S]*^language: de$/mu);
    const { text } = JSON.parse((await run('new', '--template', 'overnight-oxygen', '--start', '2026-06-01', '--language', 'de', '--json')).out) as { text: string };
    assert.equal(text.trimEnd(), made.out.trimEnd());
    const first = path.join(folder, 'erste.tank.md');
    const second = path.join(folder, 'zweite.tank.md');
    await run('new', '--template', 'overnight-oxygen', '--start', '2026-06-01', '--to', first, '--language', 'de');
    const repeated = await run('new', '--repeat', first, '--start', '2026-07-01', '--to', second, '--language', 'de');
    assert.deepEqual([repeated.code, repeated.out], [0, `geschrieben: ${second}\n`], repeated.progress);
    assert.match(readFileSync(second, 'utf8'), /^language: de$/mu);
  });

  test('no file is written over', async () => {
    const file = path.join(folder, 'a.tank.md');
    assert.equal((await run('new', '--to', file)).code, 0);
    const before = readFileSync(file, 'utf8');
    const again = await run('new', '--template', 'behaviour', '--to', file);
    assert.equal(again.code, 2);
    assert.match(again.progress, /is there already/);
    assert.equal(readFileSync(file, 'utf8'), before);
  });

  test('an answer that cannot be read is wrong use', async () => {
    for (const args of [['--template', 'nothing'], ['--every', 'often'], ['--start', 'soon'], ['--measure', 'colour'], ['--every', '1 min', '--length', '60 d']]) {
      const { code, progress } = await run('new', ...args, '--to', path.join(folder, 'x'));
      assert.equal(code, 2, args.join(' '));
      assert.match(progress, /^--/);
    }
  });

  test('a plan with a warning exits 1 and says it', async () => {
    const { code, progress } = await run('new', '--template', 'overnight-oxygen', '--length', '5 h', '--start', '2026-06-01');
    assert.equal(code, 1);
    assert.match(progress, /run-ends-early/);
  });

  test('JSON validates', async () => {
    const schema = new Ajv({ allErrors: true, allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(readFileSync('src/cli/schemas/new.schema.json', 'utf8')) as object);
    for (const args of [[], ['--to', path.join(folder, 'b')], ['--template', 'overnight-oxygen', '--length', '5 h']]) {
      const { out } = await run('new', ...args, '--json');
      assert.ok(schema(JSON.parse(out)), JSON.stringify(schema.errors));
    }
  });

  test('a repeat names the first run', async () => {
    const file = path.join(folder, 'again.tank.md');
    const { code } = await run('new', '--repeat', 'samples/heater-failure.tank.md', '--start', '2026-02-01', '--to', file);
    assert.equal(code, 0);
    assert.match(readFileSync(file, 'utf8'), /\nrepeats: \S*heater-failure\.tank\.md sha256:[0-9a-f]{64}\.[0-9a-f]+\n```/);
  });

  test('the plan is published as one page', async () => {
    const file = path.join(folder, 'night.tank.md');
    await run('new', '--template', 'overnight-oxygen', '--start', '2026-06-01', '--to', file);
    const { code, out } = await run('publish', file, '--to', folder, '--plan');
    assert.deepEqual([code, out], [0, `written: ${path.join(folder, 'night-plan.html')}\n`]);
    const html = readFileSync(path.join(folder, 'night-plan.html'), 'utf8');
    assert.match(html, /^<!doctype html>/);
    assert.equal([...html.matchAll(/<th scope="row" class="time">/g)].length, 33);
    assert.match(html, /Stop at once/);
    assert.doesNotMatch(html, /<script|undefined|NaN/);
  });
});
