// The instruments: what they can tell apart, whether their accuracy is known and fresh, which pressure is meant.
import { fix, type Problem } from '../problems/problem.ts';
import { amountIn } from '../dataset/readingValue.ts';
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import { differenceUnit } from '../quantities/units.ts';
import { numberValue, expandedUncertainty } from '../quantities/value.ts';
import type { Unit } from '../quantities/types.ts';
import { formatDate, readDate } from '../time/text.ts';
import { day, type Instant } from '../time/instant.ts';
import { compatibleInstant } from '../time/zone.ts';
import { addUnderKey } from './planEdits.ts';
import { finding, shown, type Design } from './finding.ts';

/** Days after which a calibration counts as old. Common practice, no source. */
export const calibrationDays = 30;

/** How many tanks the entry's instrument is used in. */
function tanksOf(measure: MeasuredQuantity, protocol: Protocol): number {
  const places = measure.in.map((place) => place.value);
  return places.length === 0 ? protocol.tanks.length : protocol.tanks.filter((tank) => places.includes(tank.id)).length;
}

/**
 * 95 % half-width of a difference between two tanks, in the quantity's unit. One instrument used in both shares its
 * systematic part, which cancels; its resolution (or, where none is stated, its accuracy) stays. Null: not known.
 */
export function differenceHalfWidth(measure: MeasuredQuantity, protocol: Protocol): number | null {
  if (!measure.unit || measure.accuracy === null || measure.accuracy.unit.kind === 'percentage' && measure.unit.kind !== 'percentage') return null;
  const accuracy = amountIn(measure.accuracy, measure.unit, 0);
  const resolution = amountIn(measure.resolution, measure.unit, 0);
  if (accuracy === null) return null;
  const contributions = new Map<string, number>();
  const shared = tanksOf(measure, protocol) > 1;
  for (const side of ['one', 'other']) {
    if (resolution !== null) contributions.set(`resolution:${side}`, resolution / Math.sqrt(12));
    if (!shared || resolution === null) contributions.set(`instrument:${side}`, accuracy / Math.sqrt(3));
  }
  return expandedUncertainty(numberValue(0, differenceUnit(measure.unit), contributions));
}

/** An expected effect that two readings of these instruments cannot tell apart. */
export function checkEffect(design: Design): Problem[] {
  const { protocol } = design;
  return (protocol.expect ?? []).flatMap((expectation): Problem[] => {
    const measure = protocol.measure.find((each) => each.id === expectation.quantity.value);
    if (!measure?.unit || !expectation.effect) return [];
    const effect = amountIn(expectation.effect, measure.unit, 0);
    const half = differenceHalfWidth(measure, protocol);
    if (effect === null || half === null || effect > half * (1 + 1e-9)) return [];
    const unit: Unit = differenceUnit(measure.unit);
    return [finding(design, 'effect-below-instrument', expectation.range, { quantity: measure.id, effect: shown(effect, unit, protocol), least: shown(half, unit, protocol) }, [], [
      { range: measure.idRange, message: 'instrument-here', args: { name: measure.with?.value ?? measure.id } },
    ])];
  });
}

const judgedByEye = (measure: MeasuredQuantity): boolean => measure.scale !== null || measure.unit === null || measure.unit.symbol === '1';

/** An instrument whose accuracy nobody stated. */
export function checkAccuracy(design: Design): Problem[] {
  return design.protocol.measure.flatMap((measure): Problem[] => (judgedByEye(measure) || measure.accuracy || !measure.what ? [] : [
    finding(design, 'instrument-without-accuracy', measure.idRange, { quantity: measure.id, instrument: measure.with?.value ?? '' }),
  ]));
}

/** A calibration too long before the start. */
export function checkCalibration(design: Design): Problem[] {
  const { protocol } = design;
  const { schedule, zone } = protocol;
  if (!schedule) return [];
  return protocol.measure.flatMap((measure): Problem[] => {
    const text = measure.calibrated;
    const date = text && readDate(/\d{4}-\d\d-\d\d/.exec(text.value)?.[0] ?? '');
    if (!text || !date) return [];
    const at: Instant = compatibleInstant({ ...date, hour: 12, minute: 0, second: 0 }, zone);
    const days = Math.floor((schedule.start - at) / day);
    if (days <= calibrationDays) return [];
    return [finding(design, 'calibration-old', text.range, { quantity: measure.id, date: formatDate(at, zone), days, most: calibrationDays })];
  });
}

/** Air pressure without a word on where it holds. */
export function checkPressureLevel(design: Design): Problem[] {
  const { protocol, text } = design;
  return protocol.measure.flatMap((measure): Problem[] => (measure.what?.value !== 'air pressure' || measure.level || measure.id.includes('@') ? [] : [
    finding(design, 'pressure-level-missing', measure.idRange, { quantity: measure.id }, [
      fix('say-level', { level: 'station' }, addUnderKey(text, measure.idRange, 'level: station')),
      fix('say-level', { level: 'sea' }, addUnderKey(text, measure.idRange, 'level: sea')),
    ]),
  ]));
}
