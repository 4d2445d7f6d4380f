// Logging from the command line: rows that are acknowledged are on disk, whatever fails at whatever step.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync, lstatSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Ajv } from 'ajv';
import { diskPort, type FilePort } from '../../../src/cli/filePort.ts';
import { forgetWaiting, logInto, type LogOutcome, type LogRequest } from '../../../src/cli/logInto.ts';
import { lockFile } from '../../../src/cli/noteLock.ts';
import { main } from '../../../src/cli/main.ts';

/** Invented readings; they exist to try the log. */
const text = `# A night

\`\`\`protocol
question: Does a floating mat lower the overnight oxygen minimum?
place: {latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm, plants: water lettuce}
  open: {role: control, size: 50 x 30 x 32 cm, water depth: 28 cm, plants: none}
differs: [plants]
schedule:
  start: 2026-03-14 20:00
  light off: 22:00
  light on: 2026-03-15 09:30
  end: 2026-03-15 10:00
  every: 30 min
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe, accuracy: 0.1 mg/L}
  T: {what: water temperature, unit: degC, with: probe, accuracy: 0.2 degC}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  open.DO  open.T
20:00    8.21   24.9     8.31    24.7
20:30    8.24   24.9     8.30    24.7
21:00    8.25   24.9     8.30    24.7
21:30    8.25   24.8     8.29    24.6
\`\`\`

The end.
`;
const tenPm = Date.parse('2026-03-14T22:00:30+01:00');
const row = ['8.26', '24.8', '8.28', '24.6'];

