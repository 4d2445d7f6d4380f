// Sun times against tables computed with independent ephemerides.
import assert from 'node:assert/strict';
import { formatInstant } from '../../../src/time/text.ts';
import { loadZone } from '../../../src/time/zone.ts';
import { sunDay } from '../../../src/sky/sun.ts';

const tolerance = 5_000;
const near = (actual: number | null, wanted: string, what: string): void => {
  assert.ok(actual !== null, what);
  assert.ok(Math.abs(actual - Date.parse(wanted)) <= tolerance, `${what}: ${new Date(actual).toISOString()} is not within 5 s of ${wanted}`);
};

suite('sky: sun times', () => {
  // Computed with PyEphem (USNO definitions: upper limb, 34' refraction; civil twilight at -6 degrees).
  const table: readonly [string, number, number, string, string, string, string, string, string][] = [
    ['London in June', 51.5074, -0.1278, 'Europe/London', '2024-06-20', '2024-06-20T03:43:02Z', '2024-06-20T20:21:25Z', '2024-06-20T02:55:14Z', '2024-06-20T21:09:13Z'],
    ['London in December', 51.5074, -0.1278, 'Europe/London', '2024-12-21', '2024-12-21T08:03:57Z', '2024-12-21T15:53:39Z', '2024-12-21T07:23:39Z', '2024-12-21T16:33:57Z'],
    ['Singapore', 1.3521, 103.8198, 'Asia/Singapore', '2024-03-20', '2024-03-19T23:08:52Z', '2024-03-20T11:15:23Z', '2024-03-19T22:48:12Z', '2024-03-20T11:36:03Z'],
    ['Tromsø at the equinox', 69.6492, 18.9553, 'Europe/Oslo', '2024-03-20', '2024-03-20T04:41:43Z', '2024-03-20T17:03:29Z', '2024-03-20T03:41:33Z', '2024-03-20T18:04:09Z'],
  ];
  for (const [name, latitude, longitude, zone, date, rise, set, dawn, dusk] of table) {
    test(name, () => {
      const sun = sunDay(date, latitude, longitude, loadZone(zone)!);
      near(sun.sunrise, rise, 'sunrise');
      near(sun.sunset, set, 'sunset');
      near(sun.dawn, dawn, 'dawn');
      near(sun.dusk, dusk, 'dusk');
      for (const instant of [sun.sunrise, sun.sunset, sun.dawn, sun.dusk]) assert.equal(formatInstant(instant!, loadZone(zone)!).slice(0, 10), date);
    });
  }

  test('Golden, Colorado: sunset belongs to the local date, not to the date of universal time', () => {
    // Sunrise: Reda and Andreas 2004 (NREL/TP-560-34302), table A5.1: 13:12:43 UT. Sunset of the local date: 00:18:51 UT of the
    // next day (three ephemerides agree); the 00:20:19 UT of that table is the evening of the local day before.
    const sun = sunDay('2003-10-17', 39.742476, -105.1786, loadZone('America/Denver')!);
    near(sun.sunrise, '2003-10-17T13:12:43Z', 'sunrise');
    near(sun.sunset, '2003-10-18T00:18:51Z', 'sunset');
  });

  test('polar day and polar night have no sun times', () => {
    const zone = loadZone('Europe/Oslo')!;
    assert.deepEqual(sunDay('2024-06-20', 69.6492, 18.9553, zone), { date: '2024-06-20', dawn: null, sunrise: null, sunset: null, dusk: null });
    const winter = sunDay('2024-12-20', 69.6492, 18.9553, zone);
    assert.equal(winter.sunrise, null);
    assert.equal(winter.sunset, null);
    assert.notEqual(winter.dawn, null, 'civil twilight comes even in the polar night of Tromsø');
  });

  test('a place far from its zone still gets the events of the local date', () => {
    for (const [name, longitude] of [['Pacific/Kiritimati', -157.4], ['Pacific/Apia', -171.8], ['Pacific/Auckland', 174.8]] as const) {
      const zone = loadZone(name)!;
      for (const date of ['2026-01-01', '2026-04-05', '2026-07-01']) {
        const sun = sunDay(date, -10, longitude, zone);
        for (const instant of [sun.dawn, sun.sunrise, sun.sunset, sun.dusk]) assert.equal(formatInstant(instant!, zone).slice(0, 10), date, name);
        assert.ok(sun.dawn! < sun.sunrise! && sun.sunrise! < sun.sunset! && sun.sunset! < sun.dusk!);
      }
    }
  });

  test('impossible places and dates have no sun times', () => {
    const zone = loadZone('UTC')!;
    for (const sun of [sunDay('2026-02-30', 0, 0, zone), sunDay('2026-03-01', 91, 0, zone), sunDay('2026-03-01', NaN, 0, zone)]) assert.equal(sun.sunrise, null);
    for (const latitude of [90, -90]) assert.doesNotThrow(() => sunDay('2026-03-20', latitude, 0, zone));
  });
});
