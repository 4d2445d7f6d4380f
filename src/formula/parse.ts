// Text of a formula to its syntax tree: recursive descent with recovery. Never throws; every error has its place.
// The grammar is the one of the reference page "Formulas".
import type { MessageArguments, SourceRange } from '../problems/problem.ts';
import type { ProblemCode } from '../problems/codes.ts';
import type { Phrase } from '../words/phrases.ts';
import type { Expression } from './types.ts';
import { isSpace, readDurationAt, readInstantAt, readName, readNumber, readUnit, skipSpace } from './scan.ts';

export interface FormulaError {
  readonly code: ProblemCode;
  /** Relative to the formula's text. */
  readonly range: SourceRange;
  readonly args: MessageArguments;
  /** Text that would mend the place, or null. */
  readonly replacement: string | null;
}

export interface ParsedFormula { readonly expression: Expression; readonly errors: readonly FormulaError[] }

type Call = Extract<Expression, { kind: 'call' }>;
type BinaryOperator = Extract<Expression, { kind: 'binary' }>['operator'];

const keywords = new Set(['and', 'or', 'not', 'in', 'as', 'if']);
const longestFormula = 4000;
const deepest = 120;

const comparisons: readonly (readonly [string, BinaryOperator])[] = [
  ['<=', '<='], ['>=', '>='], ['==', '=='], ['≤', '<='], ['≥', '>='], ['<', '<'], ['>', '>'],
];

/** Reads a formula. The tree has `error` nodes where something could not be read; `errors` says what and where. */
export function parseFormula(text: string): ParsedFormula {
  return new FormulaParser(text).read();
}

class FormulaParser {
  private at = 0;
  private depth = 0;
  private readonly errors: FormulaError[] = [];
  private readonly text: string;

  constructor(text: string) { this.text = text; }

  read(): ParsedFormula {
    const { text } = this;
    const whole = { start: 0, end: text.length };
    if (text.length > longestFormula) {
      this.fail('formula-too-long', whole, { limit: longestFormula });
      return { expression: { kind: 'error', range: whole }, errors: this.errors };
    }
    this.space();
    if (this.at >= text.length) {
      this.fail('formula-empty', whole, {});
      return { expression: { kind: 'error', range: whole }, errors: this.errors };
    }
    const expression = this.formula();
    this.space();
    if (this.at < text.length && this.errors.length === 0) this.unexpected(['expected-end'], this.at, text.trimEnd().length);
    return { expression, errors: this.errors };
  }

  private formula(): Expression {
    if (this.depth >= deepest) return this.tooDeep();
    this.depth += 1;
    let left = this.conjunction();
    for (;;) {
      const word = this.keyword('or');
      if (!word) break;
      left = this.binary('or', word, left, this.conjunction());
    }
    this.depth -= 1;
    return left;
  }

  private conjunction(): Expression {
    let left = this.negation();
    for (;;) {
      const word = this.keyword('and');
      if (!word) return left;
      left = this.binary('and', word, left, this.negation());
    }
  }

  private negation(): Expression {
    const word = this.keyword('not');
    if (!word) return this.comparison();
    if (this.depth >= deepest) return this.tooDeep();
    this.depth += 1;
    const operand = this.negation();
    this.depth -= 1;
    return { kind: 'unary', operator: 'not', operand, range: { start: word.start, end: operand.range.end } };
  }

  private comparison(): Expression {
    const left = this.conversion();
    const first = this.comparisonOperator();
    if (!first) return left;
    let result = this.binary(first.operator, first.range, left, this.conversion());
    for (let more = this.comparisonOperator(); more; more = this.comparisonOperator()) {
      this.fail('formula-chained', more.range, {});
      result = this.binary(more.operator, more.range, result, this.conversion());
    }
    return result;
  }

