// The times that a formula names: clock times, named moments, the ends and lengths of windows. A claim's words may repeat them.
import type { MappedText } from '../note/mappedText.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import { convert, parseUnit } from '../quantities/units.ts';
import { hour, type Duration, type Instant, type Zone } from '../time/instant.ts';
import { everyPart, partOf, textOf, type Part } from './formulaShape.ts';
import { holdsClock } from './instants.ts';
import type { AnyMention } from './mentions.ts';

export interface FormulaTimes { readonly instants: readonly Instant[]; readonly lengths: readonly Duration[] }

export function timesIn(formula: MappedText, context: FormulaContext): FormulaTimes {
  const instants: Instant[] = [];
  const lengths: Duration[] = [];
  for (const part of everyPart(partOf(formula, context), context).filter(mayBeTime)) {
    const { value } = evaluate(textOf(part), context);
    if (value?.type === 'instant' || value?.type === 'event') instants.push(value.instant);
    else if (value?.type === 'duration') lengths.push(value.duration);
    else if (value?.type === 'window') { instants.push(value.from, value.to); lengths.push(value.to - value.from); }
  }
  return { instants, lengths };
}

/** Parts that cost little to evaluate: no call does but those that give a time. */
function mayBeTime({ expression }: Part): boolean {
  switch (expression.kind) {
    case 'instant': case 'duration': return true;
    case 'reference': return expression.parts.length === 1;
    case 'binary': return expression.operator === '..' || expression.operator === '+' || expression.operator === '-';
    case 'call': return /^(?:time-|first-|settled|turning)/u.test(expression.name);
    default: return false;
  }
}

/** True when a clock time or a length of time in words is one that the formula names. */
export function namesTime({ instants, lengths }: FormulaTimes, mention: AnyMention, zone: Zone): boolean {
  if (mention.kind === 'clock') return instants.some((instant) => holdsClock(mention, instant, zone));
  if (mention.kind === 'duration') return lengths.some((length) => Math.abs(length - mention.duration) <= mention.step / 2);
  const hours = parseUnit('h');
  if (mention.kind !== 'number' || mention.unit === null || hours === null) return false;
  const step = convert(10 ** -mention.decimals, mention.unit, hours) * hour;
  const length = convert(mention.value, mention.unit, hours) * hour;
  return lengths.some((each) => Math.abs(each - length) <= step / 2);
}
