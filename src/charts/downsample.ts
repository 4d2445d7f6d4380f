// Thins a long series for drawing without hiding a spike: of each pixel column the first, lowest, highest and last
// reading stay (M4 aggregation: U. Jugel, Z. Jerzak, G. Hackenbroich, V. Markl, 2014, PVLDB 7(10), 797–808).

/** What thinning needs to know of a point. */
export interface Thinnable { readonly time: number; readonly value: number; readonly keep: boolean; readonly segment: number }

/**
 * Keeps at most about `limit` points. Points marked `keep` (doubtful, left out) always stay, and so do the first and
 * last of every run of joined points as far as their column allows. Order is preserved.
 */
export function thin<P extends Thinnable>(points: readonly P[], limit: number): P[] {
  if (points.length <= limit) return [...points];
  const kept = points.filter((point) => point.keep).length;
  const columns = Math.max(1, Math.floor(Math.max(4, limit - kept) / 4));
  const from = points[0]!.time;
  const span = Math.max(1, points[points.length - 1]!.time - from);
  const chosen = new Set<number>();
  let column = -1;
  let first = -1;
  let last = -1;
  let lowest = -1;
  let highest = -1;
  const close = (): void => { for (const index of [first, lowest, highest, last]) if (index >= 0) chosen.add(index); };
  points.forEach((point, index) => {
    if (point.keep) {
      chosen.add(index);
      return;
    }
    const at = Math.min(columns - 1, Math.floor(((point.time - from) / span) * columns));
    if (at !== column) {
      close();
      column = at;
      first = last = lowest = highest = index;
      return;
    }
    last = index;
    if (point.value < points[lowest]!.value) lowest = index;
    if (point.value > points[highest]!.value) highest = index;
  });
  close();
  return points.filter((_, index) => chosen.has(index));
}
