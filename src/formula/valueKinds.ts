// What a value is, as a phrase for problems.
import type { Phrase } from '../words/phrases.ts';
import type { FormulaValue } from './types.ts';

/** A series of readings, a time, a number in mg/L. */
export function valueKind(value: FormulaValue): Phrase {
  switch (value.type) {
    case 'number': return value.unit.symbol === '1' ? ['plain-number'] : ['number-in', value.unit.symbol];
    case 'instant': case 'event': case 'duration': case 'truth': return [value.type];
    case 'window': return value.phase === undefined ? ['window'] : ['phase', value.phase];
    case 'series': return value.content === 'truth' ? ['truths'] : value.content === 'word' ? ['words'] : ['readings'];
    case 'word': return ['word', value.word];
    case 'tank': case 'quantity': return [value.type, value.id];
  }
}
