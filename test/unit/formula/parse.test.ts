import assert from 'node:assert/strict';
import fc from 'fast-check';
import { parseFormula } from '../../../src/formula/parse.ts';
import { printFormula } from '../../../src/formula/print.ts';
import type { Expression } from '../../../src/formula/types.ts';

function printed(text: string): string {
  const { expression, errors } = parseFormula(text);
  assert.deepEqual(errors, [], text);
  return printFormula(expression);
}

function errorsOf(text: string): string[] {
  return parseFormula(text).errors.map((each) => `${each.code} ${each.range.start}-${each.range.end}`);
}

/** The tree without its ranges. */
function bare(expression: Expression): unknown {
  return JSON.parse(JSON.stringify(expression, (key, value: unknown) => (/[rR]ange$/.test(key) ? undefined : value)));
}

suite('formula parser', () => {
  test('binds as the grammar says: or, and, not, comparison, in, window, sum, product, sign', () => {
    const tree = parseFormula('not a < b and c or d').expression;
    assert.equal(tree.kind === 'binary' && tree.operator, 'or');
    assert.equal(printed('1 + 2 * 3'), '1 + 2 * 3');
    assert.equal(printed('(1 + 2) * 3'), '(1 + 2) * 3');
    assert.equal(printed('1 - (2 - 3)'), '1 - (2 - 3)');
    assert.equal(printed('-2 * 3'), '-2 * 3');
    const window = parseFormula('light-off..light-off + 1 h in h').expression;
    assert.equal(window.kind === 'convert' && window.operand.kind === 'binary' && window.operand.operator, '..');
  });

  test('a tight slash belongs to the unit, a spaced one divides', () => {
    const unit = parseFormula('3 mg/L').expression;
    assert.deepEqual([unit.kind === 'number' && unit.unit, unit.kind === 'number' && unit.unitRange], ['mg/L', { start: 2, end: 6 }]);
    const quotient = parseFormula('3 mg / 2 L').expression;
    assert.equal(quotient.kind === 'binary' && quotient.operator, '/');
    const tight = parseFormula('mat.DO/2').expression;
    assert.equal(tight.kind === 'binary' && tight.operator, '/');
    const nitrogen = parseFormula('0.3 mg/L-N').expression;
    assert.equal(nitrogen.kind === 'number' && nitrogen.unit, 'mg/L-N');
    const percent = parseFormula('2.5 %/h').expression;
    assert.equal(percent.kind === 'number' && percent.unit, '%/h');
  });

  test('plus and minus stand between spaces; the mend is offered', () => {
    const { errors, expression } = parseFormula('3-2');
    assert.deepEqual(errors.map((each) => [each.code, each.range, each.replacement]), [['operator-needs-spaces', { start: 1, end: 2 }, ' - ']]);
    assert.equal(expression.kind === 'binary' && expression.operator, '-');
    assert.deepEqual(errorsOf('min(mat.DO) -1 mg/L'), ['operator-needs-spaces 11-13']);
    assert.deepEqual(errorsOf('min(mat.DO) - 1 mg/L'), []);
  });

  test('names hold hyphens and digits', () => {
    for (const name of ['dark-1', 'light-off', 'un-ionised-ammonia', 'x2']) {
      const tree = parseFormula(name).expression;
      assert.deepEqual(tree.kind === 'reference' && tree.parts, [name]);
    }
    const column = parseFormula('mat.DO@titration').expression;
    assert.deepEqual(column.kind === 'reference' && [column.parts, column.instrument], [['mat', 'DO'], 'titration']);
  });

  test('instants: clock, date, offset, time since the start', () => {
    for (const text of ['22:30', '22:30:15', '2026-03-15T02:30', '2026-03-15 02:30', '2026-03-15 02:30+01:00', '2026-03-15T02:30:00Z', '+1h30', '+90', '+3 d']) {
      const tree = parseFormula(text).expression;
      assert.deepEqual([tree.kind, tree.kind === 'instant' && tree.text], ['instant', text]);
    }
    const window = parseFormula('21:20..end').expression;
    assert.equal(window.kind === 'binary' && window.left.kind, 'instant');
    assert.deepEqual(errorsOf('at(mat.DO, 2026-03-15)'), ['formula-syntax 11-21']);
  });

  test('durations, also of several units', () => {
    const lengths: [string, number][] = [['1 h', 3_600_000], ['9 h 30 min', 34_200_000], ['1h30', 5_400_000], ['90 s', 90_000], ['2 d', 172_800_000], ['1.5 h', 5_400_000]];
    for (const [text, expected] of lengths) {
      const tree = parseFormula(text).expression;
      assert.deepEqual([tree.kind, tree.kind === 'duration' && tree.duration], ['duration', expected], text);
    }
  });

  test('options close a call', () => {
    const tree = parseFormula('settled(mat.DO, dark, within 0.05 mg/L, for 1 h)').expression;
    assert.ok(tree.kind === 'call');
    assert.deepEqual(tree.options.map((each) => [each.name, each.nameRange.start, each.value.kind]), [['within', 22, 'number'], ['for', 40, 'duration']]);
    assert.equal(tree.operands.length, 2);
    assert.equal(errorsOf('steps(mat.DO, every 1 h, dark)').length, 1);
  });

  test('inches and the word in', () => {
    const inch = parseFormula('12 in in cm').expression;
    assert.equal(inch.kind === 'convert' && inch.operand.kind === 'number' && inch.operand.unit, 'in');
    const metric = parseFormula('12 in cm').expression;
    assert.equal(metric.kind === 'convert' && metric.unit, 'cm');
    assert.equal(printed('length(mat) in in'), 'length(mat) in in');
  });

  test('printed signs: ≤ ≥ × · −', () => {
    assert.equal(printed('a ≤ 2 × 3 · 4 − −1'), 'a <= 2 * 3 * 4 - -1');
    assert.equal(printed('a ≥ b'), 'a >= b');
  });

  test('errors have their places, and what follows is still read', () => {
    assert.deepEqual(errorsOf(''), ['formula-empty 0-0']);
    assert.deepEqual(errorsOf('min('), ['formula-syntax 3-4', 'parenthesis-not-closed 3-4']);
    assert.deepEqual(errorsOf('1 < 2 < 3'), ['formula-chained 6-7']);
    assert.deepEqual(errorsOf('a = b'), ['formula-syntax 2-3']);
    assert.deepEqual(errorsOf('mean(mat.DO) mat'), ['formula-syntax 13-16']);
    assert.deepEqual(errorsOf('(1 + 2'), ['parenthesis-not-closed 0-1']);
    const recovered = parseFormula('percent-fall(mat.DO ?? 3, dark) + min(open.DO)');
    assert.equal(recovered.errors.length, 1);
    assert.ok(recovered.expression.kind === 'binary' && recovered.expression.right.kind === 'call');
  });

  test('ranges are exact', () => {
    const text = ' rate( mat.DO , light-off..22:30 ) < 2 ';
    const tree = parseFormula(text).expression;
    assert.ok(tree.kind === 'binary' && tree.left.kind === 'call');
    assert.equal(text.slice(tree.left.range.start, tree.left.range.end), 'rate( mat.DO , light-off..22:30 )');
    assert.equal(text.slice(tree.left.nameRange.start, tree.left.nameRange.end), 'rate');
    assert.deepEqual(tree.left.operands.map((each) => text.slice(each.range.start, each.range.end)), ['mat.DO', 'light-off..22:30']);
  });

  test('never throws, and every range lies in the text', () => {
    const piece = fc.constantFrom('mat.DO', 'min', '(', ')', ',', '..', '.', ' + ', '-', ' - ', '/', ' / ', '3', '0.5', 'mg/L', '22:30', '2026-03-15', 'T', ' ', 'in', 'and', 'not', '<', '==', '=', '"', '@', '+', '1h30', 'every 1 h', '%', '°C', '−', '×', '\u{1F41F}', '\n', 'é', '9e999');
    const text = fc.oneof(fc.string({ unit: 'binary', maxLength: 60 }), fc.array(piece, { maxLength: 25 }).map((parts) => parts.join('')));
    fc.assert(fc.property(text, (source) => {
      const { expression, errors } = parseFormula(source);
      check(expression, source.length);
      for (const error of errors) assert.ok(error.range.start >= 0 && error.range.start <= error.range.end && error.range.end <= source.length, `${error.code} ${JSON.stringify(error.range)} in ${JSON.stringify(source)}`);
    }), { numRuns: 3000 });
  });

  test('what is printed reads back as the same tree', () => {
    fc.assert(fc.property(expressions, (tree) => {
      const text = printFormula(tree);
      const { expression, errors } = parseFormula(text);
      assert.deepEqual(errors, [], text);
      assert.deepEqual(bare(expression), bare(tree), text);
    }), { numRuns: 2000 });
  });

  test('deep and long formulas end in a problem, not in a crash', () => {
    assert.equal(parseFormula('('.repeat(3000)).errors[0]?.code, 'formula-too-deep');
    assert.equal(parseFormula('not '.repeat(900)).errors[0]?.code, 'formula-too-deep');
    assert.equal(parseFormula('1 + '.repeat(2000)).errors[0]?.code, 'formula-too-long');
    assert.equal(parseFormula(`${'a('.repeat(1500)}`).errors[0]?.code, 'formula-too-deep');
  });
});

