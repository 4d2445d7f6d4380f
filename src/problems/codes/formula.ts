// Problem codes raised by src/formula.
import type { CodeEntry } from '../codeEntry.ts';

const error = (args: readonly string[], why: string, formula: string, fixable = false, more: Partial<CodeEntry['example']> = {}): CodeEntry =>
  ({ severity: 'error', args, why, example: { values: `x = ${formula}\n`, ...more }, fixable });
const warning = (args: readonly string[], why: string, formula: string, more: Partial<CodeEntry['example']> = {}): CodeEntry =>
  ({ ...error(args, why, formula, false, more), severity: 'warning' });

const severalNights = `question: Does it repeat?
place: {name: Zwolle, latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 05:00, end: 2026-03-17 10:00, every: 6 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe}
`;
const fewDays = 'time mat.DO open.DO\n2026-03-14T20:00 8.21 8.31\n2026-03-15T02:00 7.21 8.20\n2026-03-15T08:00 7.81 8.22\n';
const onePlain = `place: {name: Zwolle, time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe}
  T: {what: water temperature, unit: degC, with: thermistor}
`;
const plainReadings = 'time mat.DO mat.T\n20:00 8.21 24.9\n20:30 8.24 24.9\n22:00 8.26 24.8\n22:30 8.02 24.8\n';
const withPressure = (measure: string): string => `${onePlain}  P: ${measure}\n`;
const pressureReadings = 'time mat.DO mat.T room.P\n20:00 8.21 24.9 1009.4\n20:30 8.24 24.9 1009.2\n';
const chemistry = `${onePlain}  pH: {what: pH, unit: pH, with: glass electrode}
  TAN: {what: total ammonia, unit: mg/L-N, with: colour test}
  KH: {what: carbonate hardness, unit: dKH, with: drop test}
  SG: {what: specific gravity, unit: SG, with: hydrometer}
  S: {what: salinity, unit: PSU, with: refractometer}
  mood: {what: behaviour, scale: [calm, restless]}
`;

const fittedPlan = `place: {name: Zwolle, elevation: 4 m, time zone: Europe/Amsterdam}
tanks:
  a: {role: treatment}
  b: {role: control}
schedule: {start: 2026-03-14 22:00, light off: 22:00, light on: 2026-03-15 06:00, end: 2026-03-15 06:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe}
  T: {what: water temperature, unit: degC, with: thermistor}
  P: {what: air pressure, unit: hPa, with: barometer, in: room, level: station}
`;
// The closed form for k 0.25 an hour and R 0.75 mg/L an hour, from 8.00 mg/L at 25.0 degC and 1013 hPa, with a hundredth of noise.
const fittedReadings = `time a.DO a.T room.P
22:00 8.00 25.0 1013.2
23:00 7.39 25.0 1013.2
00:00 6.92 25.0 1013.2
01:00 6.55 25.0 1013.2
02:00 6.26 25.0 1013.2
03:00 6.04 25.0 1013.2
04:00 5.87 25.0 1013.2
05:00 5.73 25.0 1013.2
06:00 5.63 25.0 1013.2
`;

const tankNames = Array.from({ length: 24 }, (_, index) => `t${index}`);
const manyTanks = {
  protocol: `place: {name: Zwolle, time zone: Europe/Amsterdam}
tanks:
${tankNames.map((name, index) => `  ${name}: {role: ${index % 2 === 0 ? 'treatment' : 'control'}}`).join('\n')}
schedule: {start: 2026-03-14 21:00, light off: 22:00, end: 2026-03-15 00:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe}
`,
  readings: `time ${tankNames.map((name) => `${name}.DO`).join(' ')}\n21:00 ${tankNames.map(() => '8.2').join(' ')}\n22:00 ${tankNames.map(() => '8.2').join(' ')}\n23:00 ${tankNames.map((_, index) => (7 + index / 50).toFixed(2)).join(' ')}\n`,
};

