// What the columns of an imported table hold, changed one at a time: each target is held by one column only.
import type { ImportColumn } from './importProposal.ts';

/** A head without its unit: `mat.T` of `mat.T[degF]`. */
export const plainHead = (head: string): string => head.replace(/\[.*$/u, '');

/** The columns with one set anew, in its place: what it takes from another column, and the parts of a joined one, are no longer held there. */
export function withColumn(columns: readonly ImportColumn[], set: ImportColumn): ImportColumn[] {
  const parts = new Set([set.from, ...set.from.split(' + ')]);
  const touched = (column: ImportColumn): boolean => [column.from, ...column.from.split(' + ')].some((part) => parts.has(part));
  const unique = set.to === null || set.to === 'remark' ? null : plainHead(set.to);
  const first = columns.findIndex(touched);
  const kept = columns.flatMap((column, index): ImportColumn[] => {
    if (touched(column)) return index === first ? [set] : [];
    return [column.to !== null && plainHead(column.to) === unique ? { from: column.from, to: null } : column];
  });
  return first < 0 ? [...kept, set] : kept;
}
