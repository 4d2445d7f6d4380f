// The problems that the author accepts by name in the protocol: kept apart, so that the post can say so.
import { fix, problem, type Problem } from '../problems/problem.ts';
import { problemCodes, type ProblemCode } from '../problems/codes.ts';
import { nearestName } from '../problems/nearest.ts';
import type { Protocol } from '../protocol/types.ts';

/** Splits a note's problems into those that stand and those the author accepts. Errors are never accepted. */
export function separateAccepted(problems: readonly Problem[], protocol: Protocol | null): { standing: Problem[]; accepted: Problem[] } {
  const standing: Problem[] = [];
  const accepted: Problem[] = [];
  const codes = new Set<string>();
  for (const { value: code, range } of protocol?.accepted ?? []) {
    const entry = problemCodes[code as ProblemCode];
    if (!entry) {
      const nearest = nearestName(code, Object.keys(problemCodes));
      standing.push(problem('accepted-code-unknown', range, { code, nearest: nearest ?? '' },
        nearest ? [fix('replace-with', { text: nearest }, [{ range, newText: nearest }], { preferred: true })] : []));
    } else if (entry.severity === 'error') {
      standing.push(problem('accepted-cannot-be', range, { code }));
    } else codes.add(code);
  }
  for (const each of problems) (codes.has(each.code) ? accepted : standing).push(each);
  return { standing, accepted };
}
