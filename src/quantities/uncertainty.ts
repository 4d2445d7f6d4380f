// Standard uncertainties from what an instrument's sheet and a set of repeats say (JCGM 100:2008, the GUM).
import type { Contributions } from './types.ts';

/** Of an accuracy limit ±a with nothing said about its distribution: rectangular, a/√3. Source: GUM 4.3.7. */
export function fromAccuracyLimit(limit: number): number {
  return Math.abs(limit) / Math.sqrt(3);
}

/** Of a display that steps by δ: δ/√12 = 0.29 δ. Source: GUM F.2.2.1. */
export function fromResolution(step: number): number {
  return Math.abs(step) / Math.sqrt(12);
}

/** Of the mean of n repeats with sample deviation s: s/√n; null for fewer than two. Source: GUM 4.2.3. */
export function fromRepeats(repeats: readonly number[]): number | null {
  const count = repeats.length;
  if (count < 2) return null;
  const mean = repeats.reduce((sum, each) => sum + each, 0) / count;
  const squares = repeats.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return Math.sqrt(squares / (count - 1) / count);
}

/** Contributions from source names and sizes; sizes of 0 are kept out. */
export function contributionsOf(parts: Iterable<readonly [string, number]>): Contributions {
  const contributions = new Map<string, number>();
  for (const [source, size] of parts) if (size !== 0) contributions.set(source, (contributions.get(source) ?? 0) + size);
  return contributions;
}
