// The command line as a person or a script meets it: exit codes, streams, JSON that validates, no dependence on the machine.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync, mkdirSync, symlinkSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Ajv, type ValidateFunction } from 'ajv';
import { commands, main } from '../../../src/cli/main.ts';

const root = path.resolve(import.meta.dirname, '../../..');
const sample = path.join(root, 'samples/overnight-oxygen.tank.md');

async function run(...args: string[]): Promise<{ code: number; out: string; progress: string }> {
  const out: string[] = [];
  const progress: string[] = [];
  const code = await main(args, { result: (text) => { out.push(`${text}\n`); }, progress: (text) => { progress.push(`${text}\n`); }, colours: false });
  return { code, out: out.join(''), progress: progress.join('') };
}

function schema(name: string): ValidateFunction {
  return new Ajv({ allErrors: true, allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(readFileSync(path.join(root, `src/cli/schemas/${name}.schema.json`), 'utf8')) as object);
}

function validate(name: string, json: string): unknown {
  const value: unknown = JSON.parse(json);
  const check = schema(name);
  assert.ok(check(value), `${name}: ${JSON.stringify(check.errors)}\n${json}`);
  return value;
}

suite('command line', () => {
  let folder = '';
  setup(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-cli-')); });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  test('help and version exit 0; every command has help', async () => {
    assert.equal((await run('--help')).code, 0);
    assert.equal((await run('--version')).code, 0);
    for (const command of commands) {
      const help = await run(command.name, '--help');
      assert.equal(help.code, 0);
      assert.match(help.out, new RegExp(`^Usage: evenwater ${command.name} `));
    }
  });

  test('wrong use exits 2, in words on stderr or as one JSON document', async () => {
    for (const args of [[], ['nonsense'], ['--nonsense'], ['check'], ['check', 'no/such/place'], ['check', '--nonsense', sample], ['ask', sample], ['publish', sample], ['publish', '--to', folder]]) {
      const plain = await run(...args);
      assert.equal(plain.code, 2, args.join(' '));
      assert.equal(plain.out, '', args.join(' '));
      assert.notEqual(plain.progress, '', args.join(' '));
      const json = await run(...args, '--json');
      assert.equal(json.code, 2, args.join(' '));
      validate('error', json.out);
    }
  });

  test('a folder means every note below it, dot folders and node_modules left out; none is wrong use', async () => {
    assert.equal((await run('check', folder)).code, 2);
    for (const name of ['b.tank.md', 'a/deep/c.tank.md', '.hidden/d.tank.md', 'node_modules/e.tank.md', 'plain.md']) {
      mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
      writeFileSync(path.join(folder, name), readFileSync(sample));
    }
    const { out, code } = await run('check', folder, '--json');
    const value = validate('check', out) as { files: { file: string }[] };
    assert.deepEqual(value.files.map((each) => path.relative(folder, each.file)), ['a/deep/c.tank.md', 'b.tank.md']);
    assert.equal(code, 0);
  });

  test('check speaks German when asked, in the same places with the same codes; JSON stays as it is', async () => {
    const note = path.join(folder, 'night.tank.md');
    writeFileSync(note, `${readFileSync(sample, 'utf8')}\nThe lowest was {99.0 mg/L = min(clear.DO)}.\n`);
    const [english, german] = [await run('check', note), await run('check', note, '--language', 'de')];
    const places = (text: string): string[] => text.trimEnd().split('\n').map((line) => /^.*?: \w+ [a-z-]+: /.exec(line)![0]);
    assert.deepEqual([german.code, places(german.out)], [english.code, places(english.out)]);
    assert.match(german.out, /claim-mismatch: Im Text steht 99\.0 mg\/L, aber `min\(clear\.DO\)` ergibt \d/);
    assert.equal((await run('check', note, '--language', 'de', '--json')).out, (await run('check', note, '--json')).out);
    const unknown = await run('check', note, '--language', 'xx');
    assert.equal(unknown.code, 2);
    assert.match(unknown.progress, /"xx"; there are en and de/);
  });

  test('check prints file:line:column: severity code: sentence, sorted, and exits 1 on an error', async () => {
    const text = readFileSync(sample, 'utf8').replace(/\{7\.77 mg\/L = at\(duckweed\.DO, 23:00\)\}/, '{7.87 mg/L = at(duckweed.DO, 23:00)}');
    writeFileSync(path.join(folder, 'night.tank.md'), text);
    const { out, code } = await run('check', path.join(folder, 'night.tank.md'));
    assert.equal(code, 1);
    const lines = out.trimEnd().split('\n');
    for (const line of lines) assert.match(line, /^.+\.tank\.md:\d+:\d+: (error|warning|information|hint) [a-z-]+: \S.*$/);
    const mismatch = lines.find((line) => line.includes(' error claim-mismatch: '));
    assert.ok(mismatch, out);
    const [, line, column] = /:(\d+):(\d+):/.exec(mismatch)!;
    assert.ok(text.split('\n')[Number(line) - 1]!.slice(Number(column) - 1).match(/^(\{)?7\.87/), mismatch);
    const places = lines.map((each) => /:(\d+):(\d+):/.exec(each)!.slice(1).map(Number) as [number, number]);
    assert.deepEqual(places, [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1]));
  });

  test('exit 2 wins over 1, and the readable notes are still checked', async () => {
    writeFileSync(path.join(folder, 'bad.tank.md'), readFileSync(sample, 'utf8').replace('{7.77 mg/L', '{7.87 mg/L'));
    const both = await run('check', path.join(folder, 'bad.tank.md'), path.join(folder, 'missing.tank.md'));
    assert.equal(both.code, 2);
    assert.match(both.out, /claim-mismatch/);
    writeFileSync(path.join(folder, 'latin.tank.md'), Buffer.from([0x23, 0x20, 0xe9, 0x0a]));
    assert.equal((await run('check', path.join(folder, 'latin.tank.md'))).code, 2);
  });

  test('ask prints one value of each type, and its JSON validates', async () => {
    const cases: [string, string, unknown, string | null][] = [
      ['min(duckweed.DO)', 'number', 5.83, 'mg/L'],
      ['count(duckweed.DO)', 'number', 26, '1'],
      ['fall(duckweed.DO, 22:00..23:00)', 'number', 0.41, 'mg/L'],
      ['rate(duckweed.DO, 22:00..23:00)', 'number', -0.41, 'mg/L/h'],
      ['percent-fall(duckweed.DO, 22:00..23:00)', 'number', 100 * 0.41 / 8.18, '%'],
      ['at(duckweed.T, 22:00)', 'number', 24.3, 'degC'],
      ['at(duckweed.T, 22:00) in degF', 'number', 75.74, 'degF'],
      ['volume(duckweed)', 'number', 32.76, 'L'],
      ['length(duckweed)', 'number', 45, 'cm'],
      ['time-of-min(duckweed.DO)', 'instant', '2026-04-12T07:30:00+03:00', null],
      ['duration(light-off..light-on)', 'duration', 10.5, 'h'],
      ['min(duckweed.DO) < 6 mg/L', 'truth', true, null],
      ['light-off..light-on', 'window', { from: '2026-04-11T22:00:00+03:00', to: '2026-04-12T08:30:00+03:00' }, null],
    ];
    for (const [formula, type, expected, unit] of cases) {
      const { out, code } = await run('ask', sample, formula, '--json');
      assert.equal(code, 0, `${formula}: ${out}`);
      const value = validate('ask', out) as { type: string; value: unknown; unit: string | null };
      assert.equal(value.type, type, formula);
      if (typeof expected === 'number') assert.ok(Math.abs((value.value as number) - expected) < 1e-9, `${formula}: ${String(value.value)}`);
      else assert.deepEqual(value.value, expected, formula);
      if (unit !== null) assert.equal(value.unit, unit, formula);
    }
    const { out } = await run('ask', sample, 'duckweed.DO', '--json');
    const series = validate('ask', out) as { type: string; value: { time: string; value: number; flags: string[] }[] };
    assert.equal(series.type, 'series');
    assert.deepEqual(series.value[0], { time: '2026-04-11T20:00:00+03:00', value: 8.18, flags: [] });
  });

  test('ask gives the value of a fitted time with its half-width, and says on stderr what a reader must know of it', async () => {
    const { out } = await run('ask', sample, 'time-to(duckweed.DO, 6 mg/L)', '--json');
    const value = validate('ask', out) as { type: string; unit: string; uncertainty: number };
    assert.deepEqual([value.type, value.unit], ['duration', 'h']);
    assert.ok(value.uncertainty > 0.1 && value.uncertainty < 4, String(value.uncertainty));
    const said = await run('ask', sample, 'contrast(DO, dark)');
    assert.match(said.out, /^-?\d+\.\d+ mg\/L\n?$/u);
    assert.match(said.progress, /^With its 95 % half-width: -\d+\.\d+ ± \d+\.\d+ mg\/L\nOne tank a side: these two tanks differ so/u);
  });

  test('ask exits 1 with the problems of the formula or of the readings behind it, whatever else is wrong in the note', async () => {
    const unknown = await run('ask', sample, 'min(duckwed.DO)', '--json');
    assert.equal(unknown.code, 1);
    assert.match((validate('problems', unknown.out) as { problems: { code: string }[] }).problems[0]!.code, /^unknown-name$/);
    const broken = path.join(folder, 'broken.tank.md');
    writeFileSync(broken, readFileSync(sample, 'utf8').replace('{7.77 mg/L', '{7.87 mg/L').replace('8.18        24.3      8.14', '8.18        24.3      8,,14'));
    assert.equal((await run('ask', broken, 'min(duckweed.DO)')).code, 0);
    assert.equal((await run('ask', broken, 'min(clear.DO)')).code, 1);
    assert.equal((await run('ask', path.join(folder, 'none.tank.md'), 'min(clear.DO)')).code, 2);
  });

  test('publish writes one file whole, or none and the reasons', async () => {
    const good = await run('publish', sample, '--to', path.join(folder, 'out'), '--json');
    assert.equal(good.code, 0, good.out);
    const { written } = validate('publish', good.out) as { written: string[] };
    assert.deepEqual(readdirSync(path.join(folder, 'out')), ['overnight-oxygen.html']);
    assert.equal(written.length, 1);
    const bad = path.join(folder, 'bad.tank.md');
    writeFileSync(bad, readFileSync(sample, 'utf8').replace('{7.77 mg/L', '{7.87 mg/L'));
    const refused = await run('publish', bad, '--to', path.join(folder, 'none'), '--json');
    assert.equal(refused.code, 1);
    const refusal = validate('publish', refused.out) as { written: string[]; problems: { code: string }[] };
    assert.deepEqual(refusal.written, []);
    assert.ok(refusal.problems.some((each) => each.code === 'claim-mismatch'));
    assert.throws(() => readdirSync(path.join(folder, 'none')));
  });

  test('a data file outside the note\'s folder is not read, not even through a link', async () => {
    mkdirSync(path.join(folder, 'notes'));
    writeFileSync(path.join(folder, 'secret.csv'), 'time,DO\n20:00,8.1\n');
    symlinkSync(path.join(folder, 'secret.csv'), path.join(folder, 'notes/link.csv'));
    const text = readFileSync(sample, 'utf8');
    const block = (file: string): string => text.replace(/```readings[\s\S]*?\n```/, `\`\`\`readings\nfrom: ${file}\ncolumns:\n  time: time\n  DO: duckweed.DO\n\`\`\``);
    writeFileSync(path.join(folder, 'notes/a.tank.md'), block('../secret.csv'));
    writeFileSync(path.join(folder, 'notes/b.tank.md'), block('link.csv'));
    assert.match((await run('check', path.join(folder, 'notes/a.tank.md'))).out, /error data-file-outside/);
    assert.match((await run('check', path.join(folder, 'notes/b.tank.md'))).out, /error data-file-(missing|outside)/);
  });

  test('output is the same in any time zone, language and folder', function () {
    this.timeout(120_000);
    const bundle = path.join(root, 'dist/cli.js');
    const outputs = [['UTC', 'C', root], ['Pacific/Auckland', 'de_DE.UTF-8', folder]].map(([TZ, LANG, cwd]) => {
      const env = { ...process.env, TZ, LANG, LC_ALL: LANG };
      const out = path.join(folder, `out-${TZ!.replace('/', '-')}`);
      const texts = [['check', sample], ['ask', sample, 'time-of-min(duckweed.DO)'], ['ask', sample, 'duckweed.DO', '--json'], ['publish', sample, '--to', out]]
        .map((args) => spawnSync(process.execPath, [bundle, ...args], { cwd, env, encoding: 'utf8' }))
        .map((result) => `${result.status} ${result.stdout.replaceAll(out, 'OUT')} ${result.stderr}`);
      return [...texts, readFileSync(path.join(out, 'overnight-oxygen.html'), 'utf8')];
    });
    assert.deepEqual(outputs[0], outputs[1]);
  });

  test('publish says that nothing has been read yet, but not where only the plan is printed', async () => {
    const template = 'samples/templates/blank.tank.md';
    assert.match((await run('publish', template, '--to', folder)).out, /information nothing-read-yet: /u);
    assert.match((await run('publish', template, '--to', folder)).out, /information template-text: /u);
    assert.doesNotMatch((await run('publish', template, '--to', folder, '--plan')).out, /nothing-read-yet|template-text/u);
    assert.doesNotMatch((await run('publish', sample, '--to', folder)).out, /nothing-read-yet/u);
  });

  test('find lists formulas for loose and mismatched numbers; its JSON validates', async () => {
    const note = path.join(folder, 'find.tank.md');
    writeFileSync(note, `${readFileSync(sample, 'utf8')}\n\nAt 02:00 the duckweed tank held 6.83 mg/L, at 03:00 {6.35 mg/L = at(duckweed.DO, 03:00)}.\n`);
    const plain = await run('find', note);
    assert.equal(plain.code, 0);
    assert.match(plain.out, /6\.83 mg\/L\n +[\d.]+ {2}at\(duckweed\.DO, 02:00\) {2}gives 6\.83 mg\/L/);
    assert.match(plain.out, /two digits have changed places/);
    const found = validate('find', (await run('find', note, '--json')).out) as { text: string; line: number; candidates: { formula: string }[] }[];
    assert.equal(found.find((each) => each.text === '6.83 mg/L')?.candidates[0]?.formula, 'at(duckweed.DO, 02:00)');
    assert.deepEqual(validate('find', (await run('find', sample, '--json')).out), []);
    assert.equal((await run('find')).code, 2);
  });
});
