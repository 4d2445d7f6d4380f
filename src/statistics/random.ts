// A seeded generator of random numbers: the same seed gives the same numbers on every machine.
// xoshiro128** by Blackman and Vigna (2018), seeded through splitmix32 over the seed's characters.
import { normalQuantile } from './distributions.ts';

export interface Random {
  /** Uniform on [0, 1), 53 bits. */
  next(): number;
  /** Uniform whole number from 0 to below `count`. */
  below(count: number): number;
  /** Standard normal, by the inverse of its distribution. */
  normal(): number;
  /** A shuffled copy (Fisher and Yates). */
  shuffle<T>(items: readonly T[]): T[];
}

/** A generator from a seed of letters or a number. */
export function seededRandom(seed: string | number): Random {
  let mixer = 0x9e3779b9;
  for (const letter of String(seed)) mixer = Math.imul(mixer ^ (letter.codePointAt(0) ?? 0), 0x85ebca6b) ^ (mixer >>> 13);
  const splitmix = (): number => {
    mixer = (mixer + 0x9e3779b9) | 0;
    let z = mixer;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  let a = splitmix();
  let b = splitmix();
  let c = splitmix();
  let d = splitmix() | 1;
  const rotate = (x: number, by: number): number => (x << by) | (x >>> (32 - by));
  const word = (): number => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a; d ^= b; b ^= c; a ^= d; c ^= shifted;
    d = rotate(d, 11);
    return result;
  };
  const next = (): number => ((word() >>> 5) * 67_108_864 + (word() >>> 6)) / 9_007_199_254_740_992;
  const below = (count: number): number => Math.floor(next() * count);
  return {
    next, below,
    normal: () => normalQuantile(next() + 5.5e-17),
    shuffle: (items) => {
      const copy = [...items];
      for (let index = copy.length - 1; index > 0; index -= 1) {
        const other = below(index + 1);
        [copy[index], copy[other]] = [copy[other] as typeof copy[number], copy[index] as typeof copy[number]];
      }
      return copy;
    },
  };
}