export const formulaCodes = {
  'formula-empty': error([], 'Without a formula there is nothing to compute, and the number would stand on nothing.', ' ', false, { values: 'x = \n', prose: 'It was {8.2 mg/L =  }.' }),
  'formula-syntax': error(['expected', 'found'], 'A formula that cannot be read cannot be computed.', 'mean(mat.DO, 20:00..)'),
  'formula-too-long': error(['limit'], 'Nobody can check a formula of this length; named results split it into parts that can be checked.', `${'1 + '.repeat(1100)}1`),
  'formula-too-deep': error([], 'Nobody can check a formula nested this deeply; named results split it into parts that can be checked.', `${'('.repeat(130)}1${')'.repeat(130)}`),
  'formula-chained': error([], 'A chain of comparisons reads two ways; two comparisons joined by “and” read one way.', '3 mg/L < min(mat.DO) < 9 mg/L'),
  'parenthesis-not-closed': error([], 'An open parenthesis leaves it unclear where the operands end.', 'mean(mat.DO'),
  'operator-needs-spaces': error(['operator'], 'Names may hold hyphens and units may hold slashes, so plus and minus stand between spaces.', '3+4', true),
  'number-too-large': error(['text'], 'No quantity of an aquarium is that large; it is a slip of the pen.', '1e300 * 2'),
  'instant-unreadable': error(['text'], 'A time that does not exist points at no reading.', 'at(mat.DO, 25:00)'),
  'unknown-name': error(['name', 'nearest'], 'A formula may use only names that the note defines, so that every number has an owner.', 'min(mta.DO)', true),
  'unknown-function': error(['name', 'nearest'], 'Only the functions of the reference can be computed.', 'avg(mat.DO)', true),
  'function-without-operands': error(['name'], 'A function needs to know what it is asked of.', 'mean'),
  'wrong-argument': error(['function', 'argument', 'expected', 'found'], 'A function can be computed only of what it is made for.', 'min(mat)', true),
  'missing-argument': error(['function', 'argument', 'expected', 'signature'], 'Without this the function has no answer.', 'first-below(mat.DO)'),
  'too-many-arguments': error(['function', 'signature'], 'What a function does not know it would have to leave out in silence.', 'volume(mat, open)'),
  'option-unknown-here': error(['function', 'option', 'options'], 'What a function does not know it would have to leave out in silence.', 'steps(mat.DO, evry 1 h)', true),
  'operands-do-not-fit': error(['operator', 'left', 'right'], 'These two cannot be put together in this way.', 'mat.DO + light-off'),
  'unit-mismatch': error(['left', 'right'], 'Quantities of different kinds cannot be added, compared or converted into one another.', 'min(mat.DO) < 3', true),
  'substance-needed': error(['left', 'right'], 'How many millimoles a milligram is depends on what it is of: of oxygen another number than of nitrate.', '3 mg/L in mmol/L'),
  'density-needed': error(['left', 'right'], 'What is counted per kilogram of water turns into what is in a litre only by the density of the water, which changes with temperature and salinity.', 'min(mat.DO) in umol/kg'),
  'no-true-zero': error(['unit'], 'The zero of degrees Celsius or of pH is not “nothing”, so a percentage of it means nothing: 20 °C is not twice 10 °C.', 'percent-change(mat.T, 20:00..22:00)'),
  'zero-base': error(['time', 'unit'], 'A percentage or a quotient of nothing has no value.', '1 / 0'),
  'not-finite': error([], 'The result would be larger than any number, or none at all.', 'duration(20:00..22:00) / duration(20:00..20:00)'),
  'plain-number-needed': error(['function', 'unit'], 'The logarithm or root of a quantity with a unit depends on the unit it happens to be in.', 'ln(mean(mat.DO))'),
  'negative-not-possible': error(['function'], 'This function has no value here.', 'sqrt(-2)'),
  'decimals-unreadable': error(['found'], 'Numbers are rounded to a whole number of decimals.', 'round(2.345, 1.5)'),
  'no-readings': error(['name'], 'Without readings there is nothing to compute.', 'mean(mat.DO)', false, { readings: 'time mat.DO mat.T\n20:00 - 24.9\n' }),
  'no-column': error(['name', 'columns'], 'Nothing was logged under this name.', 'mean(open.T)', false, { readings: 'time mat.DO mat.T\n20:00 8.21 24.9\n' }),
  'several-instruments': error(['name', 'columns'], 'Two instruments give two answers; the formula must say which.', 'mean(mat.DO)', true,
    { readings: 'time mat.DO@probe mat.DO@titration\n20:00 8.21 8.3\n' }),
  'group-empty': error(['name'], 'A mean over no tanks has no value.', 'mean(control.DO)', false, {
    protocol: onePlain.replace('  open: {role: control}\n', '  open: {role: treatment}\n'), readings: plainReadings,
  }),
  'quantity-after-group': error(['name'], 'A group of tanks has no value of its own; a quantity after a point makes one.', 'mean(treatment)'),
  'empty-window': error(['name', 'from', 'to'], 'No reading lies in this stretch of time.', 'mean(mat.DO, 03:00..04:00)'),
  'too-few-readings': error(['function', 'name', 'count', 'least'], 'The figure compares readings, and there are not enough of them here.', 'sd(mat.DO, 20:00..20:00)'),
  'no-reading-at-time': error(['name', 'time', 'neighbours', 'dropped'], 'Between readings nothing was measured; a change from a guessed value would be a guess.', 'at(mat.DO, 22:15)', true),
  'reading-far-from-end': warning(['name', 'wanted', 'found', 'distance'], 'The reading used stands more than one interval from the time that was meant, so the change covers another stretch than the words say.',
    'fall(mat.DO, light-off..end)'),
  'outside-readings': error(['name', 'time', 'first', 'last'], 'A straight line can be drawn between readings, not beyond them.', 'interpolate(mat.DO, 09:00)'),
  'gap-bridged': warning(['from', 'to'], 'A straight line across missing readings hides what happened meanwhile.', 'hours-below(mat.DO, 8 mg/L)',
    { readings: 'time mat.DO\n20:00 8.21\n22:00 8.26\n00:30 7.31\n' }),
  'censored-value': error(['function', 'name', 'time'], 'A value beyond the instrument’s range is no number: a mean or a lowest value with it would be invented.', 'min(mat.DO)', false,
    { readings: 'time mat.DO\n20:00 8.21\n20:30 <0.05\n' }),
  'too-many-readings': error(['function', 'name', 'count', 'most'], 'Every two readings are compared, which takes too long for so many.', 'robust-slope(mat.DO)', false,
    { readings: `time mat.DO\n${Array.from({ length: 2001 }, (_, index) => `20:${String(Math.floor(index / 60)).padStart(2, '0')}:${String(index % 60).padStart(2, '0')} 8.${index % 10}`).join('\n')}\n` }),
  'replicates-needed': error(['function', 'treatment', 'control'], 'Many readings of one tank are not many tanks: with one tank a side no p can be given, only that these two tanks differ.', 'permutation-p(DO, dark)'),
  'too-many-tanks': error(['function', 'count'], 'All ways to divide the tanks are counted out, which takes too long for so many.', 'permutation-p(DO, dark)', false, manyTanks),
  'no-neighbours': error(['name'], 'A steepest stretch is looked for between neighbouring planned readings, never across a missing one.', 'steepest-fall(mat.DO)', false,
    { readings: 'time mat.DO\n20:00 8.21\n22:00 8.26\n00:30 7.31\n' }),
  'no-stretch': error(['name', 'length'], 'No two readings stand that far apart without one missing between them.', 'steepest-fall(mat.DO, over 9 h)'),
  'ambiguous-time': error(['time', 'times'], 'The run holds this time more than once; a date says which is meant.', 'at(mat.DO, 02:00)', true, { protocol: severalNights, readings: fewDays }),
  'ambiguous-phase': error(['name', 'phases'], 'The run has several of these; a number says which night is meant.', 'mean(mat.DO, dark)', true, { protocol: severalNights, readings: fewDays }),
  'no-such-phase': error(['name'], 'The plan has no such phase, because it has no lights-off or ends before it.', 'mean(mat.DO, dark)', false, {
    protocol: onePlain.replace('light off: 22:00, ', ''), readings: plainReadings,
  }),
  'time-outside-run': error(['time', 'start', 'end'], 'The time lies outside the run, where nothing was planned or read.', 'at(mat.DO, 15:00)'),
  'time-not-in-run': error(['name'], 'The plan does not say, or the run does not hold, this time.', 'at(mat.DO, sunset)'),
  'schedule-needed': error(['name'], 'Times by name or by the clock need a schedule with a start.', 'duration(start..light-off)', false, {
    protocol: onePlain.replace(/schedule:.*\n/u, ''), readings: 'time mat.DO\n2026-03-14T20:00 8.21\n',
  }),
  'level-not-reached': error(['name', 'side', 'level'], 'There is no such time, and a formula must not invent one.', 'first-below(mat.DO, 3 mg/L)'),
  'never-settled': error(['name', 'within', 'length'], 'No reading is followed by a stretch as calm as asked for.', 'settled(mat.DO, within 0.01 mg/L, for 2 h)'),
  'never-turns': error(['name'], 'The series ends at its lowest, or rises by less than the instrument can tell.', 'turning-point(mat.DO)'),
  'accuracy-needed': error(['name', 'function'], 'Whether a difference can be told depends on the instrument; its accuracy must be stated to say so.', 'resolved(fall(mat.DO, 22:00..22:30))', false,
    { protocol: onePlain, readings: plainReadings }),
  'all-or-any': error([], 'A condition on readings is true at some and false at others; “all” or “any” says which is claimed.', 'mat.DO > 3 mg/L', true),
  'condition-needed': error(['found'], 'Only a condition can be true or false at a reading.', '1', false, { addToProtocol: '  - when: mat.DO\n    do: Switch the air pump on\n' }),
  'formula-not-a-value': error(['found'], 'A name alone has no value to show.', 'mat'),
  'word-not-in-scale': error(['word', 'quantity', 'scale'], 'Only the words of the scale can have been logged.', 'any(mat.mood == clam)', true,
    { protocol: chemistry, readings: 'time mat.mood\n20:00 calm\n' }),
  'result-failed': error(['name'], 'A result that cannot be computed cannot be used further.', 'y * 2', false, { values: 'y = min(mta.DO)\nx = y * 2\n' }),
  'result-circle': error(['name'], 'A result that rests on itself rests on nothing.', 'x + 1'),
  'tank-fact-missing': error(['tank', 'key', 'function'], 'The plan does not state what this is computed from.', 'volume(mat)', false, { protocol: onePlain, readings: plainReadings }),
  'quantity-needed': error(['function', 'place', 'quantity', 'example'], 'The equation needs this quantity from the same rows; without it the answer would be a guess.', 'un-ionised-ammonia(mat)'),
  'pressure-needed': error(['function'], 'The oxygen that water holds depends on the air pressure of the place.', 'min(saturation(mat.DO))', false, { protocol: onePlain, readings: plainReadings }),
  'pressure-level-needed': error(['quantity'], 'A pressure reduced to sea level is up to a fifth higher than the pressure of the place; the plan must say which was read.', 'min(saturation(mat.DO))', false,
    { protocol: withPressure('{what: air pressure, unit: hPa, with: barometer, in: room}'), readings: pressureReadings }),
  'elevation-needed': error(['quantity'], 'A sea-level pressure becomes the pressure of the place only with the elevation.', 'min(saturation(mat.DO))', false,
    { protocol: withPressure('{what: air pressure, unit: hPa, with: barometer, in: room, level: sea}'), readings: pressureReadings }),
  'pressure-not-station': error(['quantity', 'value', 'time', 'elevation', 'expected'], 'No weather gives this pressure at this elevation; it is most likely reduced to sea level.', 'min(saturation(mat.DO))', false,
    { protocol: withPressure('{what: air pressure, unit: hPa, with: barometer, in: room, level: station}').replace('name: Zwolle,', 'name: Davos, elevation: 1560 m,'), readings: pressureReadings }),
  'exchange-not-identified': error(['function', 'decline', 'count'], 'Respiration and surface exchange can be told apart only when the oxygen bends towards its resting level; until then only the net decline is known.', 'respiration(mat.DO, dark)', false,
    { readings: 'time mat.DO mat.T room.P\n22:00 8.26 24.8 1009\n22:30 8.02 24.8 1009\n23:00 7.77 24.8 1009\n23:30 7.54 24.8 1009\n00:00 7.29 24.8 1009\n00:30 7.06 24.8 1009\n' }),
  'level-never-reached': error(['level', 'equilibrium'], 'The fitted night comes to rest above the level, so no time would be true.', 'time-to(a.DO, 1 mg/L)', false, { protocol: fittedPlan, readings: fittedReadings }),
  'prediction-below-nothing': error(['function'], 'Oxygen cannot fall below nothing; long before that respiration slows and animals die, so the fitted night no longer tells anything.', 'predicted-min(a.DO, dark 12 h, stocking 4)', false, { protocol: fittedPlan, readings: fittedReadings }),
  'no-balance': error(['name'], 'Without a turn from loss to gain there is no such time.', 'balance-point(a.DO, 22:00..06:00)', false, { protocol: fittedPlan, readings: fittedReadings }),
  'oxygen-column-needed': error(['function', 'found'], 'Saturation and deficit belong to one tank’s dissolved oxygen, with its temperature beside it.', 'min(saturation(mat.T))'),
  'no-joint-rows': error(['function', 'name'], 'The equation needs all its readings from the same rows.', 'min(saturation(mat.DO))', false,
    { readings: 'time mat.DO mat.T room.P\n20:00 8.21 - -\n20:30 - 24.9 1009.2\n' }),
  'outside-equation-range': error(['function', 'input', 'value', 'low', 'high', 'unit', 'time'], 'The equation was published for this range only; beyond it nobody knows.', 'solubility(45 degC, standard-pressure)'),
  'not-for-saline-water': error(['function', 'time'], 'The equation holds for fresh water; in salt water it reads too high.', 'first(carbon-dioxide(mat))', false,
    { protocol: chemistry, readings: 'time mat.KH mat.pH mat.T mat.S\n20:00 7.0 7.9 24.9 33\n' }),
  'equation-not-applicable': error(['function', 'about', 'time'], 'The equation wants something that this unit or water does not give.', 'min(saturation(mat.DO))', false,
    { protocol: withPressure('{what: air pressure, unit: hPa, with: barometer, in: room, level: station}').replace('unit: mg/L', 'unit: umol/kg'), readings: pressureReadings }),
  'reference-temperature-needed': error(['quantity'], 'The same water reads differently on hydrometers made for 15, 20 and 25 °C.', 'first(salinity(mat))', false,
    { protocol: chemistry, readings: 'time mat.SG mat.T\n20:00 1.0240 24.9\n' }),
} as const satisfies Record<string, CodeEntry>;
