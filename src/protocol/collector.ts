// Gathers the problems of one block. Places arrive as offsets in the note's text.
import type { ProblemCode } from '../problems/codes.ts';
import { fix, problem, type Fix, type MessageArguments, type Problem, type RelatedPlace, type SourceRange } from '../problems/problem.ts';

export class Collector {
  readonly problems: Problem[] = [];

  add(code: ProblemCode, range: SourceRange, args: MessageArguments = {}, fixes: readonly Fix[] = [], related: readonly RelatedPlace[] = []): void {
    this.problems.push(problem(code, range, args, fixes, related));
  }
}

/** The mend that puts `newText` in the place of a range. */
export function replaceWith(range: SourceRange, newText: string, options: { safe?: boolean } = {}): Fix {
  return fix('replace-with', { text: newText }, [{ range, newText }], { preferred: true, safe: options.safe ?? false });
}

/** The text as a YAML scalar that is read back letter by letter. */
export function quoted(text: string): string {
  return /["\\]/.test(text) ? `'${text.replace(/'/g, "''")}'` : `"${text}"`;
}

/** A long text shortened for a sentence. */
export function shorten(text: string, length = 60): string {
  const flat = text.replace(/\s+/g, ' ').trim();
  return flat.length <= length ? flat : `${flat.slice(0, length - 1).trimEnd()}…`;
}
