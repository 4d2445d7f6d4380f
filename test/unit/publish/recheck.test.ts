// A post carries its note and data byte for byte; each number of it, altered, is found.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdtempSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Ajv } from 'ajv';
import { main } from '../../../src/cli/main.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { fromBase64, toBase64 } from '../../../src/publish/base64.ts';
import { comparePosts } from '../../../src/publish/compare.ts';
import { pathIsSafe, readEmbedded } from '../../../src/publish/embed.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { recheckPost } from '../../../src/publish/recheck.ts';
import { samplePostText } from './samplePost.ts';

const root = path.resolve(import.meta.dirname, '../../..');

async function run(...args: string[]): Promise<{ code: number; out: string; progress: string }> {
  const out: string[] = [];
  const progress: string[] = [];
  const code = await main(args, { result: (text) => { out.push(text); }, progress: (text) => { progress.push(text); }, colours: false });
  return { code, out: out.join('\n'), progress: progress.join('\n') };
}

function validated(name: string, text: string): Record<string, unknown> {
  const check = new Ajv({ allErrors: true, strictTypes: false }).compile(JSON.parse(readFileSync(path.join(root, `src/cli/schemas/${name}.schema.json`), 'utf8')) as object);
  const value = JSON.parse(text) as Record<string, unknown>;
  assert.ok(check(value), JSON.stringify(check.errors));
  return value;
}

/** Where the numbers of a page stand that a reader (or a program) can see: in text, in drawings, in values, labels and times. */
function numberPlaces(html: string): number[] {
  const places: number[] = [];
  const style = [html.indexOf('<style>'), html.indexOf('</style>')] as const;
  for (const match of html.matchAll(/\d+(?:[.,]\d+)*/g)) {
    if (match.index > style[0] && match.index < style[1]) continue;
    places.push(match.index + match[0].length - 1);
  }
  return places;
}

const altered = (text: string, at: number): string => `${text.slice(0, at)}${(Number(text[at]) + 1) % 10}${text.slice(at + 1)}`;

