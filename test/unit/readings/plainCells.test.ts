// The short ways for the plainest cells of long files read what the long ways read: a space in front makes a cell take the long way.
import { deepEqual, equal } from 'node:assert/strict';
import fc from 'fast-check';
import { isMuddled } from '../../../src/readings/file/fileCell.ts';
import { readStamp } from '../../../src/readings/file/stamps.ts';

/** A number of so many digits, often one beyond what a date or a clock can have. */
const digits = (count: number, max: number) => fc.integer({ min: 0, max }).map((number) => String(number).padStart(count, '0'));
const stamp = fc.tuple(
  digits(4, 9999), digits(2, 14), digits(2, 33), fc.constantFrom('T', ' ', 't', '  ', ''), digits(2, 25), digits(2, 61),
  fc.option(digits(2, 61)), fc.option(fc.stringMatching(/^[0-9]{1,7}$/)), fc.constantFrom('', 'Z', 'z', '+01:00', '-05:30', '+14:00', '+14:01', '+02:75', '+0100', ' Z', ' pm', 'x'),
).map(([year, month, day, between, hour, minute, second, part, tail]) => `${year}-${month}-${day}${between}${hour}:${minute}${second === null ? '' : `:${second}${part === null ? '' : `.${part}`}`}${tail}`);

suite('readings: plain cells of files', () => {
  test('a plain time stamp is the stamp that the long way gives', () => {
    fc.assert(fc.property(stamp, (text) => { deepEqual(readStamp(text), readStamp(` ${text}`)); }), { numRuns: 3000 });
    deepEqual(readStamp('2026-03-14T19:00:00.250Z'), {
      date: { parts: [2026, 3, 14], lengths: [4, 2, 2], named: false }, clock: { hour: 19, minute: 0, second: 0, millisecond: 250 }, offset: 0,
    });
    equal(readStamp('2026-00-14T19:00:00Z'), null);
  });

  test('a plain number is no date, and a number that is one stays one', () => {
    fc.assert(fc.property(fc.stringMatching(/^-?[0-9]{1,9}(?:[.,][0-9]{1,9})?$/), fc.constantFrom('.', ','), (text, decimal) => { equal(isMuddled(text, decimal), isMuddled(` ${text}`, decimal)); }), { numRuns: 2000 });
    equal(isMuddled('20260314', '.'), true);
    equal(isMuddled('8.12', '.'), false);
  });
});