  private comparisonOperator(): { operator: BinaryOperator; range: SourceRange } | null {
    this.space();
    const start = this.at;
    for (const [written, operator] of comparisons) {
      if (this.text.startsWith(written, start)) {
        this.at += written.length;
        return { operator, range: { start, end: this.at } };
      }
    }
    if (this.text[start] === '=' || this.text[start] === '≠' || this.text.startsWith('!=', start)) {
      const end = start + (this.text[start] === '!' ? 2 : 1);
      const range = { start, end };
      if (this.text[start] === '=') this.fail('formula-syntax', range, { expected: ['expected-equals'], found: '=' }, '==');
      else this.fail('formula-syntax', range, { expected: ['expected-not-equal'], found: this.text.slice(start, end) });
      this.at = end;
      return { operator: '==', range };
    }
    return null;
  }

  private conversion(): Expression {
    let operand = this.window();
    for (;;) {
      const word = this.keyword('in');
      if (!word) return operand;
      this.space();
      const unit = readUnit(this.text, this.at, true);
      if (!unit || (keywords.has(unit.text) && unit.text !== 'in')) {
        this.unexpected(['expected-unit'], this.at);
        return operand;
      }
      const unitRange = { start: this.at, end: unit.end };
      this.at = unit.end;
      operand = { kind: 'convert', operand, unit: unit.text, unitRange, range: { start: operand.range.start, end: unit.end } };
    }
  }

  private window(): Expression {
    const left = this.sum();
    this.space();
    if (!this.text.startsWith('..', this.at)) return left;
    const range = { start: this.at, end: this.at + 2 };
    this.at += 2;
    return this.binary('..', range, left, this.sum());
  }

  private sum(): Expression {
    let left = this.product();
    for (;;) {
      this.space();
      const start = this.at;
      const written = this.text[start];
      if (written !== '+' && written !== '-' && written !== '−') return left;
      this.at += 1;
      const operator = written === '+' ? '+' : '-';
      if (!isSpace(this.text[start - 1]) || !isSpace(this.text[this.at])) {
        const end = skipSpace(this.text, this.at);
        const before = this.text.slice(0, start).trimEnd().length;
        this.errors.push({ code: 'operator-needs-spaces', range: { start: before, end }, args: { operator: written }, replacement: ` ${written} ` });
      }
      left = this.binary(operator, { start, end: start + 1 }, left, this.product());
    }
  }

  private product(): Expression {
    let left = this.signed();
    for (;;) {
      this.space();
      const start = this.at;
      const written = this.text[start];
      if (written !== '*' && written !== '×' && written !== '·' && written !== '/') return left;
      this.at += 1;
      left = this.binary(written === '/' ? '/' : '*', { start, end: start + 1 }, left, this.signed());
    }
  }

  private signed(): Expression {
    this.space();
    const start = this.at;
    const written = this.text[start];
    if (written !== '-' && written !== '−') return this.atom();
    this.at += 1;
    const operand = this.atom();
    return { kind: 'unary', operator: '-', operand, range: { start, end: operand.range.end } };
  }

  private atom(): Expression {
    this.space();
    const { text } = this;
    const start = this.at;
    const character = text[start];
    if (character === '(') return this.parenthesis();
    if (character === '"') return this.quotedWord();
    if (character === '+') return this.elapsed();
    if (character !== undefined && (/[0-9]/.test(character) || (character === '.' && /[0-9]/.test(text[start + 1] ?? '')))) return this.figure();
    const name = readName(text, start);
    if (name && !keywords.has(name.text)) return this.named(name.text, name.end);
    this.unexpected(['expected-value'], start);
    if (!name && character !== undefined && character !== ')' && character !== ',') this.at += codePointLength(text, start);
    return { kind: 'error', range: { start, end: this.at } };
  }

  private parenthesis(): Expression {
    const start = this.at;
    this.at += 1;
    const inner = this.formula();
    this.space();
    if (this.text[this.at] === ')') {
      this.at += 1;
      return inner;
    }
    this.fail('parenthesis-not-closed', { start, end: start + 1 }, {});
    return inner;
  }

