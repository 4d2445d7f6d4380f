// The one Problem type: what is wrong, where in the note, how bad, and how to mend it.
// Sentences are not stored here: src/words turns {code, args} into the reader's language.
import { problemCodes, type ProblemCode } from './codes.ts';

/** A stretch of the note's text: UTF-16 offsets from the start of the text, end exclusive. */
export interface SourceRange { readonly start: number; readonly end: number }

export type Severity = 'error' | 'warning' | 'information' | 'hint';

export type MessageArgument = string | number | readonly string[];
export type MessageArguments = Readonly<Record<string, MessageArgument>>;

/** One replacement in the note's text. */
export interface TextEdit { readonly range: SourceRange; readonly newText: string }

/** A mend for a problem. `title` is put into words by src/words (`fixTitle`). */
export interface Fix {
  readonly title: string;
  readonly args: MessageArguments;
  readonly edits: readonly TextEdit[];
  /** The mend most people want; at most one a problem. */
  readonly preferred: boolean;
  /** True when the mend cannot change what a number or a sentence says, so that "fix all" may take it. */
  readonly safe: boolean;
}

export interface RelatedPlace { readonly range: SourceRange; readonly message: string; readonly args: MessageArguments }

export interface Problem {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly range: SourceRange;
  readonly args: MessageArguments;
  readonly fixes: readonly Fix[];
  readonly related: readonly RelatedPlace[];
}

/** Makes a problem; its severity comes from the table of codes. */
export function problem(
  code: ProblemCode, range: SourceRange, args: MessageArguments = {}, fixes: readonly Fix[] = [], related: readonly RelatedPlace[] = [],
): Problem {
  return { code, severity: problemCodes[code].severity, range, args, fixes, related };
}

/** Makes a fix. `title` names a sentence of src/words/<language>/fixes.ts. */
export function fix(title: string, args: MessageArguments, edits: readonly TextEdit[], options: { preferred?: boolean; safe?: boolean } = {}): Fix {
  return { title, args, edits, preferred: options.preferred ?? false, safe: options.safe ?? false };
}

/** Two problems are the same when code, range and arguments agree. */
function sameProblem(a: Problem, b: Problem): boolean {
  return a.code === b.code && a.range.start === b.range.start && a.range.end === b.range.end
    && JSON.stringify(a.args) === JSON.stringify(b.args);
}

/** Sorts by place, then by code; removes doubles. */
export function sortProblems(problems: readonly Problem[]): Problem[] {
  const sorted = [...problems].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end
    || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0));
  return sorted.filter((each, index) => !sorted.slice(Math.max(0, index - 8), index).some((other) => sameProblem(each, other)));
}
