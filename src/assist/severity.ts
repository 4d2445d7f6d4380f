// How bad a problem counts in the editor, where a setting says otherwise than the table of codes. What a post needs is judged
// by the table alone: a mismatch that is switched off here still keeps a note from being published.
import { problemCodes } from '../problems/codes.ts';
import type { Problem, Severity } from '../problems/problem.ts';

export const severityLevels = ['error', 'warning', 'information', 'hint', 'off'] as const;
export type SeverityLevel = (typeof severityLevels)[number];

export interface SeverityChoices {
  readonly levels: ReadonlyMap<string, SeverityLevel>;
  /** Entries that name no code or no level, as `code: value`. */
  readonly unknown: readonly string[];
}

/** Reads the setting: an object from code to level. Anything else counts as empty. */
export function readSeverities(value: unknown): SeverityChoices {
  const levels = new Map<string, SeverityLevel>();
  const unknown: string[] = [];
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return { levels, unknown: value === null || value === undefined ? [] : [String(value)] };
  for (const [code, level] of Object.entries(value)) {
    if (Object.hasOwn(problemCodes, code) && isLevel(level)) levels.set(code, level);
    else unknown.push(`${code}: ${String(level)}`);
  }
  return { levels, unknown };
}

const isLevel = (value: unknown): value is SeverityLevel => (severityLevels as readonly unknown[]).includes(value);

/** The problems as the author wants to see them. The same list where nothing was chosen. */
export function withSeverities(problems: readonly Problem[], { levels }: SeverityChoices): readonly Problem[] {
  if (levels.size === 0) return problems;
  return problems.flatMap((problem) => {
    const level = levels.get(problem.code);
    if (level === undefined) return [problem];
    return level === 'off' ? [] : [{ ...problem, severity: level satisfies Severity }];
  });
}
