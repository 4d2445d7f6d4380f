// The methods' sentences on instruments that were read side by side: offset, drift, and whether they were taken out.
import { compareSideBySide } from '../analysis/sideBySide.ts';
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { differenceUnit, perHour } from '../quantities/units.ts';
import type { Unit } from '../quantities/types.ts';
import { numberValue } from '../quantities/value.ts';
import { isLong, momentWords, quantityName, valueWords, wordsOf } from './facts.ts';
import type { RunPieces } from './figures.ts';

export function describeSideBySide(note: Note, protocol: Protocol): RunPieces[] {
  const { dataset } = note;
  const { sideBySide: sideBySideWords } = wordsOf(protocol);
  const seen = new Set<string>();
  const long = isLong(protocol, dataset.times);
  return [...dataset.series.values()].flatMap((series): RunPieces[] => {
    const key = `${series.quantity}@${series.instrument ?? ''}`;
    if (series.instrument === null || seen.has(key)) return [];
    seen.add(key);
    const found = compareSideBySide(dataset, series.quantity, series.instrument);
    if (!found) return [];
    const unit = differenceUnit(found.unit);
    const entry = protocol.measure.find((each) => each.id === key);
    const plain = protocol.measure.find((each) => each.id === series.quantity);
    const signed = (value: number, of: Unit): string => `${value < 0 ? '−' : '+'}${valueWords(numberValue(Number(Math.abs(value).toPrecision(2)), of), protocol)}`;
    return [sideBySideWords.compared({
      what: quantityName(series.quantity, protocol), instrument: entry?.with?.value ?? series.instrument, other: plain?.with?.value ?? series.quantity, count: found.count,
      start: signed(found.start.offset, unit), startTime: momentWords(found.start.time, protocol, long),
      end: found.end ? { offset: signed(found.end.offset, unit), time: momentWords(found.end.time, protocol, long), drift: signed(found.drift ?? 0, perHour(unit)) } : null,
      corrected: entry?.correctedBy != null,
    })];
  });
}
