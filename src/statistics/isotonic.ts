// Least-squares fit of values that may only rise: runs of values that fall are pooled to their mean.

/** Neighbouring values pooled into one level. */
export interface Level {
  /** Place of the first value and one past the last. */
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly weight: number;
}

/**
 * The levels, rising from first to last, that lie nearest to the values in weighted squares. As many weights as values, all above 0.
 * Source: pool-adjacent-violators, Ayer, Brunk, Ewing, Reid and Silverman (1955), Annals of Mathematical Statistics 26, 641–647.
 */
export function risingLevels(values: readonly number[], weights: readonly number[]): Level[] {
  const levels: Level[] = [];
  for (const [index, value] of values.entries()) {
    let level: Level = { from: index, to: index + 1, value, weight: weights[index] as number };
    for (let before = levels.at(-1); before && before.value >= level.value; before = levels.at(-1)) {
      levels.pop();
      const weight = before.weight + level.weight;
      level = { from: before.from, to: level.to, weight, value: (before.value * before.weight + level.value * level.weight) / weight };
    }
    levels.push(level);
  }
  return levels;
}
