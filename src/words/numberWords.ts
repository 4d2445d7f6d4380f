/** A number written as a word, as a language reads it. */
export interface NumberWord {
  readonly length: number;
  readonly value: number;
  readonly decimals: number;
  /** True for an article (`a`, `eine`), which is a number only before a unit of time. */
  readonly article: boolean;
}