suite('publish: recheck', () => {
  let html = '';
  suiteSetup(async () => { html = (await publishPost(readNote(samplePostText, new Map()), { stem: 'night', toolVersion: '1.2.3', published: '2026-04-13T10:00:00+03:00' })).html; });

  test('base64 is the host\'s own, and comes back', () => {
    for (let length = 0; length < 70; length += 1) {
      const bytes = Uint8Array.from({ length }, (_, index) => (index * 37 + length * 11) & 255);
      assert.equal(toBase64(bytes), Buffer.from(bytes).toString('base64'));
      assert.deepEqual(fromBase64(toBase64(bytes)), bytes);
    }
    for (const broken of ['A', 'AB', 'A===', 'AB C', 'AB\nC', 'A=BC']) assert.equal(fromBase64(broken), null, broken);
  });

  test('an untouched post holds', async () => {
    const report = await recheckPost(html, '1.2.3');
    assert.deepEqual([report.holds, report.differences, report.faults, report.published], [true, [], [], '2026-04-13T10:00:00+03:00']);
    assert.equal(report.claims, 5);
    assert.ok(report.values > 100);
  });

  test('each printed number, altered in turn, is found at its place', () => {
    const embedded = html.indexOf('<div class="evenwater-files">');
    const embeddedEnd = html.indexOf('</div>', embedded);
    const places = numberPlaces(html).filter((at) => at < embedded || at > embeddedEnd);
    assert.ok(places.length > 5000, String(places.length));
    const missed: string[] = [];
    for (const at of places) {
      const found = comparePosts(altered(html, at), html);
      if (found.length !== 1 || found[0]!.range.start > at || found[0]!.range.end <= at) missed.push(`${html.slice(Math.max(0, at - 60), at + 10)}: ${JSON.stringify(found)}`);
    }
    assert.deepEqual(missed.slice(0, 5), []);
  }).timeout(120_000);

  test('each part of the note inside, altered, is found by its hash; so is a hash', () => {
    const link = /<a class="evenwater-file"[^>]*>/.exec(html)!;
    const start = link.index + link[0].indexOf(';base64,') + 8;
    const end = link.index + link[0].lastIndexOf('"');
    for (let at = start; at < end - 4; at += 61) {
      const other = `${html.slice(0, at)}${html[at] === 'A' ? 'B' : 'A'}${html.slice(at + 1)}`;
      assert.equal(readEmbedded(other).faults[0]?.kind, 'hash-differs', String(at));
    }
    const hash = createHash('sha256').update(samplePostText, 'utf8').digest('hex');
    for (const match of html.matchAll(new RegExp(hash, 'g'))) {
      const other = html.slice(0, match.index) + hash.replace(/^./, (digit) => (digit === 'a' ? 'b' : 'a')) + html.slice(match.index + 64);
      assert.ok(readEmbedded(other).faults.length > 0 || comparePosts(other, html).length > 0);
    }
  });

  test('a claim, a table cell, a sentence and a value behind a number: said with formula, printed and computed', async () => {
    const claim = html.replace(/(<data class="evenwater-claim[^>]*>)4\.80 mg\/L/, '$14.90 mg/L');
    const [first, ...rest] = (await recheckPost(claim, '1.2.3')).differences;
    assert.deepEqual(rest, []);
    assert.deepEqual({ ...first, range: null }, { kind: 'number', range: null, formula: 'lowest-mat', printed: '4.90 mg/L', computed: '4.80 mg/L' });
    const value = html.replace(/(<data class="evenwater-claim[^>]* value=")4\.8"/, '$14.9"');
    const found = (await recheckPost(value, '1.2.3')).differences;
    assert.deepEqual(found.map((each) => [each.kind, each.printed, each.computed]), [['value', '4.9', '4.8']]);
  });

  test('another version is said, and its numbers are judged', async () => {
    const same = await recheckPost(html, '9.9.9');
    assert.deepEqual([same.sameVersion, same.holds, same.madeWith], [false, true, '1.2.3']);
    const reworded = await recheckPost(html.replace('How each number was computed', 'Where the numbers come from'), '9.9.9');
    assert.equal(reworded.holds, true);
    assert.ok(reworded.unjudged > 0);
    const wrong = await recheckPost(html.replace(/(<data class="evenwater-claim[^>]*>)4\.80 mg\/L/, '$14.90 mg/L'), '9.9.9');
    assert.equal(wrong.holds, false);
  });

  test('the words of the author are judged in another version too', async () => {
    const changed = html.replace('A guide asks for', 'No guide asks for');
    assert.notEqual(changed, html);
    const report = await recheckPost(changed, '9.9.9');
    assert.equal(report.holds, false);
    assert.equal(report.differences[0]?.kind, 'words');
  });

  test('a space left out that lets a number run into the next is seen', async () => {
    const spaced = html.replace(/(<p>[^<]*\s)(<data )/, '$12 $2');
    assert.notEqual(spaced, html);
    assert.deepEqual(comparePosts(spaced.replace('2 <data', '2\n<data'), spaced), []);
    assert.deepEqual(comparePosts(spaced.replace('2 <data', '2<data'), spaced).map((each) => each.kind), ['number']);
  });

  test('any text is taken without throwing', async () => {
    for (const text of ['', '<', '<html>', '<a class="evenwater-file" href="data:x;base64,AAAA">', html.slice(0, 5000), html.slice(-5000)]) {
      const report = await recheckPost(text, '1.2.3');
      assert.equal(report.holds, false);
    }
  });

  test('paths that leave the folder are refused', () => {
    for (const good of ['a.csv', 'data/a b.csv', 'x/y/z.txt', 'café.csv']) assert.ok(pathIsSafe(good), good);
    for (const bad of ['', '/a', '../a', 'a/../b', 'a//b', './a', 'C:/a', 'a\\b', 'a\0', 'a.', 'dir /x']) assert.ok(!pathIsSafe(bad), bad);
  });
});

suite('command line: recheck and extract', () => {
  let folder = '';
  setup(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'evenwater-recheck-')); });
  teardown(() => { rmSync(folder, { recursive: true, force: true }); });

  /** A note with a data file, line breaks of Windows and a mark of byte order. */
  function withFile(): { note: Buffer; data: Buffer } {
    const data = Buffer.from('\ufeffTimestamp,Oxygen\r\n2026-03-14 20:00,8.21\r\n2026-03-14 20:30,8.24\r\n2026-03-14 21:00,8.26\r\n', 'utf8');
    const text = ['# A night', '', '```protocol', 'place: {name: Zwolle, time zone: Europe/Amsterdam}', 'tanks:', '  mat: {role: treatment, size: 50 x 30 x 32 cm}',
      'schedule: {start: 2026-03-14 20:00, end: 2026-03-14 21:00, every: 30 min}', 'measure:', '  DO: {what: dissolved oxygen, unit: mg/L, accuracy: 0.1 mg/L}', '```', '',
      '```readings', 'from: data/probe a.csv', 'columns:', '  Timestamp: time', '  Oxygen: mat.DO', 'time zone: Europe/Amsterdam', `sha256: ${createHash('sha256').update(data).digest('hex')}`, '```', '',
      'The highest was {8.26 mg/L = max(mat.DO)}.', ''].join('\r\n');
    return { note: Buffer.from(`\ufeff${text}`, 'utf8'), data };
  }

  test('note and data come back byte for byte, with the line breaks and marks they had', async () => {
    const { note, data } = withFile();
    mkdirSync(path.join(folder, 'in/data'), { recursive: true });
    writeFileSync(path.join(folder, 'in/night.tank.md'), note);
    writeFileSync(path.join(folder, 'in/data/probe a.csv'), data);
    const published = await run('publish', path.join(folder, 'in/night.tank.md'), '--to', folder, '--published', '2026-04-13T10:00+03:00');
    assert.equal(published.code, 0, published.out);
    const post = path.join(folder, 'night.html');
    assert.match(readFileSync(post, 'utf8'), /published <time datetime="2026-04-13T10:00:00\+03:00">13 April 2026<\/time>/);
    const checked = await run('recheck', post, '--json');
    const report = validated('recheck', checked.out);
    assert.deepEqual([checked.code, report['holds'], (report['files'] as unknown[]).length], [0, true, 2]);
    const out = await run('extract', post, '--to', path.join(folder, 'out'), '--json');
    assert.equal(out.code, 0);
    validated('extract', out.out);
    assert.ok(readFileSync(path.join(folder, 'out/night.tank.md')).equals(note));
    assert.ok(readFileSync(path.join(folder, 'out/data/probe a.csv')).equals(data));
    writeFileSync(path.join(folder, 'out/night.tank.md'), 'mine');
    assert.equal((await run('extract', post, '--to', path.join(folder, 'out'))).code, 2);
    assert.equal(readFileSync(path.join(folder, 'out/night.tank.md'), 'utf8'), 'mine');
  });

  test('an altered post exits 1 and names line and column', async () => {
    await run('publish', path.join(root, 'samples/overnight-oxygen.tank.md'), '--to', folder);
    const post = path.join(folder, 'overnight-oxygen.html');
    const text = readFileSync(post, 'utf8').replace(/(<data class="evenwater-claim[^>]*>)5\.83 mg\/L/, '$15.93 mg/L');
    writeFileSync(post, text);
    const { code, out } = await run('recheck', post);
    assert.equal(code, 1);
    const [, line, column] = /overnight-oxygen\.html:(\d+):(\d+): error number differs: the post has “5\.93 mg\/L”, the note gives “5\.83 mg\/L”, from lowest-duckweed\.$/m.exec(out)!;
    assert.equal(text.split('\n')[Number(line) - 1]!.slice(Number(column) - 1).startsWith('5.93'), true);
    const json = await run('recheck', post, '--json');
    assert.equal(json.code, 1);
    assert.equal((validated('recheck', json.out)['differences'] as unknown[]).length, 1);
  });

  test('what is no post is wrong use', async () => {
    writeFileSync(path.join(folder, 'x.html'), '<p>hello</p>');
    for (const command of ['recheck', 'extract']) {
      assert.equal((await run(command, path.join(folder, 'x.html'), '--to', folder).catch(() => ({ code: -1 }))).code, 2);
      assert.equal((await run(command, path.join(folder, 'none.html'), ...(command === 'extract' ? ['--to', folder] : []))).code, 2);
    }
    assert.equal((await run('publish', path.join(root, 'samples/overnight-oxygen.tank.md'), '--to', folder, '--published', 'soon')).code, 2);
    assert.equal((await run('publish', path.join(root, 'samples/overnight-oxygen.tank.md'), '--to', folder, '--as', 'poster')).code, 2);
  });
});
