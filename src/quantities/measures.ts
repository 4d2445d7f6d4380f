export interface MeasureEntry {
  readonly name: string; readonly alsoCalled: readonly string[];
  /** Default unit's symbol; null for quantities on a scale of words. */
  readonly unit: string | null;
  readonly units: readonly string[];
  readonly plausible: readonly [number, number] | null;
  readonly source: string;
  readonly print: string;
  readonly medium: 'water' | 'air' | 'tank' | 'animals';
  readonly concentration: boolean;
  readonly scale: 'number' | 'word';
  /** False where a percent change has no meaning. */
  readonly trueZero: boolean;
}
export declare const measures: readonly MeasureEntry[];
export declare function measureByName(name: string): MeasureEntry | null;
export declare function nearestMeasure(name: string): string | null;