suite('evenwater log', () => {
  let folder = '';
  let name = '';
  let state = '';
  setup(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-log-'));
    name = path.join(folder, 'night.tank.md');
    state = path.join(folder, 'state');
    writeFileSync(name, text);
  });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  const log = (values: readonly string[], more: Partial<LogRequest> = {}, port: FilePort = diskPort): Promise<LogOutcome> => (
    logInto(port, { name, values, at: null, remark: null, anyway: false, now: tenPm, ...more }, state));
  const note = (): string => readFileSync(name, 'utf8');
  const beside = (): string[] => readdirSync(folder).filter((each) => each !== 'night.tank.md' && each !== 'state');

  test('writes the row of the slot that is due, aligned, and leaves nothing beside the note', async () => {
    const outcome = await log(row);
    assert.equal(outcome.logged?.row, '22:00    8.26   24.8     8.28    24.6');
    assert.equal(note(), text.replace('24.6\n```', `24.6\n${outcome.logged!.row}\n\`\`\``));
    assert.equal(note().split('\n')[outcome.logged!.line - 1], outcome.logged!.row);
    assert.deepEqual(beside(), []);
  });

  test('a typed time, a remark, a decimal comma; the same row twice is written once', async () => {
    await log(['8,26', '24.8', '-', '24.6'], { at: '21:47', remark: 'open probe being rinsed' });
    assert.match(note(), /\n21:47 +8\.26 +24\.8 +- +24\.6 {3}; open probe being rinsed\n/);
    const before = note();
    assert.equal((await log(['8.26', '24.8', '-', '24.6'], { at: '21:47' })).logged?.already, true);
    assert.equal(note(), before);
  });

  test('what looks wrong is refused until --anyway; too few and unreadable values always', async () => {
    for (const values of [['8.26', '76.6', '8.28', '24.6'], ['82.6', '24.8', '8.28', '24.6'], ['24.8', '8.26', '8.28', '24.6']]) {
      const outcome = await log(values);
      assert.ok(outcome.refused !== null && outcome.warnings.length > 0 && !outcome.kept, values.join(' '));
      assert.equal(note(), text);
    }
    assert.ok((await log(['8.26', '24.8'], { anyway: true })).refused?.includes('open.DO'));
    assert.ok((await log(['8.26', 'warm', '8.28', '24.6'], { anyway: true })).refused?.includes('mat.T'));
    assert.equal(note(), text);
    assert.ok((await log(['8.26', '76.6', '8.28', '24.6'], { anyway: true })).logged);
  });

  test('byte order mark, CRLF and mode stay; a link stays a link', async () => {
    const crlf = `\ufeff${text.replaceAll('\n', '\r\n')}`;
    writeFileSync(name, crlf);
    chmodSync(name, 0o640);
    const link = path.join(folder, 'link.tank.md');
    symlinkSync(name, link);
    assert.ok((await log(row, { name: link })).logged);
    assert.ok(note().startsWith('\ufeff#') && !/[^\r]\n/.test(note()) && note().includes('\r\n22:00    8.26   24.8     8.28    24.6\r\n'));
    assert.equal(note().length, crlf.length + '22:00    8.26   24.8     8.28    24.6\r\n'.length);
    assert.equal(statSync(name).mode & 0o777, 0o640);
    assert.ok(lstatSync(link).isSymbolicLink());
  });

  test('a file that changed on disk meanwhile keeps the change and gets the row', async () => {
    let reads = 0;
    const port: FilePort = { ...diskPort, async create(file, bytes, like) {
      await diskPort.create(file, bytes, like);
      if (file.endsWith('.part') && reads++ === 0) writeFileSync(name, note().replace('The end.', 'The end, by another hand.').replace('20:30    8.24', '20:30    8.23'));
    } };
    assert.ok((await log(row, {}, port)).logged);
    assert.match(note(), /by another hand/);
    assert.match(note(), /20:30 +8\.23/);
    assert.match(note(), /22:00 +8\.26/);
  });

  test('a full disk at any step: the note stays as it was, and a row that is kept is written later', async () => {
    for (const where of ['.json', '.lock', '.part']) {
      writeFileSync(name, text);
      rmSync(state, { recursive: true, force: true });
      const full: FilePort = { ...diskPort, async create(file, bytes, like) {
        if (!file.endsWith(where)) return diskPort.create(file, bytes, like);
        // Half a file, as a full disk leaves it.
        await diskPort.create(file, bytes.subarray(0, bytes.length >> 1), like);
        throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
      } };
      const outcome = await log(row, {}, full);
      if (where === '.json') {
        // Without a journal the note itself still takes the row.
        assert.ok(outcome.logged && outcome.warnings.some((each) => each.message.includes('ENOSPC')));
        continue;
      }
      assert.equal(outcome.logged, null, where);
      assert.match(outcome.refused ?? '', /disk is full/);
      assert.ok(outcome.kept);
      assert.equal(note(), text);
      assert.deepEqual(beside(), [], where);
      const later = await log([]);
      assert.equal(later.replayed.length, 1);
      assert.match(note(), /\n22:00 +8\.26 +24\.8 +8\.28 +24\.6\n/);
      assert.equal((await log([])).replayed.length, 0);
    }
  });

  test('death at every single step: no torn note, no acknowledged row lost, the next run writes what the journal holds', async () => {
    let steps = 0;
    const dying = (last: number): FilePort => {
      let step = 0;
      const die = async <T>(work: () => Promise<T>): Promise<T> => {
        step += 1;
        steps = Math.max(steps, step);
        if (step > last) throw new Error('killed');
        return work();
      };
      return Object.fromEntries(Object.entries(diskPort).map(([key, method]) => [key, (...all: never[]) => die(() => (method as (...each: never[]) => Promise<unknown>)(...all))])) as unknown as FilePort;
    };
    let replayed = 0;
    for (let last = 0; last <= steps || last === 0; last += 1) {
      writeFileSync(name, text);
      rmSync(state, { recursive: true, force: true });
      const outcome = await log(row, {}, dying(last)).catch(() => null);
      const written = text.replace('24.6\n```', '24.6\n22:00    8.26   24.8     8.28    24.6\n```');
      assert.ok(note() === text || note() === written, `torn after step ${last}`);
      if (outcome?.logged) assert.equal(note(), written, `lost after step ${last}`);
      // The lock names this process, which lives on; a killed one does not.
      if (existsSync(lockFile(name))) writeFileSync(lockFile(name), `999999999 ${os.hostname()} x`);
      const journaled = existsSync(path.join(state, 'journal')) && readdirSync(path.join(state, 'journal')).some((each) => readdirSync(path.join(state, 'journal', each)).length > 0);
      const next = await log([]);
      replayed += next.replayed.length;
      assert.equal(note(), journaled ? written : note() === text ? text : written, `after step ${last}`);
      assert.deepEqual(beside(), [], `left beside after step ${last}`);
    }
    assert.ok(steps > 10 && replayed >= 5, `${steps} steps, ${replayed} replayed`);
  });

  test('a read-only file is left alone and the row kept, also when the superuser asks', async () => {
    chmodSync(name, 0o444);
    const outcome = await log(row);
    assert.match(outcome.refused ?? '', /read-only/);
    assert.ok(outcome.kept);
    assert.equal(note(), text);
    chmodSync(name, 0o644);
    assert.equal((await log(['8.02', '24.8', '8.26', '24.6'], { now: tenPm + 1_800_000 })).replayed.length, 1);
    assert.match(note(), /22:00 +8\.26[^\n]*\n22:30 +8\.02/);
  });

  test('a table or a plan that was broken by hand: a clear message, the row kept as typed, written once mended', async () => {
    for (const broken of [text.replace('mat.DO  mat.T  open.DO  open.T', 'mat DO; heads'), text.replace('24.6\n```\n', '24.6\n'), text.replace('```protocol', '```plan')]) {
      writeFileSync(name, broken);
      const outcome = await log(row, { remark: 'lid open' });
      assert.ok(outcome.refused !== null && outcome.logged === null, broken.slice(0, 30));
      assert.equal(note(), broken);
      assert.ok(outcome.kept, outcome.refused);
      writeFileSync(name, text);
      assert.equal((await log([])).replayed.length, 1);
      assert.match(note(), /\n22:00 +8\.26 +24\.8 +8\.28 +24\.6 {3}; lid open\n/);
    }
  });

  test('a row that can never be written any more waits, is told each time, and is given up when its keeper says so', async () => {
    chmodSync(name, 0o444);
    await log(row);
    chmodSync(name, 0o644);
    writeFileSync(name, text.replace('24.6\n```', '24.6\n22:00    8.40   24.8     8.28    24.6\n```'));
    const outcome = await log([]);
    assert.equal(outcome.waiting.length, 1);
    assert.match(outcome.waiting[0]!.reason, /already ha/);
    assert.deepEqual(await forgetWaiting(diskPort, name, state), [row.join(' ')]);
    assert.equal((await log([])).waiting.length, 0);
  });

  test('a lock whose maker is gone is taken over; a living one is waited for', async () => {
    writeFileSync(lockFile(name), `999999999 ${os.hostname()} x`);
    assert.ok((await log(row)).logged);
    writeFileSync(lockFile(name), `${process.pid} ${os.hostname()} x`);
    setTimeout(() => { rmSync(lockFile(name)); }, 200);
    const started = Date.now();
    assert.ok((await log(['8.02', '24.8', '8.26', '24.6'], { now: tenPm + 1_800_000 })).logged);
    assert.ok(Date.now() - started >= 150);
  });

  test('eight writers at once lose no row', async () => {
    const times = ['22:00', '22:30', '23:00', '23:30', '22:10', '22:20', '22:40', '22:50'];
    const outcomes = await Promise.all(times.map((at) => log(['8.0', '24.8', '8.2', '24.6'], { at, anyway: true })));
    assert.ok(outcomes.every((each) => each.logged), JSON.stringify(outcomes.filter((each) => !each.logged)));
    for (const at of times) assert.match(note(), new RegExp(`\\n${at} +8\\.0 `));
    assert.deepEqual(beside(), []);
  });

  test('the command: a negative value is a value, JSON validates, exit codes', async () => {
    process.env['EVENWATER_STATE'] = state;
    try {
      const run = async (...args: string[]) => {
        const out: string[] = [];
        const code = await main(args, { result: (each) => { out.push(each); }, progress: () => undefined, colours: false });
        return { code, out: out.join('\n') };
      };
      const check = new Ajv({ allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(readFileSync('src/cli/schemas/log.schema.json', 'utf8')) as object);
      for (const [args, code] of [
        [['8.26', '24.8', '8.28', '-0.4', '--at', '2026-03-14T22:00'], 1], [['8.26', '24.8', '8.28', '24.6', '--at', '2026-03-14T22:00', '--anyway'], 0], [[], 0], [['--forget'], 0],
      ] as const) {
        const result = await run('log', name, ...args, '--json');
        assert.equal(result.code, code, args.join(' '));
        const value: unknown = JSON.parse(result.out);
        assert.ok(check(value), `${JSON.stringify(check.errors)} ${result.out}`);
      }
      for (const wrong of [['log'], ['log', name, '1', '--nonsense'], ['log', 'no/such.tank.md', '1'], ['log', name, '--at', '22:00'], ['log', name, '1;2']]) assert.equal((await run(...wrong)).code, 2, wrong.join(' '));
      assert.equal((await run('format', name, '--check')).code, 0);
      assert.match((await run('seal', name)).out, /^# sealed /);
      assert.equal((await run('seal', name)).code, 1);
    } finally {
      delete process.env['EVENWATER_STATE'];
    }
  });

  test('an unprivileged user at a note and a folder of somebody else: nothing is written, the row is kept', function () {
    if (process.getuid?.() !== 0 || spawnSync('setpriv', ['--version']).status !== 0) {
      console.log('      skipped: another user can be tried only by the superuser, with setpriv');
      this.skip();
    }
    chmodSync(folder, 0o755);
    chmodSync(name, 0o644);
    const own = mkdtempSync(path.join(os.tmpdir(), 'evenwater-nobody-'));
    chmodSync(own, 0o777);
    try {
      const args = ['--reuid=65534', '--regid=65534', '--clear-groups', process.execPath, '--import', 'tsx', 'src/cli/run.ts', 'log', name, ...row, '--at', '2026-03-14T22:00', '--anyway', '--json'];
      const result = spawnSync('setpriv', args, { encoding: 'utf8', env: { ...process.env, EVENWATER_STATE: path.join(own, 'state'), TMPDIR: own, TSX_DISABLE_CACHE: '1' } });
      const outcome = JSON.parse(result.stdout) as LogOutcome;
      assert.equal(result.status, 1, result.stderr);
      assert.match(outcome.refused ?? '', /read-only|cannot be written/);
      assert.ok(outcome.kept);
      assert.equal(note(), text);
    } finally {
      rmSync(own, { recursive: true, force: true });
    }
  });

  test('a crossed stop rule is said as the row is logged, with what the plan says to do', async () => {
    writeFileSync(name, text.replace('measure:\n', 'stop if:\n  - {when: mat.DO < 3 mg/L, do: Switch the air pump on and end the run}\nmeasure:\n'));
    const said: string[] = [];
    const shown: string[] = [];
    const output = { result: (words: string) => { shown.push(words); }, progress: (words: string) => { said.push(words); }, colours: false };
    const before = process.env['EVENWATER_STATE'];
    process.env['EVENWATER_STATE'] = state;
    try {
      assert.equal(await main(['log', name, '8.26', '24.8', '8.28', '24.6', '--at', '2026-03-14T22:00', '--anyway'], output), 0, said.join(' '));
      assert.ok(!said.some((each) => each.includes('STOP RULE')));
      assert.equal(await main(['log', name, '2.90', '24.8', '8.28', '24.6', '--at', '2026-03-14T22:30', '--anyway'], output), 0, said.join(' '));
      assert.match(said.at(-1)!, /^STOP RULE CROSSED: .*3 mg\/L\. The plan says: Switch the air pump on and end the run\./);
      assert.equal(await main(['log', name, '2.80', '24.8', '8.28', '24.6', '--at', '2026-03-14T23:00', '--anyway', '--json'], output), 0, said.join(' '));
      const value = JSON.parse(shown.at(-1)!) as { crossed: string[] };
      assert.equal(value.crossed.length, 1);
    } finally {
      if (before === undefined) delete process.env['EVENWATER_STATE']; else process.env['EVENWATER_STATE'] = before;
    }
  });
});

