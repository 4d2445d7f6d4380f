// Instants are whole milliseconds since 1970-01-01T00:00Z; durations are whole milliseconds.
export type Instant = number;
export type Duration = number;
export const second = 1_000;
export const minute = 60_000;
export const hour = 3_600_000;
export const day = 86_400_000;

/** A calendar date and clock time without a zone. */
export interface WallTime {
  readonly year: number; readonly month: number; readonly day: number;
  readonly hour: number; readonly minute: number; readonly second: number;
}

/** A time zone's rules, read once into a table of transitions; then integer arithmetic only. */
export interface Zone {
  /** IANA name, for example `Europe/Amsterdam`. */
  readonly name: string;
  /** Milliseconds that wall time is ahead of UTC at the instant. */
  offsetAt(instant: Instant): Duration;
}

/** What a wall time means in a zone: one instant, none (clocks put forward), or two (clocks put back). */
export type WallMeaning =
  | { readonly kind: 'single'; readonly instant: Instant }
  | { readonly kind: 'skipped'; readonly before: Instant; readonly after: Instant }
  | { readonly kind: 'repeated'; readonly earlier: Instant; readonly later: Instant };
