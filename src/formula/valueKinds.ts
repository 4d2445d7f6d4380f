// What a value is, in a keeper's words, for problems and help.
import type { FormulaValue } from './types.ts';

/** `a series of readings`, `a time`, `a number in mg/L`. */
export function valueKind(value: FormulaValue): string {
  switch (value.type) {
    case 'number': return value.unit.symbol === '1' ? 'a plain number' : `a number in ${value.unit.symbol}`;
    case 'instant': return 'a time';
    case 'event': return 'an event';
    case 'duration': return 'a length of time';
    case 'truth': return 'a condition';
    case 'window': return value.phase === undefined ? 'a stretch of time' : `the phase ${value.phase}`;
    case 'series': return value.content === 'truth' ? 'a condition at every reading' : value.content === 'word' ? 'a series of words' : 'a series of readings';
    case 'word': return `the word “${value.word}”`;
    case 'tank': return `the tank ${value.id}`;
    case 'quantity': return `the quantity ${value.id}`;
  }
}
