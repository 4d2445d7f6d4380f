// The plan as typed facts with their places in the note. Built by readProtocol; nothing else writes it.
import type { SourceRange } from '../problems/problem.ts';
import type { MappedText } from '../note/mappedText.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import type { Criterion } from './criteria.ts';
import type { Duration, Instant, Zone } from '../time/instant.ts';

/** A fact and where it stands. */
export interface Placed<T> { readonly value: T; readonly range: SourceRange }

export type Role = 'treatment' | 'control';

export interface Place {
  readonly name: Placed<string> | null;
  readonly latitude: Placed<number> | null;
  readonly longitude: Placed<number> | null;
  /** Metres above sea level. */
  readonly elevation: Placed<NumberValue> | null;
  readonly daylight: boolean;
}

export interface Tank {
  readonly id: string;
  readonly idRange: SourceRange;
  /** Position in the protocol, from 0: the palette and the tables follow it. */
  readonly index: number;
  readonly role: Placed<Role> | null;
  readonly group: Placed<string> | null;
  /** What prose calls it; the id where the protocol gives no label. */
  readonly label: string;
  readonly size: { readonly length: NumberValue; readonly width: NumberValue; readonly height: NumberValue } | null;
  readonly waterDepth: NumberValue | null;
  /** As typed under `volume`. The derived volume is `waterVolume` of src/protocol/derived.ts. */
  readonly volume: NumberValue | null;
  readonly runningSince: Placed<string> | null;
  readonly plants: Placed<string> | null;
  readonly animals: Placed<string> | null;
  readonly equipment: Placed<string> | null;
  readonly salinity: Placed<NumberValue> | null;
  readonly facts: ReadonlyMap<string, Placed<NumberValue>>;
  readonly like: Placed<string> | null;
  /** Every key's text after `like` was followed, for telling tanks apart. Keys as in the schema. */
  readonly written: ReadonlyMap<string, Placed<string>>;
}

export interface MeasuredQuantity {
  /** The name used in heads: `DO`. */
  readonly id: string;
  readonly idRange: SourceRange;
  /** Entry of the closed list of quantities, e.g. `dissolved oxygen`; null when unreadable. */
  readonly what: Placed<string> | null;
  readonly unit: Unit | null;
  readonly unitRange: SourceRange | null;
  /** The instrument, in words. */
  readonly with: Placed<string> | null;
  /** Tank ids or `room` that the instrument is used in; empty: all. */
  readonly in: readonly Placed<string>[];
  readonly accuracy: NumberValue | null;
  readonly resolution: NumberValue | null;
  readonly calibrated: Placed<string> | null;
  readonly level: Placed<'station' | 'sea'> | null;
  readonly scale: readonly string[] | null;
  /** The offset found side by side with the plain instrument is taken out of this one's readings in formulas. */
  readonly correctedBy?: Placed<'side by side'>;
  /** For a hydrometer: the temperature printed on it, to whose pure water it compares, °C. */
  readonly referenceTemperature?: Placed<NumberValue>;
}

export interface PlanEvent {
  readonly id: string | null;
  readonly at: Instant;
  readonly atRange: SourceRange;
  readonly what: string;
  /** Tank ids; empty: all. */
  readonly tanks: readonly Placed<string>[];
  readonly range: SourceRange;
}

/** `every` of the schedule, one entry a stretch. */
export interface Sampling {
  readonly every: Duration; readonly from: Instant; readonly to: Instant;
  /** Whole days between readings that keep their clock time when clocks change; absent for elapsed time. */
  readonly days?: number;
}

export interface Window { readonly from: Instant; readonly to: Instant }

/** A dark or light period, a phase: name and window. `typed` is null for derived ones. */
export interface Phase { readonly id: string; readonly window: Window; readonly typed: SourceRange | null }

export interface Schedule {
  readonly start: Instant;
  readonly startRange: SourceRange;
  readonly end: Instant | null;
  readonly sampling: readonly Sampling[];
  /** Every planned reading time, sorted, without doubles. */
  readonly slots: readonly Instant[];
  /** Lights off and on within (or next to) the run, sorted. */
  readonly lightOff: readonly Instant[];
  readonly lightOn: readonly Instant[];
  readonly range: SourceRange;
}

export interface EqualiseStep {
  readonly step: string;
  readonly why: string | null;
  readonly accept: MappedText | null;
  readonly done: Placed<string> | null;
  readonly range: SourceRange;
}

export interface StopRule {
  readonly when: MappedText | null;
  readonly do: string | null;
  readonly outcome: Placed<string> | null;
  readonly range: SourceRange;
}

export interface Limit {
  /** Species, criterion or whom the limit protects. */
  readonly for: string;
  /** Id of a measured quantity. */
  readonly quantity: Placed<string> | null;
  readonly atLeast: Placed<NumberValue> | null;
  readonly atMost: Placed<NumberValue> | null;
  readonly source: string | null;
  /** The published criterion that the plan names; its minimum is then `atLeast`. */
  readonly criterion?: Criterion;
  readonly range: SourceRange;
}

/** What the author expects of a quantity before the run: judged by the design check, never by a claim. */
export interface Expectation {
  readonly quantity: Placed<string>;
  /** The smallest difference between treatment and control that the run is to show, in the quantity's difference unit. */
  readonly effect: NumberValue | null;
  /** How fast the quantity may change, per hour. */
  readonly rate: NumberValue | null;
  readonly range: SourceRange;
}

export interface Protocol {
  /** Of the block's content. */
  readonly range: SourceRange;
  readonly title: Placed<string> | null;
  readonly question: Placed<string> | null;
  readonly hypothesis: Placed<string> | null;
  readonly by: Placed<string> | null;
  /** The answer in one sentence, claims and all. */
  readonly answer?: Placed<string> | null;
  /** Time of publishing. */
  readonly published?: Placed<Instant> | null;
  /** Language of the note's prose; decimal marks in claims follow it. */
  readonly language: string;
  readonly licence: Placed<string> | null;
  readonly place: Place;
  /** The zone of every clock time in the note. UTC with a problem where the protocol names none. */
  readonly zone: Zone;
  readonly tanks: readonly Tank[];
  readonly differs: readonly Placed<string>[];
  readonly schedule: Schedule | null;
  readonly events: readonly PlanEvent[];
  readonly measure: readonly MeasuredQuantity[];
  readonly equalise: readonly EqualiseStep[];
  /** Typed phases first, then derived ones, in order of time. */
  readonly phases: readonly Phase[];
  readonly limits: readonly Limit[];
  readonly stopRules: readonly StopRule[];
  /** Planned reading order: ids of tanks. */
  readonly order: readonly Placed<string>[];
  /** `alternate`: the first tank of a slot moves one on each time. `random`: drawn for each slot from `seed`. Absent: always `order`. */
  readonly orderRule?: Placed<'alternate' | 'random'>;
  readonly expect?: readonly Expectation[];
  readonly seed: Placed<string> | null;
  readonly pairWithin: Duration;
  readonly repeats: Placed<string> | null;
  /** Problem codes the author accepts. */
  readonly accepted: readonly Placed<string>[];
  readonly sealed: Placed<string> | null;
  /** Sunrise, sunset and so on of every day that the run touches; empty without a place or with `daylight: no`. */
  readonly sun: readonly SunDay[];
}

/** Sun times of one local date; null where the sun does not cross that height. */
export interface SunDay {
  readonly date: string;
  readonly dawn: Instant | null; readonly sunrise: Instant | null;
  readonly sunset: Instant | null; readonly dusk: Instant | null;
}
