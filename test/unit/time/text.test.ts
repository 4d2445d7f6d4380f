// Dates, clock times and durations: what is read, what is refused, and that what is written can be read.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { day, hour, minute, second } from '../../../src/time/instant.ts';
import { formatClock, formatDate, formatDuration, formatInstant, readClock, readDate, readDateTime, readDuration } from '../../../src/time/text.ts';
import { instantOf, loadZone } from '../../../src/time/zone.ts';

suite('time: texts', () => {
  test('clock times', () => {
    assert.deepEqual(readClock('20:30'), { hour: 20, minute: 30, second: 0 });
    assert.deepEqual(readClock('20:30:15'), { hour: 20, minute: 30, second: 15 });
    assert.deepEqual(readClock('6:30 am'), { hour: 6, minute: 30, second: 0 });
    assert.deepEqual(readClock('6:30 pm'), { hour: 18, minute: 30, second: 0 });
    assert.deepEqual(readClock('12:05 a.m.'), { hour: 0, minute: 5, second: 0 });
    assert.deepEqual(readClock('12:05 pm'), { hour: 12, minute: 5, second: 0 });
    assert.deepEqual(readClock(' 06:30 '), { hour: 6, minute: 30, second: 0 });
    for (const text of ['24:00', '20:60', '20:30:60', '13:00 pm', '0:30 am', '20.30', '2030', '8 pm', '', 'noon', '-1:00', '20:3']) assert.equal(readClock(text), null, text);
  });

  test('dates', () => {
    assert.deepEqual(readDate('2026-03-15'), { year: 2026, month: 3, day: 15 });
    assert.deepEqual(readDate('2024-02-29'), { year: 2024, month: 2, day: 29 });
    for (const text of ['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '15-03-2026', '2026-3-15', '1969-12-31', '2101-01-01', '2026/03/15', '']) assert.equal(readDate(text), null, text);
  });

  test('dates with times', () => {
    assert.deepEqual(readDateTime('2026-03-15 06:30'), { wall: { year: 2026, month: 3, day: 15, hour: 6, minute: 30, second: 0 }, offset: null });
    assert.deepEqual(readDateTime('2026-03-15T06:30:15'), { wall: { year: 2026, month: 3, day: 15, hour: 6, minute: 30, second: 15 }, offset: null });
    assert.equal(readDateTime('2026-03-15T06:30+01:00')?.offset, hour);
    assert.equal(readDateTime('2026-03-15 06:30 -0930')?.offset, -9.5 * hour);
    assert.equal(readDateTime('2026-03-15T06:30Z')?.offset, 0);
    assert.equal(readDateTime('2026-03-15 6:30 pm')?.wall.hour, 18);
    for (const text of ['2026-03-15', '06:30', '2026-03-15 25:00', '2026-02-30 06:30', '2026-03-15T06:30+25:00', '2026-03-15 06:30 foo']) assert.equal(readDateTime(text), null, text);
  });

  test('durations', () => {
    const cases: readonly [string, number][] = [
      ['30 min', 30 * minute], ['1 h', hour], ['9 h 30 min', 9.5 * hour], ['1h30', 1.5 * hour], ['90 s', 90 * second], ['2 d', 2 * day], ['1 week', 7 * day],
      ['1.5 h', 1.5 * hour], ['0.5 s', 500], ['30min', 30 * minute], ['2 hours and 15 minutes', 2.25 * hour], ['1 h, 5 min', 65 * minute], ['3 weeks', 21 * day],
      ['2 d 3 h', 51 * hour], ['1 day', day], ['1h 30', 1.5 * hour], ['1h05', 65 * minute],
    ];
    for (const [text, value] of cases) assert.equal(readDuration(text), value, text);
    for (const text of ['', '30', 'min', '30 parsecs', '30 min 1 h', '1 h 1 h', '-30 min', '1h60', '30 min and', '1,5 h', '2 m', '0x10 s', '1 h30 x']) assert.equal(readDuration(text), null, text);
  });

  test('what is written', () => {
    const zone = loadZone('Europe/Amsterdam')!;
    const meaning = instantOf({ year: 2026, month: 3, day: 15, hour: 6, minute: 30, second: 0 }, zone);
    assert.ok(meaning.kind === 'single');
    assert.equal(formatInstant(meaning.instant, zone), '2026-03-15T06:30:00+01:00');
    assert.equal(formatClock(meaning.instant, zone), '06:30');
    assert.equal(formatClock(meaning.instant + 15_000, zone), '06:30:15');
    assert.equal(formatDate(meaning.instant, zone), '2026-03-15');
    assert.equal(formatInstant(0, loadZone('America/St_Johns')!), '1969-12-31T20:30:00-03:30');
    assert.deepEqual([0, 45_000, 34_200_000, day, 26 * hour, 3 * day + hour, 500, -minute].map(formatDuration), ['0 min', '45 s', '9 h 30 min', '1 d', '26 h', '3 d 1 h', '0.5 s', '-1 min']);
  });

  test('every written duration and instant is read back', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 400 * day }), (duration) => assert.equal(readDuration(formatDuration(duration)), duration)));
    const zone = loadZone('Australia/Lord_Howe')!;
    fc.assert(fc.property(fc.integer({ min: 0, max: 4_000_000_000 }), (seconds) => {
      const read = readDateTime(formatInstant(seconds * 1000, zone))!;
      assert.equal(Date.UTC(read.wall.year, read.wall.month - 1, read.wall.day, read.wall.hour, read.wall.minute, read.wall.second) - read.offset!, seconds * 1000);
    }));
  });

  test('no text makes the readers throw', () => {
    fc.assert(fc.property(fc.string(), (text) => { for (const read of [readClock, readDate, readDateTime, readDuration]) read(text); }));
  });

  test('nothing depends on the time zone of the machine', () => {
    const script = `
      import { formatInstant } from './src/time/text.ts';
      import { loadZone, instantOf } from './src/time/zone.ts';
      import { sunDay } from './src/sky/sun.ts';
      const zone = loadZone('Europe/Amsterdam');
      console.log(formatInstant(1774747800000, zone), JSON.stringify(instantOf({ year: 2026, month: 3, day: 29, hour: 2, minute: 30, second: 0 }, zone)), JSON.stringify(sunDay('2026-03-29', 52.51, 6.09, zone)));`;
    const run = (TZ: string, LANG: string): string => execFileSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], { env: { ...process.env, TZ, LANG }, encoding: 'utf8' });
    assert.equal(run('Pacific/Auckland', 'de_DE.UTF-8'), run('UTC', 'C'));
  });
});
