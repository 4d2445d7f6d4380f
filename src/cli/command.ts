// What a command is, and how it speaks: results on stdout, progress and wrong-use words on stderr.
import type { ParseArgsConfig } from 'node:util';

export type OptionTable = NonNullable<ParseArgsConfig['options']>;
export type OptionValues = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

/** Exit codes, everywhere the same. */
export const exit = { well: 0, problems: 1, wrongUse: 2 } as const;

/** Thrown for wrong use and unreadable input; the command line turns it into exit 2. */
export class WrongUse extends Error {}

/** Where a command writes. One a run, so that tests can look at it. */
export interface Output {
  result(text: string): void;
  progress(text: string): void;
  /** True when stdout is a terminal that shows colours. */
  readonly colours: boolean;
}

export interface Invocation {
  readonly positionals: readonly string[];
  readonly options: OptionValues;
  readonly json: boolean;
  readonly output: Output;
  readonly version: string;
}

export interface Command {
  readonly name: string;
  /** What stands after the name in the usage line. */
  readonly usage: string;
  readonly summary: string;
  /** Longer help, a line an entry. */
  readonly help: readonly string[];
  readonly options: OptionTable;
  run(invocation: Invocation): Promise<number>;
}

/** Prints one JSON document. */
export function printJson(output: Output, value: unknown): void {
  output.result(JSON.stringify(value, null, 2));
}
