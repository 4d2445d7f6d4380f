// The circular block bootstrap: resampling a series in blocks so that its serial correlation stays.
import { checkSample, type Interval, type StatisticsProblem } from './outcome.ts';
import { mean, quantile, standardDeviation } from './describe.ts';
import type { Random } from './random.ts';

export interface BootstrapResult {
  readonly estimate: number;
  readonly standardError: number;
  /** Percentile interval. */
  readonly interval: Interval;
  readonly blockLength: number;
  readonly resamples: number;
}

/** Fewer blocks than this tell nothing. */
const fewestBlocks = 5;

/** Block length by n^(1/3), rounded, at least 1. */
function defaultBlockLength(count: number): number {
  return Math.max(1, Math.round(Math.cbrt(count)));
}

/** Indices of one resample: blocks from random starts, wrapped round the end, cut to `count`. */
export function resampleCircular(count: number, blockLength: number, random: Random): number[] {
  const indices: number[] = [];
  while (indices.length < count) {
    const start = random.below(count);
    for (let step = 0; step < blockLength && indices.length < count; step += 1) indices.push((start + step) % count);
  }
  return indices;
}

/**
 * Standard error and percentile interval of a statistic of a series by the circular block bootstrap. `statistic` gets the
 * indices of each resample; resamples for which it gives null are left out, more than a tenth of them is `not-converged`.
 * Fewer than 5 blocks is `too-few`. Source: Politis and Romano (1992), in Exploring the Limits of Bootstrap, 263–270.
 */
export function circularBlockBootstrap(
  count: number, statistic: (indices: readonly number[]) => number | null, random: Random,
  options: { readonly blockLength?: number; readonly resamples?: number; readonly confidence?: number } = {},
): BootstrapResult | StatisticsProblem {
  const blockLength = Math.max(1, Math.round(options.blockLength ?? defaultBlockLength(count)));
  const blocks = Math.floor(count / blockLength);
  if (blocks < fewestBlocks) return { problem: 'too-few', has: blocks, needs: fewestBlocks };
  const estimate = statistic(Array.from({ length: count }, (_, index) => index));
  if (estimate === null || !Number.isFinite(estimate)) return { problem: 'not-finite' };
  const resamples = options.resamples ?? 2000;
  const estimates: number[] = [];
  for (let run = 0; run < resamples; run += 1) {
    const value = statistic(resampleCircular(count, blockLength, random));
    if (value !== null && Number.isFinite(value)) estimates.push(value);
  }
  if (estimates.length < 0.9 * resamples) return { problem: 'not-converged', has: estimates.length, needs: Math.ceil(0.9 * resamples) };
  const tail = (1 - (options.confidence ?? 0.95)) / 2;
  return {
    estimate, blockLength, resamples: estimates.length, standardError: standardDeviation(estimates) ?? 0,
    interval: { low: quantile(estimates, tail) ?? estimate, high: quantile(estimates, 1 - tail) ?? estimate },
  };
}

/** The mean of a series with its block-bootstrap error and interval. */
export function bootstrapMean(values: readonly number[], random: Random, options: { readonly blockLength?: number; readonly resamples?: number; readonly confidence?: number } = {}): BootstrapResult | StatisticsProblem {
  const wrong = checkSample(values, fewestBlocks);
  if (wrong) return wrong;
  return circularBlockBootstrap(values.length, (indices) => mean(indices.map((index) => values[index] as number)), random, options);
}
