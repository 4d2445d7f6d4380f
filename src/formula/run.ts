// One evaluation under way: where it stands in the note, the problems found and the working shown so far.
import { fix, problem, type Fix, type MessageArguments, type Problem, type SourceRange } from '../problems/problem.ts';
import type { ProblemCode } from '../problems/codes.ts';
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { day, type Instant } from '../time/instant.ts';
import { utc } from '../time/zone.ts';
import type { Zone } from '../time/instant.ts';
import type { FormulaContext } from './context.ts';
import type { Evaluation, WorkingStep } from './types.ts';

export type Remark = WorkingStep['remarks'][number];

export class Run {
  readonly problems: Problem[] = [];
  readonly working: WorkingStep[] = [];
  readonly context: FormulaContext;
  readonly formula: MappedText;
  /** Stop rules look at left-out readings too. */
  readonly includeLeftOut: boolean;

  /** The evaluation of a named result; null when there is none. */
  readonly evaluateResult: (name: string) => Evaluation | null;

  constructor(context: FormulaContext, formula: MappedText, evaluateResult: (name: string) => Evaluation | null, includeLeftOut = false) {
    this.context = context;
    this.evaluateResult = evaluateResult;
    this.formula = formula;
    this.includeLeftOut = includeLeftOut;
  }

  get zone(): Zone { return this.context.protocol?.zone ?? utc; }

  /** Raises a problem at a place of the formula. Gives null, so that `return run.fail(…)` ends a computation. */
  fail(code: ProblemCode, range: SourceRange, args: MessageArguments = {}, fixes: readonly Fix[] = []): null {
    const found = problem(code, toDocumentRange(this.formula, range), args, fixes);
    if (!this.problems.some((other) => other.code === code && other.range.start === found.range.start && other.range.end === found.range.end)) this.problems.push(found);
    return null;
  }

  /** A fix that writes other text at a place of the formula. */
  replace(range: SourceRange, text: string, options: { preferred?: boolean; safe?: boolean } = {}): Fix {
    return fix('replace-with', { text }, [{ range: toDocumentRange(this.formula, range), newText: text }], options);
  }

  textOf(range: SourceRange): string { return this.formula.text.slice(range.start, range.end); }

  get failed(): boolean { return this.problems.some((each) => each.severity === 'error'); }

  /** A time as the note's author would write it: `22:30`, with its date where the run is longer than a day. */
  time(instant: Instant): string {
    const clock = formatClock(instant, this.zone);
    const run = runOf(this.context);
    return run && run.to - run.from <= day && instant >= run.from - day / 2 && instant <= run.to + day / 2 ? clock : `${formatDate(instant, this.zone)} ${clock}`;
  }

  /** A time that a formula understands in any run. */
  exactTime(instant: Instant): string { return `${formatDate(instant, this.zone)} ${formatClock(instant, this.zone)}`; }
}

/** From the schedule's start to its end, or to the last planned or taken reading; of the readings where nothing is planned. */
export function runOf(context: FormulaContext): { from: Instant; to: Instant } | null {
  const { protocol, dataset } = context;
  const first = dataset.times[0];
  const last = dataset.times.at(-1);
  const schedule = protocol?.schedule;
  if (!schedule) return first === undefined || last === undefined ? null : { from: first, to: last };
  const to = schedule.end ?? Math.max(schedule.slots.at(-1) ?? schedule.start, last ?? schedule.start);
  return { from: schedule.start, to };
}
