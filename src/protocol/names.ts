// Names that an author gives: how they may look, which are reserved, and that none is used twice across kinds.
import type { SourceRange } from '../problems/problem.ts';
import { replaceWith, shorten, type Collector } from './collector.ts';

/** Words of the language. Never the name of a tank, group, event or phase. */
export const reservedWords: readonly string[] = [
  'room', 'treatment', 'control', 'start', 'end', 'light-off', 'light-on', 'sunrise', 'sunset', 'dawn', 'dusk',
  'baseline', 'dark', 'recovery', 'and', 'or', 'not', 'in', 'as', 'if', 'stated', 'now',
];

/** Functions of the formula language. A test holds that the catalogue has no name that is missing here. */
export const functionNames: readonly string[] = [
  'at', 'interpolate', 'first', 'last', 'count', 'missing',
  'min', 'max', 'mean', 'median', 'sd', 'range', 'time-of-min', 'time-of-max', 'all', 'any',
  'change', 'rise', 'fall', 'percent-change', 'percent-rise', 'percent-fall', 'rate', 'slope', 'robust-slope', 'steepest-fall', 'steepest-rise',
  'time-of-steepest-fall', 'time-of-steepest-rise', 'steps', 'percent-steps',
  'first-below', 'first-above', 'hours-below', 'hours-above', 'settled', 'turning-point',
  'difference', 'percent-difference', 'contrast', 'permutation-p', 'gap-explained', 'gap-left', 'resolved',
  'solubility', 'saturation', 'deficit', 'respiration', 'reaeration', 'balance-point', 'time-to', 'predicted-min', 'predicted-hours-below',
  'un-ionised-ammonia', 'carbon-dioxide', 'salinity',
  'volume', 'length', 'width', 'height', 'duration',
  'abs', 'sqrt', 'ln', 'round', 'standard-pressure',
];

/** True for the language's own words, for functions, and for numbered names of nights (`dark-2`, `light-off-1`). */
export function isReserved(name: string): boolean {
  return reservedWords.includes(name) || functionNames.includes(name)
    || /^(?:light-off|light-on|sunrise|sunset|dawn|dusk|dark|recovery)-\d+$/.test(name);
}

/** A letter, then letters, digits and hyphens. */
export function isName(text: string): boolean {
  return /^\p{L}[\p{L}\p{N}-]*$/u.test(text);
}

/** The name with what may not stand in it replaced by hyphens; null when nothing is left. */
function tidyName(text: string): string | null {
  const tidy = text.trim().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^[^\p{L}]+|-+$/gu, '');
  return tidy === '' ? null : tidy;
}

export type NameKind = 'tank' | 'group' | 'quantity' | 'event' | 'phase';

export class NameBook {
  private readonly names = new Map<string, { kind: NameKind; range: SourceRange }>();
  private readonly collector: Collector;

  constructor(collector: Collector) { this.collector = collector; }

  /** Checks and notes a name; false when it cannot be used. Names of quantities may equal functions and words. */
  add(name: string, kind: NameKind, range: SourceRange): boolean {
    if (!isName(kind === 'quantity' ? name.replace('@', '-') : name)) {
      const tidy = tidyName(name);
      this.collector.add('bad-name', range, { name: shorten(name, 40), kind }, tidy ? [replaceWith(range, tidy)] : []);
      return false;
    }
    if (kind !== 'quantity' && isReserved(name)) {
      this.collector.add('reserved-name', range, { name, kind }, [replaceWith(range, `${name}-${kind === 'tank' ? 'tank' : kind === 'group' ? 'tanks' : kind === 'event' ? 'event' : 'phase'}`)]);
      return false;
    }
    const before = this.names.get(name);
    if (before && !(kind === 'group' && before.kind === 'group')) {
      this.collector.add('name-used-twice', range, { name, kind, other: before.kind }, [], [{ range: before.range, message: 'first-used-here', args: { name } }]);
      return false;
    }
    if (!before) this.names.set(name, { kind, range });
    return true;
  }
}
