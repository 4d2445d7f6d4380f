// What a command is, and how it speaks: results on stdout, progress and wrong-use words on stderr.
import type { ParseArgsConfig } from 'node:util';
import type { MessageArguments } from '../problems/problem.ts';
import { said, type CommandName, type CommandSentence, type Say } from '../words/commandLine.ts';
import type { Language } from '../words/languages.ts';

export type OptionTable = NonNullable<ParseArgsConfig['options']>;
export type OptionValues = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

/** Exit codes, everywhere the same. */
export const exit = { well: 0, problems: 1, wrongUse: 2 } as const;

/** A failure that the person is told of; its message is the English of `say`. */
export class Told extends Error {
  readonly say: Say;
  constructor(say: Say) {
    super(say('en'));
    this.say = say;
  }
}

/** Thrown for wrong use and unreadable input; the command line turns it into exit 2. */
export class WrongUse extends Told {}

export const wrongUse = (code: CommandSentence, args: MessageArguments = {}): WrongUse => new WrongUse(said(code, args));

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
  /** Of the sentences; always English beside `--json`. */
  readonly language: Language;
  /** A sentence of the command line in that language. */
  readonly say: (code: CommandSentence, args?: MessageArguments) => string;
}

export interface Command {
  /** Its usage and help stand under this name in the words of the command line. */
  readonly name: CommandName;
  /** Lines behind the help that follow from other tables. */
  readonly listed?: (language: Language) => readonly string[];
  readonly options: OptionTable;
  run(invocation: Invocation): Promise<number>;
}

/** Prints one JSON document. */
export function printJson(output: Output, value: unknown): void {
  output.result(JSON.stringify(value, null, 2));
}
