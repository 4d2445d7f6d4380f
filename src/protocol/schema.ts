// The one schema of the plan: every key with type, description and example. The reader validates from it;
// completion, hover and the reference page are made from it.

export type SchemaType =
  | 'text' | 'number' | 'quantity' | 'size' | 'duration' | 'instant' | 'window' | 'sampling' | 'choice' | 'yes-no'
  | 'formula' | 'unit' | 'zone' | 'measure' | 'language' | 'tank' | 'quantity-id' | 'tank-key' | 'problem-code' | 'seal'
  | 'map' | 'named';

/** One key of the plan. */
export interface SchemaKey {
  /** As written; for the entries of a `named` map the placeholder of the name, e.g. `TANK`. */
  readonly key: string;
  /** What the value is. `map`: fixed `keys`. `named`: names of the author's own, each holding `entry`. */
  readonly type: SchemaType;
  /** `many`: a list of such values. `one-or-many`: a single value stands for a list of one. */
  readonly list?: 'many' | 'one-or-many';
  readonly description: string;
  /** As it would be written behind the key. */
  readonly example: string;
  readonly required?: boolean;
  /** For `choice` and `yes-no`: the words allowed. */
  readonly values?: readonly string[];
  /** For `map`. */
  readonly keys?: readonly SchemaKey[];
  /** For `named`. */
  readonly entry?: SchemaKey;
}

export const protocolSchema: SchemaKey = { key: 'protocol', type: 'map', description: '', example: '', keys: [] };
