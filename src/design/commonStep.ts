// Readings at which two tanks jump together: a probe moved or wiped, or a hand in both tanks, rather than both tanks at once.
import { commonSteps } from '../analysis/gap.ts';
import { medianStep } from '../analysis/points.ts';
import { amountIn } from '../dataset/readingValue.ts';
import { isUsable, seriesFor } from '../dataset/series.ts';
import type { Series } from '../dataset/types.ts';
import type { Problem } from '../problems/problem.ts';
import { differenceUnit } from '../quantities/units.ts';
import { finding, sayTime, shown, type Design } from './finding.ts';

/** Quantities that never jump in two tanks at once of their own accord. */
const steady = new Set(['dissolved oxygen', 'water temperature', 'pH', 'conductivity', 'specific conductance', 'salinity']);

/** Pairs of tanks whose readings jump alike at one time, with no event there. */
export function checkCommonStep(design: Design): Problem[] {
  const { protocol, context } = design;
  const found: Problem[] = [];
  for (const measure of protocol.measure) {
    if (!measure.unit || !steady.has(measure.what?.value ?? '') || measure.id.includes('@')) continue;
    const resolution = amountIn(measure.resolution, measure.unit, 0) ?? 0;
    const reported = new Set<number>();
    const columns = protocol.tanks.flatMap((tank) => seriesFor(context.dataset, tank.id, measure.id) ?? []);
    for (const [index, one] of columns.entries()) {
      for (const other of columns.slice(index + 1)) {
        const rows = evenRows(one, other);
        for (const at of commonSteps(rows.map((row) => row.a), rows.map((row) => row.b), Math.max(5 * resolution, 1e-9))) {
          const { time, source } = rows[at]!;
          const excused = protocol.events.some((event) => event.at > rows[at - 1]!.time - 1 && event.at <= time);
          if (reported.has(time) || excused || !source) continue;
          reported.add(time);
          const step = (key: 'a' | 'b'): string => shown(rows[at]![key] - rows[at - 1]![key], differenceUnit(one.unit), protocol);
          const labels = [one, other].map((series) => protocol.tanks.find((tank) => tank.id === series.place)?.label ?? series.place);
          found.push(finding(design, 'common-step', source, { quantity: measure.id, time: sayTime(time, protocol), tanks: labels, steps: [step('a'), step('b')] }));
        }
      }
    }
  }
  return found;
}

interface Row { readonly time: number; readonly a: number; readonly b: number; readonly source: { start: number; end: number } | null }

/** Paired readings of the longest evenly spaced stretch. */
function evenRows(one: Series, other: Series): Row[] {
  const positions = new Map<number, number>();
  other.times.forEach((time, index) => { if (isUsable(other, index)) positions.set(time, index); });
  const rows: Row[] = [];
  one.times.forEach((time, index) => {
    const partner = positions.get(time);
    if (partner !== undefined && isUsable(one, index)) rows.push({ time, a: one.values[index]!, b: other.values[partner]!, source: one.sources[index]?.cell.range ?? null });
  });
  const step = medianStep(rows);
  let best: Row[] = [];
  let run: Row[] = [];
  for (const row of rows) {
    const before = run.at(-1);
    run = before && step && Math.abs(row.time - before.time - step) > 0.05 * step ? [row] : [...run, row];
    if (run.length > best.length) best = run;
  }
  return best;
}
