// Zones: offsets, skipped and repeated hours, against published transitions and the Temporal library.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill/implementation';
import { civilFromDays, daysFromCivil, daysInMonth, wallFromNumber, wallNumber } from '../../../src/time/civil.ts';
import { day, hour, minute, type WallTime } from '../../../src/time/instant.ts';
import { formatInstant, readDateTime } from '../../../src/time/text.ts';
import { instantOf, loadZone, utc, wallTimeOf } from '../../../src/time/zone.ts';

const zone = (name: string) => {
  const found = loadZone(name);
  assert.ok(found, name);
  return found;
};
const wall = (text: string): WallTime => readDateTime(text)!.wall;

/** Length of a local date in hours. */
function dayLength(date: string, next: string, name: string): number {
  const [from, to] = [instantOf(wall(`${date} 12:00`), zone(name)), instantOf(wall(`${next} 12:00`), zone(name))];
  assert.ok(from.kind === 'single' && to.kind === 'single');
  return (to.instant - from.instant) / hour;
}

suite('time: zones', () => {
  test('days of a clock change have the published length', () => {
    // European Union Directive 2000/84/EC: last Sunday of March and October, 01:00 UTC. Lord Howe Island: half an hour.
    assert.equal(dayLength('2024-03-30', '2024-03-31', 'Europe/London'), 23);
    assert.equal(dayLength('2024-10-26', '2024-10-27', 'Europe/London'), 25);
    assert.equal(dayLength('2024-04-06', '2024-04-07', 'Australia/Lord_Howe'), 24.5);
    assert.equal(dayLength('2026-03-28', '2026-03-29', 'Europe/Amsterdam'), 23);
    assert.equal(dayLength('2026-10-24', '2026-10-25', 'Europe/Amsterdam'), 25);
    assert.equal(dayLength('2026-03-28', '2026-03-29', 'Asia/Kathmandu'), 24);
  });

  test('a skipped hour has no instant but two neighbours', () => {
    const meaning = instantOf(wall('2024-03-31 01:30'), zone('Europe/London'));
    assert.equal(meaning.kind, 'skipped');
    assert.ok(meaning.kind === 'skipped');
    assert.equal(formatInstant(meaning.before, zone('Europe/London')), '2024-03-31T00:30:00+00:00');
    assert.equal(formatInstant(meaning.after, zone('Europe/London')), '2024-03-31T02:30:00+01:00');
    assert.equal(instantOf(wall('2024-03-31 00:59:59'), zone('Europe/London')).kind, 'single');
    assert.equal(instantOf(wall('2024-03-31 01:00'), zone('Europe/London')).kind, 'skipped');
    assert.equal(instantOf(wall('2024-03-31 02:00'), zone('Europe/London')).kind, 'single');
  });

  test('a repeated hour has two instants', () => {
    const meaning = instantOf(wall('2024-10-27 01:30'), zone('Europe/London'));
    assert.ok(meaning.kind === 'repeated');
    assert.equal(formatInstant(meaning.earlier, zone('Europe/London')), '2024-10-27T01:30:00+01:00');
    assert.equal(formatInstant(meaning.later, zone('Europe/London')), '2024-10-27T01:30:00+00:00');
    assert.equal(instantOf(wall('2024-10-27 02:00'), zone('Europe/London')).kind, 'single');
    assert.equal(instantOf(wall('2024-10-27 00:59:59'), zone('Europe/London')).kind, 'single');
  });

  test('a whole day can be skipped', () => {
    // Samoa moved over the date line: 2011-12-30 did not exist there.
    assert.equal(instantOf(wall('2011-12-30 12:00'), zone('Pacific/Apia')).kind, 'skipped');
    assert.equal(instantOf(wall('2011-12-29 23:00'), zone('Pacific/Apia')).kind, 'single');
    assert.equal(instantOf(wall('2011-12-31 00:00'), zone('Pacific/Apia')).kind, 'single');
  });

  test('names', () => {
    assert.equal(loadZone('Europe/Amsterdm'), null);
    assert.equal(loadZone(''), null);
    assert.equal(loadZone('not a zone'), null);
    assert.equal(loadZone('+99:00'), null);
    assert.equal(zone('europe/amsterdam').name, 'Europe/Amsterdam');
    assert.equal(zone('UTC'), utc);
    assert.equal(zone('+05:30').offsetAt(0), 5.5 * hour);
    assert.equal(zone('-03:00').offsetAt(0), -3 * hour);
    assert.equal(zone('Asia/Kathmandu').offsetAt(Date.UTC(2026, 0, 1)), 5 * hour + 45 * minute);
  });

  test('offsets outside the years that are read, and of no number, stay finite', () => {
    for (const instant of [-1e15, 1e15, NaN, Infinity]) assert.ok(Number.isFinite(zone('Europe/Amsterdam').offsetAt(instant)));
  });

  const names = ['Europe/Amsterdam', 'Europe/London', 'America/New_York', 'America/Sao_Paulo', 'Australia/Lord_Howe', 'Pacific/Apia', 'Asia/Kathmandu', 'Africa/Casablanca', 'Pacific/Auckland', 'Asia/Tehran', 'America/St_Johns'];
  const instants = fc.integer({ min: 0, max: Date.UTC(2100, 11, 31) / 1000 }).map((seconds) => seconds * 1000);

  test('every instant comes back from its wall time', () => {
    fc.assert(fc.property(fc.constantFrom(...names), instants, (name, instant) => {
      const meaning = instantOf(wallTimeOf(instant, zone(name)), zone(name));
      if (meaning.kind === 'single') assert.equal(meaning.instant, instant);
      else if (meaning.kind === 'repeated') assert.ok(meaning.earlier === instant || meaning.later === instant);
      else assert.fail('an instant with a skipped wall time');
    }), { numRuns: 300 });
  });

  test('offsets and wall times agree with the library around transitions', () => {
    fc.assert(fc.property(fc.constantFrom(...names), instants, fc.integer({ min: -4 * 3600, max: 4 * 3600 }), (name, near, offset) => {
      const transition = Temporal.Instant.fromEpochMilliseconds(near).toZonedDateTimeISO(name).getTimeZoneTransition('next')?.epochMilliseconds ?? near;
      const instant = Math.min(Date.UTC(2100, 11, 31), transition) + offset * 1000;
      const zoned = Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(name);
      assert.equal(zone(name).offsetAt(instant), Math.round(zoned.offsetNanoseconds / 1e6));
      const local = wallFromNumber(instant + zone(name).offsetAt(near));
      const plain = Temporal.PlainDateTime.from({ ...local });
      const meaning = instantOf(local, zone(name));
      const earlier = plain.toZonedDateTime(name, { disambiguation: 'earlier' }).epochMilliseconds;
      const later = plain.toZonedDateTime(name, { disambiguation: 'later' }).epochMilliseconds;
      if (meaning.kind === 'single') assert.deepEqual([earlier, later], [meaning.instant, meaning.instant]);
      else if (meaning.kind === 'repeated') assert.deepEqual([earlier, later], [meaning.earlier, meaning.later]);
      else assert.deepEqual([earlier, later], [meaning.before, meaning.after]);
    }), { numRuns: 300 });
  });

  test('an offset does not depend on what the zone was asked before', () => {
    const around = ['2025-12-31T23:00:00Z', '2026-01-01T01:00:00Z', '2026-03-29T01:00:00Z', '2026-10-25T01:00:00Z', '1969-06-01T00:00:00Z', '1970-01-01T00:00:00Z', '2101-06-01T00:00:00Z'].map(Date.parse);
    for (const name of ['Europe/Amsterdam', 'America/New_York', 'Asia/Kolkata']) {
      const asked = zone(name);
      fc.assert(fc.property(fc.constantFrom(...around), fc.integer({ min: -3 * hour, max: 3 * hour }), (moment, beside) => {
        for (const instant of [moment + beside, moment, moment - 1]) assert.equal(asked.offsetAt(instant), zone(name).offsetAt(instant));
      }), { numRuns: 40 });
    }
  });
  test('calendar arithmetic', () => {
    assert.equal(daysFromCivil(1970, 1, 1), 0);
    assert.equal(daysFromCivil(2000, 3, 1), 11_017);
    assert.equal(daysInMonth(2000, 2), 29);
    assert.equal(daysInMonth(2100, 2), 28);
    for (let days = 0; days < 48_000; days += 1) {
      const date = new Date(days * day);
      assert.deepEqual(civilFromDays(days), { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() });
    }
    fc.assert(fc.property(instants, (instant) => assert.equal(wallNumber(wallFromNumber(instant)), instant)));
  });
});