  private quotedWord(): Expression {
    const start = this.at;
    const close = this.text.indexOf('"', start + 1);
    this.at = close < 0 ? this.text.length : close + 1;
    const range = { start, end: this.at };
    if (close < 0) {
      this.fail('formula-syntax', range, { expected: ['expected-quote'], found: '' });
      return { kind: 'error', range };
    }
    return { kind: 'word', text: this.text.slice(start + 1, close), range };
  }

  /** `+1h30`, `+90` (minutes): time since the start of the schedule. */
  private elapsed(): Expression {
    const start = this.at;
    const duration = readDurationAt(this.text, start + 1);
    const minutes = duration ? null : readNumber(this.text, start + 1);
    const end = duration?.end ?? minutes?.end;
    if (end === undefined) {
      this.unexpected(['expected-value'], start);
      this.at = start + 1;
      return { kind: 'error', range: { start, end: this.at } };
    }
    this.at = end;
    return { kind: 'instant', text: this.text.slice(start, end), range: { start, end } };
  }

  private figure(): Expression {
    const { text } = this;
    const start = this.at;
    const instant = readInstantAt(text, start);
    if (instant) {
      this.at = instant.end;
      const range = { start, end: instant.end };
      if (instant.clock) return { kind: 'instant', text: instant.text, range };
      this.fail('formula-syntax', range, { expected: ['expected-clock'], found: instant.text });
      return { kind: 'error', range };
    }
    const duration = readDurationAt(text, start);
    if (duration && Math.abs(duration.duration) <= 8.64e15) {
      this.at = duration.end;
      return { kind: 'duration', duration: duration.duration, range: { start, end: duration.end } };
    }
    const number = readNumber(text, start)!;
    const value = Number(number.text);
    this.at = number.end;
    if (!Number.isFinite(value) || Math.abs(value) > 1e100) {
      this.fail('number-too-large', { start, end: number.end }, { text: number.text });
      return { kind: 'error', range: { start, end: number.end } };
    }
    const unitStart = skipSpace(text, number.end);
    const unit = this.unitAfterNumber(unitStart, unitStart > number.end);
    if (!unit) return { kind: 'number', value, unit: null, unitRange: null, range: { start, end: number.end } };
    this.at = unit.end;
    return { kind: 'number', value, unit: unit.text, unitRange: { start: unitStart, end: unit.end }, range: { start, end: unit.end } };
  }

  private unitAfterNumber(at: number, spaced: boolean): { text: string; end: number } | null {
    if (this.text[at] === '/' || (this.text[at] === '1' && spaced)) return null;
    const unit = readUnit(this.text, at);
    if (!unit) return null;
    if (unit.text === 'in') {
      // An inch, unless a unit follows: then it converts.
      const following = readUnit(this.text, skipSpace(this.text, unit.end), true);
      return following && !(keywords.has(following.text) && following.text !== 'in') && following.text !== 'in' ? null : unit;
    }
    return keywords.has(unit.text) ? null : unit;
  }

  private named(name: string, end: number): Expression {
    const { text } = this;
    const start = this.at;
    this.at = end;
    if (text[skipSpace(text, end)] === '(') return this.call(name, { start, end });
    const parts = [name];
    let instrument: string | null = null;
    while (text[this.at] === '.' && text[this.at + 1] !== '.') {
      const next = readName(text, this.at + 1);
      if (!next || parts.length === 2) {
        this.unexpected([parts.length === 2 ? 'expected-two-parts' : 'expected-quantity'], this.at, next?.end ?? this.at + 1);
        this.at = next?.end ?? this.at + 1;
        break;
      }
      parts.push(next.text);
      this.at = next.end;
    }
    if (text[this.at] === '@') {
      const next = readName(text, this.at + 1);
      if (next && parts.length === 2) instrument = next.text;
      else this.unexpected([next ? 'expected-quantity-before-at' : 'expected-instrument'], this.at, next?.end ?? this.at + 1);
      this.at = next?.end ?? this.at + 1;
    }
    return { kind: 'reference', parts, instrument, range: { start, end: this.at } };
  }

