// What-if on a fitted night: the lowest oxygen and the hours below a level with a longer dark period, a stronger surface
// exchange or another stocking. Predictions with an interval and a caution.
import { asItWas, hoursUnder, lowest, predict, predictedCurve, type WhatIf } from '../../analysis/whatIf.ts';
import { formatNumber } from '../../quantities/format.ts';
import { parseUnit } from '../../quantities/units.ts';
import { numberValue } from '../../quantities/value.ts';
import { hour } from '../../time/instant.ts';
import { formatDuration } from '../../time/text.ts';
import type { Call } from '../call.ts';
import type { FormulaValue } from '../types.ts';
import { oxygenColumn } from './oxygen.ts';
import type { FunctionEntry, OptionParameter } from './entry.ts';
import { night, nightWindow, rowsOf, shiftsOf, withDigits } from './night.ts';
import { oxygenMilligrams } from './waterRows.ts';

const hours = parseUnit('h') ?? oxygenMilligrams;

const options: readonly OptionParameter[] = [
  { name: 'dark', type: 'duration', required: false, about: 'how long the darkness lasts from its first reading, such as dark 12 h; as it was without it' },
  { name: 'exchange', type: 'number', required: false, about: 'the surface exchange as a multiple of the fitted one, such as exchange 2 for an air pump that doubles it' },
  { name: 'stocking', type: 'number', required: false, about: 'the respiration as a multiple of the fitted one, such as stocking 0.5 for half the animals and plants' },
];

/** A multiple: a plain number of nothing or more. */
function multiple(call: Call, name: 'exchange' | 'stocking'): number | null {
  const given = call.optionNumber(name);
  if (!given) return 1;
  if (given.unit.symbol !== '1') return call.fail('plain-number-needed', { function: call.name, unit: given.unit.symbol }, call.optionRange(name));
  return given.value >= 0 ? given.value : call.fail('negative-not-possible', { function: call.name }, call.optionRange(name));
}

function predicted(call: Call, window: number, level: number | null, kind: 'min' | 'hours'): FormulaValue | null {
  const exchange = multiple(call, 'exchange');
  const stocking = multiple(call, 'stocking');
  const found = night(call, call.window(window));
  if (!found || exchange === null || stocking === null) return null;
  const length = call.duration('dark');
  const what: WhatIf = { ...asItWas, dark: length === null ? null : length / hour, exchange, stocking };
  const rows = rowsOf(found.pairs);
  const { fit } = found;
  const figure = kind === 'min' ? lowest : (curve: Parameters<typeof hoursUnder>[0]): number => hoursUnder(curve, level ?? 0);
  const answer = predict(rows, fit, what, figure);
  const { value } = answer;
  // Hours have a corner where the curve just touches the level: the interval reaches at least as far as the lowest oxygen's does.
  const margin = kind === 'min' ? 0 : predict(rows, fit, what, lowest).halfWidth;
  const curve = predictedCurve(rows, fit, what);
  const halfWidth = kind === 'min' ? answer.halfWidth
    : value > 0 ? answer.halfWidth : Math.max(answer.halfWidth, hoursUnder(curve, level! + margin));
  if (!Number.isFinite(value)) return call.fail('not-finite');
  if (lowest(curve) < 0) return call.fail('prediction-below-nothing', { function: call.name });
  const last = rows.at(-1)!.hours;
  call.remark('what-if', {
    dark: formatDuration(length ?? last * hour), exchange: formatNumber(exchange, 2).replace(/\.?0+$/u, ''), stocking: formatNumber(stocking, 2).replace(/\.?0+$/u, ''),
  });
  if (length !== null && length / hour > last + 1e-9) call.remark('beyond-fit', { beyond: formatDuration(length - last * hour) });
  // The instruments' systematic parts move the fit: oxygen the start, oxygen and solubility the respiration.
  const shifts = shiftsOf(found.pairs);
  const contributions = shifts && new Map<string, number>([[`fit:${call.name}:${found.source}`, halfWidth / 2]]);
  for (const [key, { oxygen, solubility }] of shifts ?? []) {
    const moved = figure(predictedCurve(rows, fit, what, { initial: oxygen, exchange: 0, respiration: fit.exchange * (solubility - oxygen), solubility }));
    contributions?.set(key, moved - value);
  }
  return withDigits(numberValue(value, kind === 'min' ? oxygenMilligrams : hours, contributions));
}

const on = 'the oxygen of the mat tank in the dark';
const source = 'Odum (1956), Limnology and Oceanography 1, 102–117; interval by first order from the fit';

export const whatIfFunctions: readonly FunctionEntry[] = [
  {
    name: 'predicted-min', group: 'oxygen', gives: 'number', units: 'mg/L', signatures: [{ parameters: [oxygenColumn, nightWindow], options }],
    definition: 'The lowest oxygen that the fitted night would have had with the given darkness, surface exchange and stocking: a prediction, not a reading.',
    equation: 'min of C(t), dC/dt = x·k(Cs − C) − y·R, 0 ≤ t ≤ dark', source,
    example: { formula: 'predicted-min(mat.DO, dark 12 h)', on, gives: '5.04 mg/L' }, words: 'the lowest oxygen predicted from {1}{window}{dark}{exchange}{stocking}',
    evaluate: (call) => predicted(call, 1, null, 'min'),
  },
  {
    name: 'predicted-hours-below', group: 'oxygen', gives: 'number', units: 'h',
    signatures: [{ parameters: [oxygenColumn, { name: 'level', type: 'number', about: 'a level, such as 5 mg/L' }, nightWindow], options }],
    definition: 'For how many hours the fitted night would have been below the level with the given darkness, surface exchange and stocking: a prediction, not a reading.',
    equation: 'length of the times with C(t) < level, dC/dt = x·k(Cs − C) − y·R, 0 ≤ t ≤ dark', source,
    example: { formula: 'predicted-hours-below(mat.DO, 6 mg/L, dark 12 h)', on, gives: '5.80 h' }, words: 'the time below {2} predicted from {1}{window}{dark}{exchange}{stocking}',
    evaluate: (call) => {
      const level = call.levelIn(0, call.number(1), call.rangeOf(1));
      return level && predicted(call, 2, level.value, 'hours');
    },
  },
];
