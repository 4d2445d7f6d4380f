// `evenwater format` and `evenwater seal`: what they write, what they print, and that their JSON is what its schema says.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Ajv } from 'ajv';
import { main } from '../../../src/cli/main.ts';
import { noteText } from '../edits/support.ts';

const ragged = noteText('time mat.DO open.DO\n20:00 8.21   8.31 ; lid\n20:30 8.2   8.3\n');
const aligned = noteText('time   mat.DO  open.DO\n20:00    8.21     8.31   ; lid\n20:30    8.2      8.3\n');

async function run(...args: string[]): Promise<{ code: number; out: string; progress: string }> {
  const [out, progress]: string[][] = [[], []];
  const code = await main(args, { result: (text) => { out!.push(`${text}\n`); }, progress: (text) => { progress!.push(`${text}\n`); }, colours: false });
  return { code, out: out!.join(''), progress: progress!.join('') };
}

/** What a command prints with `--json`, held against its schema. */
async function json(command: string, ...args: string[]): Promise<{ code: number; value: Record<string, unknown> }> {
  const { code, out } = await run(command, ...args, '--json');
  const check = new Ajv({ allErrors: true, allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(readFileSync(`src/cli/schemas/${code === 2 ? 'error' : command}.schema.json`, 'utf8')) as object);
  const value = JSON.parse(out) as Record<string, unknown>;
  assert.ok(check(value), `${command}: ${JSON.stringify(check.errors)}\n${out}`);
  return { code, value };
}

suite('command line: format and seal', () => {
  let folder = '';
  let note = '';
  const write = (text: string): void => { writeFileSync(note, text); };
  const read = (): string => readFileSync(note, 'utf8');
  setup(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-tidy-')); note = path.join(folder, 'night.tank.md'); write(ragged); });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  test('format: --check changes nothing and exits 1; then the file is aligned, once', async () => {
    assert.deepEqual(await json('format', note, '--check'), { code: 1, value: { changed: [note] } });
    assert.equal(read(), ragged);
    assert.deepEqual(await json('format', folder), { code: 0, value: { changed: [note] } });
    assert.equal(read(), aligned);
    assert.deepEqual(await json('format', note, '--check'), { code: 0, value: { changed: [] } });
    assert.equal((await json('format', path.join(folder, 'none.tank.md'))).code, 2);
  });
  test('format: CRLF and a byte order mark stay', async () => {
    write(`\ufeff${ragged.replaceAll('\n', '\r\n')}`);
    assert.equal((await run('format', note)).code, 0);
    assert.equal(read(), `\ufeff${aligned.replaceAll('\n', '\r\n')}`);
  });
  test('seal: the line as it stands in the note; twice is refused in words; a changed value is named by check', async () => {
    const { code, value } = await json('seal', note);
    assert.equal(code, 0);
    assert.equal(value['refused'], null);
    assert.match(String(value['sealed']), /^# sealed \S+ sha256:/u);
    assert.ok(read().includes(`\n${String(value['sealed'])}\n`));
    const again = await json('seal', note);
    assert.deepEqual([again.code, again.value['sealed']], [1, null]);
    assert.match(String(again.value['refused']), /already sealed/u);
    assert.equal((await run('format', note)).code, 0);
    assert.doesNotMatch((await run('check', note)).out, /seal-broken/u);
    write(read().replace('8.21', '8.12'));
    assert.match((await run('check', note)).out, /mat\.DO[^\n]*20:00|20:00[^\n]*mat\.DO/u);
  });
  test('seal --plan: before the first reading alone; a later change of the plan shows', async () => {
    write(noteText('time  mat.DO  mat.T  open.DO  open.T  room.P\n'));
    const { code, value } = await json('seal', note, '--plan');
    assert.equal(code, 0);
    assert.match(String(value['sealed']), /^sealed: \S+ sha256:/u);
    assert.match(String((await json('seal', note, '--plan')).value['refused']), /already sealed/u);
    assert.doesNotMatch((await run('check', note)).out, /plan-changed-after-seal/u);
    write(read().replace('water depth: 28 cm', 'water depth: 29 cm'));
    assert.match((await run('check', note)).out, /information plan-changed-after-seal: .*tanks were changed/u);
    write(ragged);
    assert.match(String((await json('seal', note, '--plan')).value['refused']), /readings already/u);
    assert.equal((await json('seal', note, '--plan', '--block', '1')).code, 2);
  });
  test('seal: by name, by number; no such table, no note', async () => {
    write(`${ragged.replace('```readings', '```readings evening')}\n\`\`\`readings\ntime  mat.T\n20:00  24.9\n\`\`\`\n`);
    assert.equal((await json('seal', note, '--block', 'evening')).code, 0);
    assert.equal((await json('seal', note, '--block', '2')).code, 0);
    assert.equal(read().match(/# sealed/gu)!.length, 2);
    assert.equal((await json('seal', note, '--block', 'morning')).code, 1);
    assert.equal((await json('seal', path.join(folder, 'none.tank.md'))).code, 2);
  });
});
