// `pair within`: readings of different blocks whose times differ by a little count as taken together.
import { fix, problem, type Problem } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import type { ReadingRow, ReadingsTable } from '../readings/types.ts';
import { minute, type Duration, type Instant } from '../time/instant.ts';
import { formatDuration } from '../time/text.ts';

/** Times of rows that take part in a pair; rows not in the map keep their own. */
export type RowTimes = ReadonlyMap<ReadingRow, Instant>;

/**
 * The earlier block gives the time, the later block's row takes it when it lies within the allowance and the earlier
 * time has no reading of the same column. Each time is taken by the nearest row only.
 */
export function pairedTimes(tables: readonly ReadingsTable[], within: Duration): RowTimes {
  const times = new Map<ReadingRow, Instant>();
  if (within <= 0 || tables.length < 2) return times;
  const held = new Map<Instant, Set<string>>();
  for (const table of tables) {
    const ids = table.columns.map((column) => column.id);
    const anchors = [...held.keys()].sort((a, b) => a - b);
    const own = new Set<Instant>();
    for (const row of table.rows) if (row.instant !== null) own.add(row.instant);
    const wishes = table.rows.flatMap((row) => {
      if (row.instant === null || held.has(row.instant)) return [];
      return near(anchors, row.instant, within).map((anchor) => ({ row, anchor, gap: Math.abs(anchor - row.instant!) }));
    }).sort((a, b) => a.gap - b.gap);
    const taken = new Set<Instant>();
    for (const { row, anchor } of wishes) {
      if (times.has(row) || taken.has(anchor) || own.has(anchor) || ids.some((id) => held.get(anchor)!.has(id))) continue;
      times.set(row, anchor);
      taken.add(anchor);
    }
    for (const row of table.rows) {
      const time = times.get(row) ?? row.instant;
      if (time === null) continue;
      const columns = held.get(time) ?? new Set<string>();
      for (const id of ids) columns.add(id);
      held.set(time, columns);
    }
  }
  return times;
}

/** The nearest anchor on each side, within the allowance. */
function near(anchors: readonly Instant[], time: Instant, within: Duration): Instant[] {
  let low = 0;
  let high = anchors.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (anchors[middle]! < time) low = middle + 1; else high = middle;
  }
  return [anchors[low - 1], anchors[low]].filter((anchor) => anchor !== undefined && Math.abs(anchor - time) <= within) as Instant[];
}

/** Offers `pair within` where most rows of a block lie within two minutes of another block's times without meeting them. */
export function offerPairing(tables: readonly ReadingsTable[], protocol: Protocol): Problem[] {
  if (protocol.pairWithin > 0 || tables.length < 2) return [];
  const earlier = new Set<Instant>();
  for (const table of tables) {
    const rows = table.rows.filter((row) => row.instant !== null);
    if (earlier.size > 0 && rows.length > 0) {
      const anchors = [...earlier].sort((a, b) => a - b);
      const gaps = rows.filter((row) => !earlier.has(row.instant!)).flatMap((row) => {
        const [least] = near(anchors, row.instant!, 2 * minute).map((anchor) => Math.abs(anchor - row.instant!)).sort((a, b) => a - b);
        return least === undefined ? [] : [least];
      });
      if (gaps.length > 0 && gaps.length * 2 >= Math.min(rows.length, anchors.length)) {
        const within = Math.max(...gaps) <= minute ? minute : 2 * minute;
        const line = `pair within: ${formatDuration(within)}`;
        // In front of the plan's last line break, whatever kind that is.
        const end = Math.max(protocol.range.start, protocol.range.end - 1);
        return [problem('times-nearly-pair', table.headRange ?? table.file?.range ?? rows[0]!.range, { count: gaps.length, within: formatDuration(within) }, [
          fix('insert-text', { text: line }, [{ range: { start: end, end }, newText: `\n${line}` }]),
        ])];
      }
    }
    for (const row of rows) earlier.add(row.instant!);
  }
  return [];
}
