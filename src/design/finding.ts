// How the design check raises a problem: with its own mends, and with the one that lets the plan stand as it is.
import type { ProblemCode } from '../problems/codes.ts';
import { fix, problem, type Fix, type MessageArguments, type Problem, type RelatedPlace, type SourceRange } from '../problems/problem.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { Protocol, Schedule } from '../protocol/types.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { day, type Duration, type Instant } from '../time/instant.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { formatValue } from '../quantities/format.ts';
import type { Unit } from '../quantities/types.ts';
import { numberValue } from '../quantities/value.ts';
import { languageOf } from '../words/languages.ts';
import { unitWords } from '../words/units.ts';
import { addToList } from './planEdits.ts';

/** What the check looks at: the plan, its readings, and the note's text for the mends. */
export interface Design { readonly protocol: Protocol; readonly context: FormulaContext; readonly text: string }

/** A problem of the design. The author may accept it by name: a plan can be bound by what is there. */
export function finding(design: Design, code: ProblemCode, range: SourceRange, args: MessageArguments, fixes: readonly Fix[] = [], related: readonly RelatedPlace[] = []): Problem {
  const accept = addToList(design.text, design.protocol, 'accepted', design.protocol.accepted, code);
  return problem(code, range, args, [...fixes.filter((each) => each.edits.length > 0), ...(accept.length > 0 ? [fix('accept-problem', { code }, accept)] : [])], related);
}

/** `22:00`, or with its date where the run has more than one day. */
export function sayTime(instant: Instant, protocol: Protocol): string {
  const { schedule, zone } = protocol;
  const long = schedule?.end != null && schedule.end - schedule.start > day;
  return long ? `${formatDate(instant, zone)} ${formatClock(instant, zone)}` : formatClock(instant, zone);
}

/** The last planned moment: the end, else the last reading. */
export const lastMoment = (schedule: Schedule): Instant => schedule.end ?? schedule.slots.at(-1) ?? schedule.start;

/** The closest that planned readings stand to each other; null where none are planned. */
export function finestInterval(schedule: Schedule): Duration | null {
  return schedule.sampling.length === 0 ? null : Math.min(...schedule.sampling.map((each) => each.every));
}

/** Up to when the tanks are to be alike: the first lights-off, else the first event, after the start. */
export function baselineEnd(protocol: Protocol): Instant | null {
  const { schedule } = protocol;
  if (!schedule) return null;
  const lightOff = schedule.lightOff.find((instant) => instant > schedule.start);
  return lightOff ?? protocol.events.map((event) => event.at).filter((at) => at > schedule.start).sort((a, b) => a - b)[0] ?? null;
}

/** An amount with two significant digits, as a sentence says it. */
export const shown = (amount: number, unit: Unit, { language }: Pick<Protocol, 'language'>): string =>
  unitWords(formatValue(numberValue(Number(amount.toPrecision(2)), unit), { decimalMark: decimalMarkOf(language) }), languageOf(language));
