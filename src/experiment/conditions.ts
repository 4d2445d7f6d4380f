// Holds the plan's own conditions against the readings: equalisation steps up to lights-off, stop rules at every reading.
import { languageOf } from '../words/languages.ts';
import { planWords } from '../words/page.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { mappedText, toDocumentRange } from '../note/mappedText.ts';
import type { MappedText } from '../note/mappedText.ts';
import type { PlanEvent, Protocol, Window } from '../protocol/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate, evaluateAtEachReading } from '../formula/evaluate.ts';
import { parseFormula } from '../formula/parse.ts';
import { isOfNumbersAlone, partOf } from '../claims/formulaShape.ts';
import { plainWords } from '../formula/plainWords.ts';
import { showValue } from '../formula/show.ts';
import { formatClock, formatDate, formatInstant } from '../time/text.ts';
import type { Instant } from '../time/instant.ts';
import type { EqualiseCheck, Note, StopRuleCheck } from './types.ts';

/**
 * The time in which the tanks have to be level: from the start to lights-off; where no lights-off is planned, to the first
 * event (that is where the treatment sets in); with neither, the first reading alone.
 */
export function levelStretch(protocol: Protocol, context: FormulaContext): LevelStretch | null {
  const { schedule } = protocol;
  if (!schedule) return null;
  const from = schedule.start;
  const lightOff = schedule.lightOff.find((instant) => instant >= from);
  if (lightOff !== undefined) return { window: { from, to: lightOff }, formula: 'start..light-off', until: 'light-off' };
  const event = protocol.events.filter((each) => each.at >= from).sort((a, b) => a.at - b.at)[0];
  if (event) {
    return { window: { from, to: event.at }, formula: `start..${event.id ?? formatInstant(event.at, protocol.zone)}`, until: event };
  }
  const reading = context.dataset.times.find((time) => time >= from);
  return reading === undefined ? null
    : { window: { from, to: reading }, formula: `start..${formatInstant(reading, protocol.zone)}`, until: 'first-reading' };
}

/** The time in which the tanks have to be level: as instants, as a formula, and what ends it. */
export interface LevelStretch { readonly window: Window; readonly formula: string; readonly until: 'light-off' | 'first-reading' | PlanEvent }

/** "22:00", or with its date where the run has more than one night. */
function sayTime(instant: number, protocol: Protocol): string {
  const { schedule } = protocol;
  const long = schedule?.end != null && schedule.end - schedule.start > 24 * 3_600_000;
  const clock = formatClock(instant, protocol.zone);
  return long ? `${formatDate(instant, protocol.zone)} ${clock}` : clock;
}

/** For a condition of the shape `x <= limit` (or `<`, `>=`, `>`): the figure of x that comes nearest to failing, as text. */
function worstFigure(accept: MappedText, context: FormulaContext, stretch: string): string | null {
  const { expression } = parseFormula(accept.text);
  if (expression.kind !== 'binary' || !['<', '<=', '>', '>='].includes(expression.operator)) return null;
  const summary = expression.operator.startsWith('<') ? 'max' : 'min';
  const left = accept.text.slice(expression.left.range.start, expression.left.range.end);
  const { value } = evaluate(mappedText(`${summary}(${left}, ${stretch})`), context);
  return value === null ? null : showValue(value, context);
}

export function checkEqualisation(protocol: Protocol, context: FormulaContext): { checks: EqualiseCheck[]; problems: Problem[] } {
  const checks: EqualiseCheck[] = [];
  const problems: Problem[] = [];
  const stretch = levelStretch(protocol, context);
  protocol.equalise.forEach((step, index) => {
    if (!step.accept || !stretch) {
      checks.push({ step: index, holds: null, checkedAt: [], worst: null });
      return;
    }
    const { truths, problems: found } = evaluateAtEachReading(step.accept, context, stretch.window, {});
    problems.push(...found, ...conditionOfNumbers(step.accept, context));
    const failed = truths.filter((each) => !each.truth);
    checks.push({
      step: index,
      holds: truths.length === 0 ? null : failed.length === 0,
      checkedAt: truths.map((each) => each.instant),
      worst: truths.length === 0 ? null : worstFigure(step.accept, context, stretch.formula),
    });
    if (failed.length > 0) {
      problems.push(problem('equalise-failed', toDocumentRange(step.accept, { start: 0, end: step.accept.text.length }), {
        step: step.step, condition: step.accept.text.trim(), times: failed.slice(0, 4).map((each) => sayTime(each.instant, protocol)),
      }));
    }
  });
  return { checks, problems };
}

/** A condition of the plan that no reading can change. */
function conditionOfNumbers(condition: MappedText, context: FormulaContext): Problem[] {
  return isOfNumbersAlone(partOf(condition, context), context)
    ? [problem('formula-of-numbers', toDocumentRange(condition, { start: 0, end: condition.text.length }), { formula: condition.text.trim() })] : [];
}

export function checkStopRules(protocol: Protocol, context: FormulaContext): { checks: StopRuleCheck[]; problems: Problem[] } {
  const checks: StopRuleCheck[] = [];
  const problems: Problem[] = [];
  protocol.stopRules.forEach((rule, index) => {
    if (!rule.when) {
      checks.push({ rule: index, evaluation: null, crossedAt: [] });
      return;
    }
    const { truths, problems: found } = evaluateAtEachReading(rule.when, context, null, { includeLeftOut: true });
    problems.push(...found, ...conditionOfNumbers(rule.when, context));
    const crossedAt = truths.filter((each) => each.truth).map((each) => each.instant);
    checks.push({ rule: index, evaluation: { value: { type: 'truth', truth: crossedAt.length > 0 }, problems: found, working: [] }, crossedAt });
    if (crossedAt.length === 0) return;
    const place = toDocumentRange(rule.when, { start: 0, end: rule.when.text.length });
    const common = { condition: rule.when.text.trim(), time: sayTime(crossedAt[0]!, protocol) };
    problems.push(rule.outcome && rule.outcome.value.trim() !== ''
      ? problem('stop-rule-written-up', place, { ...common, outcome: rule.outcome.value })
      : problem('stop-rule-crossed', place, { ...common, do: rule.do ?? endTheRun(protocol) }));
  });
  return { checks, problems };
}

/** What a rule asks for that says nothing of it. */
const endTheRun = (protocol: Pick<Protocol, 'language'>): string => planWords(languageOf(protocol.language)).stop.endTheRun;

/** A stop rule in words: the condition that holds, and what the plan says to do. */
export interface CrossedRule { readonly condition: string; readonly do: string }

/** The stop rules that the readings of one moment cross. Whoever logs a reading shows them before anything else. */
export function rulesCrossedAt(note: Pick<Note, 'protocol' | 'stopRules' | 'context'>, time: Instant): CrossedRule[] {
  return note.stopRules.flatMap(({ rule, crossedAt }): CrossedRule[] => {
    const stated = note.protocol?.stopRules[rule];
    if (!stated?.when || !crossedAt.includes(time)) return [];
    return [{ condition: plainWords(stated.when.text.trim(), note.context), do: stated.do ?? endTheRun(note.protocol!) }];
  });
}
