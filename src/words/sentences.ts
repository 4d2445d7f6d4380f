// How sentences are kept: one function a code, from arguments to one sentence.
import type { MessageArgument, MessageArguments } from '../problems/problem.ts';

export type Sentence = (args: MessageArguments) => string;
export type Sentences<Code extends string> = Readonly<Record<Code, Sentence>>;

/** An argument as text. A list is joined with commas. */
export function text(args: MessageArguments, name: string): string {
  const value: MessageArgument | undefined = args[name];
  return value === undefined ? '' : typeof value === 'object' ? value.join(', ') : String(value);
}
