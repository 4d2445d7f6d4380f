// Units and values with uncertainty: the types that every computing room shares.

/** Exponents of the base dimensions. */
export interface Dimension {
  readonly mass: number; readonly length: number; readonly time: number; readonly temperature: number;
  readonly amount: number; readonly current: number; readonly luminosity: number;
}

/**
 * What keeps apart quantities of one dimension: a temperature from a temperature difference, a percentage from
 * percentage points, nitrate as the ion from nitrate as nitrogen. Two units convert only within one kind.
 * `plain` is an ordinary ratio-scale quantity of its dimension.
 */
export type Kind =
  | 'plain' | 'temperature' | 'temperature-difference' | 'percentage' | 'percentage-points' | 'ph' | 'ph-difference'
  | 'parts-per-million' | 'turbidity' | 'salinity' | 'specific-gravity' | 'alkalinity' | 'hardness' | 'as-nitrogen' | 'as-phosphorus' | 'as-calcium-carbonate';

/** What a concentration is of, with what turns its mass into an amount. */
export interface Substance {
  /** As the closed list of quantities names it. */
  readonly name: string;
  /** g/mol of what a unit of this kind counts: of nitrate 62.0 in mg/L, 14.0 in mg/L-N. Absent where it is not known. */
  readonly molarMass: Readonly<Partial<Record<Kind, number>>>;
  /** g in a litre, or mg in a millilitre, of the gas at 0 °C and 1 atm, for gases whose volume is a measure of them. */
  readonly gasDensity?: number;
}

export interface Unit {
  /** As the note writes it: `mg/L`, `degC`, `%/h`, `mg/L-N`. */
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly kind: Kind;
  /** value in base units = value * factor + offset. Offset is 0 for all but temperature points. */
  readonly factor: number;
  readonly offset: number;
  /** UCUM code for publishing; for what UCUM has no unit a code with an annotation, `(10.mg{CaO}/L)`, `{NTU}`. */
  readonly ucum: string;
  /** As a reader sees it: `°C`, `µmol/L`. */
  readonly print: string;
  /** What a measured or computed value in this unit is of, where that is one known substance. */
  readonly substance?: Substance;
}

/**
 * Signed first-order contributions to a value's standard uncertainty, by source, in the value's own unit.
 * A source that two values share (one instrument's systematic part) adds with its sign and may cancel;
 * different sources add in squares. Keys: `instrument:<tank.quantity@name or shared instrument>`,
 * `resolution:<reading>`, `repeats:<reading>`. Source: JCGM 100:2008 (GUM), clause 5.
 */
export type Contributions = ReadonlyMap<string, number>;

export interface NumberValue {
  readonly type: 'number';
  /** In `unit`, unrounded, finite. */
  readonly value: number;
  readonly unit: Unit;
  /** null: no accuracy was stated for something that went in. Never 0 for "unknown". */
  readonly contributions: Contributions | null;
}