function check(expression: Expression, length: number): void {
  assert.ok(expression.range.start >= 0 && expression.range.end <= length && expression.range.start <= expression.range.end);
  if (expression.kind === 'binary') { check(expression.left, length); check(expression.right, length); }
  if (expression.kind === 'unary' || expression.kind === 'convert') check(expression.operand, length);
  if (expression.kind === 'call') for (const operand of expression.operands) check(operand, length);
  if (expression.kind === 'number') assert.ok(Number.isFinite(expression.value));
}

const nowhere = { start: 0, end: 0 };
const name = fc.constantFrom('mat', 'open', 'dark-1', 'light-off', 'un-ionised', 'x');
const leaf: fc.Arbitrary<Expression> = fc.oneof(
  fc.record({ value: fc.double({ min: 0, max: 1e6, noNaN: true }).map((value) => Math.abs(value)), unit: fc.constantFrom(null, 'mg/L', '%', 'degC', '%/h', 'mg/L-N') })
    .map((each): Expression => ({ kind: 'number', value: each.value, unit: each.unit, unitRange: null, range: nowhere })),
  fc.integer({ min: 0, max: 3_000_000 }).map((seconds): Expression => ({ kind: 'duration', duration: seconds * 1000, range: nowhere })),
  fc.constantFrom('22:30', '2026-03-15T02:30', '2026-03-15 02:30+01:00', '+1h30').map((text): Expression => ({ kind: 'instant', text, range: nowhere })),
  fc.tuple(name, fc.option(fc.constantFrom('DO', 'T'))).map(([place, quantity]): Expression => ({ kind: 'reference', parts: quantity === null ? [place] : [place, quantity], instrument: null, range: nowhere })),
);
const { expressions } = fc.letrec<{ expressions: Expression }>((tie) => ({
  expressions: fc.oneof({ depthSize: 'small' }, leaf,
    fc.tuple(fc.constantFrom<'+' | '-' | '*' | '/' | '<' | '>' | '<=' | '>=' | '==' | 'and' | 'or' | '..'>('+', '-', '*', '/', '<', '>', '<=', '>=', '==', 'and', 'or', '..'), tie('expressions'), tie('expressions'))
      .map(([operator, left, right]): Expression => ({ kind: 'binary', operator, operatorRange: nowhere, left, right, range: nowhere })),
    fc.tuple(fc.constantFrom<'-' | 'not'>('-', 'not'), tie('expressions')).map(([operator, operand]): Expression => ({ kind: 'unary', operator, operand, range: nowhere })),
    fc.tuple(tie('expressions'), fc.constantFrom('mg/L', 'degF', '%')).map(([operand, unit]): Expression => ({ kind: 'convert', operand, unit, unitRange: nowhere, range: nowhere })),
    fc.array(tie('expressions'), { minLength: 1, maxLength: 3 }).map((operands): Expression => ({ kind: 'call', name: 'rate', nameRange: nowhere, operands, options: [], range: nowhere })),
  ),
}));
