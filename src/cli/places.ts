// Offsets in a text to lines and columns as people and compilers count them.
import type { Problem, Severity, SourceRange } from '../problems/problem.ts';
import { problemSentence, type Language } from '../words/words.ts';

/** Lines and columns from 1, columns in UTF-16 units, end exclusive. */
export interface Place { readonly line: number; readonly column: number; readonly endLine: number; readonly endColumn: number }

/** Start offsets of all lines; `\n`, `\r\n` and a lone `\r` end a line. */
export function lineStarts(text: string): number[] {
  const starts = [0];
  for (let index = 0; index < text.length; index += 1) {
    const code = text.charCodeAt(index);
    if (code === 13 && text.charCodeAt(index + 1) === 10) index += 1;
    if (code === 10 || code === 13) starts.push(index + 1);
  }
  return starts;
}

export function placeOf(range: SourceRange, starts: readonly number[]): Place {
  const [line, column] = lineAndColumn(range.start, starts);
  const [endLine, endColumn] = lineAndColumn(range.end, starts);
  return { line, column, endLine, endColumn };
}

function lineAndColumn(offset: number, starts: readonly number[]): [number, number] {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= offset) low = middle; else high = middle - 1;
  }
  return [low + 1, offset - starts[low]! + 1];
}

/** A problem as `--json` prints it. */
export interface ProblemJson extends Place { readonly code: string; readonly severity: Severity; readonly message: string }

export function problemJson(problem: Problem, starts: readonly number[], language: Language = 'en'): ProblemJson {
  return { code: problem.code, severity: problem.severity, ...placeOf(problem.range, starts), message: problemSentence(problem, language) };
}

const colour: Readonly<Record<Severity, string>> = { error: '31', warning: '33', information: '36', hint: '2' };

/** `file:line:column: severity code: sentence`. */
export function problemLine(file: string, problem: ProblemJson, colours: boolean): string {
  const severity = colours ? `\u001b[${colour[problem.severity]}m${problem.severity}\u001b[0m` : problem.severity;
  return `${file}:${problem.line}:${problem.column}: ${severity} ${problem.code}: ${problem.message}`;
}
