// Functions that read the plan: the size of a tank and the length of a stretch of time.
import { waterVolume } from '../../protocol/derived.ts';
import { parseUnit } from '../../quantities/units.ts';
import { isFailure, toUnit } from '../../quantities/value.ts';
import type { NumberValue } from '../../quantities/types.ts';
import type { Tank } from '../../protocol/types.ts';
import type { Call } from '../call.ts';
import type { FormulaValue } from '../types.ts';
import type { FunctionEntry, Signature } from './entry.ts';

const tankSignature: readonly Signature[] = [{ parameters: [{ name: 'tank', type: 'tank', about: 'a tank of the protocol' }], options: [] }];
const litre = parseUnit('L')!;
const centimetre = parseUnit('cm')!;

function fact(call: Call, key: string, pick: (tank: Tank) => NumberValue | null, unit: NumberValue['unit']): FormulaValue | null {
  const id = (call.operand(0) as { id: string }).id;
  const tank = call.run.context.protocol?.tanks.find((each) => each.id === id);
  const value = tank ? pick(tank) : null;
  if (!value) return call.fail('tank-fact-missing', { tank: id, key, function: call.name }, call.rangeOf(0));
  const converted = toUnit(value, unit);
  return isFailure(converted) ? call.failure(converted) : converted;
}

export const planFunctions: readonly FunctionEntry[] = [
  {
    name: 'volume', group: 'plan', gives: 'number', units: 'L', signatures: tankSignature,
    definition: 'The water in the tank: as the protocol states it, or length times width times water depth.', equation: 'length · width · water depth', source: null,
    example: { formula: 'volume(mat)', on: 'a tank of 50 x 30 cm with 28 cm of water', gives: '42 L' }, words: 'the water volume of {1}',
    evaluate: (call) => fact(call, 'volume', waterVolume, litre),
  },
  {
    name: 'length', group: 'plan', gives: 'number', units: 'cm', signatures: tankSignature,
    definition: 'The length of the tank, as the protocol states it.', equation: 'size: length x width x height', source: null,
    example: { formula: 'length(mat)', on: 'a tank of 50 x 30 x 32 cm', gives: '50 cm' }, words: 'the length of {1}',
    evaluate: (call) => fact(call, 'size', (tank) => tank.size?.length ?? null, centimetre),
  },
  {
    name: 'width', group: 'plan', gives: 'number', units: 'cm', signatures: tankSignature,
    definition: 'The width of the tank, front to back, as the protocol states it.', equation: 'size: length x width x height', source: null,
    example: { formula: 'width(mat)', on: 'a tank of 50 x 30 x 32 cm', gives: '30 cm' }, words: 'the width of {1}',
    evaluate: (call) => fact(call, 'size', (tank) => tank.size?.width ?? null, centimetre),
  },
  {
    name: 'height', group: 'plan', gives: 'number', units: 'cm', signatures: tankSignature,
    definition: 'The height of the tank, as the protocol states it.', equation: 'size: length x width x height', source: null,
    example: { formula: 'height(mat)', on: 'a tank of 50 x 30 x 32 cm', gives: '32 cm' }, words: 'the height of {1}',
    evaluate: (call) => fact(call, 'size', (tank) => tank.size?.height ?? null, centimetre),
  },
  {
    name: 'duration', group: 'plan', gives: 'duration', units: 'a length of time',
    signatures: [{ parameters: [{ name: 'window', type: 'window', about: 'a stretch of time, such as dark or light-off..light-on' }], options: [] }],
    definition: 'How long a stretch of time lasts.', equation: 'end − start', source: null,
    example: { formula: 'duration(light-off..light-on)', on: 'lights off at 22:00 and on at 06:00', gives: '8 h' }, words: 'the length of {1}',
    evaluate: (call) => {
      const stretch = call.window(0)!;
      return { type: 'duration', duration: stretch.to - stretch.from };
    },
  },
];
