// The design check: what a reviewer of the plan would say before the first reading, each point with its reason and a mend.
import { designCodes } from '../problems/codes/design.ts';
import { problem, sortProblems, type Problem } from '../problems/problem.ts';
import type { FormulaContext } from '../formula/context.ts';
import { planDeviations, repeatFacts } from '../protocol/planSeal.ts';
import type { Protocol } from '../protocol/types.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { checkAwake, checkEqualiseSteps, checkStopRulesForAnimals } from './animals.ts';
import { checkCommonStep } from './commonStep.ts';
import { checkControl, checkEvents, checkLevel, checkOrder, checkReplicates, checkUndeclared } from './comparison.ts';
import type { Design } from './finding.ts';
import { checkAccuracy, checkCalibration, checkEffect, checkPressureLevel } from './instruments.ts';
import { checkBaseline, checkEnd, checkPhases, checkRate } from './schedule.ts';

const checks: readonly ((design: Design) => Problem[])[] = [
  checkControl, checkReplicates, checkUndeclared, checkLevel, checkEvents, checkOrder,
  checkBaseline, checkEnd, checkPhases, checkRate,
  checkEffect, checkAccuracy, checkCalibration, checkPressureLevel,
  checkEqualiseSteps, checkStopRulesForAnimals, checkAwake, checkSeal, checkRepeat, checkCommonStep,
];

/**
 * Problems of the plan as a design.
 * @param context the note's readings, for what only they can tell; without readings the plan alone is judged
 * @param text the note's whole text, from which the mends are made
 */
export function checkDesign(protocol: Protocol, context: FormulaContext, text: string): Problem[] {
  const design: Design = { protocol, context, text };
  return sortProblems(checks.flatMap((check) => check(design)));
}

/** What was changed after the plan was sealed. */
function checkSeal({ protocol }: Design): Problem[] {
  const deviations = planDeviations(protocol);
  if (!deviations) return [];
  const { sealedAt, parts, range } = deviations;
  const time = sealedAt === null ? '' : `${formatDate(sealedAt, protocol.zone)} ${formatClock(sealedAt, protocol.zone)}`;
  return [problem('plan-changed-after-seal', range, { parts, time })];
}

/** What a repeat changed besides its dates. */
function checkRepeat({ protocol }: Design): Problem[] {
  const repeat = repeatFacts(protocol);
  if (!repeat?.changed?.length || !protocol.repeats) return [];
  return [problem('repeat-changed', protocol.repeats.range, { name: repeat.name, parts: repeat.changed })];
}

/** True for a problem of the design check, which the plan card gathers. */
export const isDesignCode = (code: string): boolean => Object.hasOwn(designCodes, code) || code === 'equalise-failed';
