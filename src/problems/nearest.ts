// The nearest known name to a misspelt one, for fixes. One measure for every room.

/** Edits (insert, delete, replace, swap of neighbours) that turn one text into the other. Damerau 1964, restricted form. */
export function editDistance(a: string, b: string): number {
  const rows = Array.from({ length: a.length + 1 }, (_, i) => [i, ...new Array<number>(b.length).fill(0)]);
  for (let j = 0; j <= b.length; j += 1) rows[0]![j] = j;
  for (let i = 1; i <= a.length; i += 1) {
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(rows[i - 1]![j]! + 1, rows[i]![j - 1]! + 1, rows[i - 1]![j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, rows[i - 2]![j - 2]! + 1);
      rows[i]![j] = best;
    }
  }
  return rows[a.length]![b.length]!;
}

/** The known name that was most likely meant, or null when none is near. Case, spaces and hyphens weigh nothing. */
export function nearestName(name: string, known: Iterable<string>): string | null {
  const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]+/g, '-');
  const wanted = plain(name.slice(0, 60));
  let best: string | null = null;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= least + 1) continue;
    const distance = editDistance(wanted, plain(candidate));
    if (distance < least) { least = distance; best = candidate; }
  }
  return best;
}