  private call(name: string, nameRange: SourceRange): Expression {
    const operands: Expression[] = [];
    const options: { name: string; nameRange: SourceRange; value: Expression }[] = [];
    const open = skipSpace(this.text, this.at);
    this.at = open + 1;
    this.space();
    const closed = (): Call => ({ kind: 'call', name, nameRange, operands, options, range: { start: nameRange.start, end: this.at } });
    if (this.text[this.at] === ')') {
      this.at += 1;
      return closed();
    }
    for (;;) {
      this.space();
      const option = this.optionName();
      if (option) {
        this.at = option.nameRange.end;
        options.push({ ...option, value: this.signed() });
      } else {
        const operand = this.formula();
        if (options.length > 0) this.fail('formula-syntax', operand.range, { expected: ['expected-option-last', options[0]!.name], found: this.text.slice(operand.range.start, operand.range.end) });
        operands.push(operand);
      }
      this.space();
      if (this.text[this.at] !== ',' && this.text[this.at] !== ')' && this.at < this.text.length) {
        this.unexpected(['expected-comma'], this.at);
        this.recover();
      }
      if (this.text[this.at] === ',') {
        this.at += 1;
        continue;
      }
      if (this.text[this.at] === ')') this.at += 1;
      else this.fail('parenthesis-not-closed', { start: open, end: open + 1 }, {});
      return closed();
    }
  }

  /** A name followed by a space and a number: `every 1 h`. */
  private optionName(): { name: string; nameRange: SourceRange } | null {
    const name = readName(this.text, this.at);
    if (!name || keywords.has(name.text) || !isSpace(this.text[name.end])) return null;
    const next = skipSpace(this.text, name.end);
    if (!/^[-−]?\.?[0-9]/u.test(this.text.slice(next, next + 3)) || readInstantAt(this.text, next)) return null;
    return { name: name.text, nameRange: { start: this.at, end: name.end } };
  }

  /** Goes to the next comma or closing parenthesis of this call. */
  private recover(): void {
    let open = 0;
    for (; this.at < this.text.length; this.at += 1) {
      const character = this.text[this.at];
      if (character === '(') open += 1;
      else if (character === ')' && open > 0) open -= 1;
      else if ((character === ',' || character === ')') && open === 0) return;
    }
  }

  private keyword(word: string): SourceRange | null {
    this.space();
    const name = readName(this.text, this.at);
    if (!name || name.text !== word) return null;
    const range = { start: this.at, end: name.end };
    this.at = name.end;
    return range;
  }

  private binary(operator: BinaryOperator, operatorRange: SourceRange, left: Expression, right: Expression): Expression {
    return { kind: 'binary', operator, operatorRange, left, right, range: { start: left.range.start, end: Math.max(left.range.end, right.range.end) } };
  }

  private tooDeep(): Expression {
    const start = this.at;
    this.fail('formula-too-deep', { start, end: Math.min(start + 1, this.text.length) }, {});
    this.at = this.text.length;
    return { kind: 'error', range: { start, end: start } };
  }

  private unexpected(expected: Phrase, start: number, end = start + codePointLength(this.text, start)): void {
    const word = readName(this.text, start) ?? readNumber(this.text, start);
    const reach = Math.max(end, word?.end ?? end);
    const found = start >= this.text.length ? '' : this.text.slice(start, reach);
    const last = Math.max(0, this.text.trimEnd().length - 1);
    const range = start >= this.text.length ? { start: last, end: last + 1 } : { start, end: reach };
    this.fail('formula-syntax', range, { expected, found });
  }

  private fail(code: ProblemCode, range: SourceRange, args: MessageArguments, replacement: string | null = null): void {
    this.errors.push({ code, range, args, replacement });
  }

  private space(): void { this.at = skipSpace(this.text, this.at); }
}

function codePointLength(text: string, at: number): number {
  const point = text.codePointAt(at);
  return point === undefined ? 0 : point > 0xffff ? 2 : 1;
}
