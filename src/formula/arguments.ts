// Checks a call's operands and options against the catalogue's signatures, each mistake at its own place.
import type { SourceRange } from '../problems/problem.ts';
import { parseUnit } from '../quantities/units.ts';
import { convertible } from '../quantities/units.ts';
import type { FunctionEntry, OptionParameter, Parameter, ParameterType, Signature } from './catalogue/entry.ts';
import { signatureLabel } from './catalogue/entry.ts';
import { durationNumber, numberDuration } from './operands.ts';
import { isTruths, isWords } from './truths.ts';
import { nearestName } from './names.ts';
import type { Run } from './run.ts';
import type { Expression, FormulaValue } from './types.ts';
import type { PhraseCode } from '../words/phrases.ts';
import { valueKind } from './valueKinds.ts';

type CallExpression = Extract<Expression, { kind: 'call' }>;

export interface CheckedArguments {
  readonly operands: (FormulaValue | undefined)[];
  readonly expressions: (Expression | undefined)[];
  readonly options: Map<string, { value: FormulaValue; range: SourceRange }>;
  readonly signature: number;
}

const wanted: Readonly<Record<ParameterType, PhraseCode>> = {
  series: 'wants-series', readings: 'wants-series', condition: 'wants-condition', 'readings or condition': 'wants-readings-or-condition',
  number: 'wants-number', 'number or series': 'wants-number-or-series', temperature: 'wants-temperature', pressure: 'wants-pressure',
  salinity: 'wants-salinity', instant: 'wants-instant', window: 'wants-window', tank: 'wants-tank', quantity: 'wants-quantity',
};
const wantedOption: Readonly<Record<OptionParameter['type'], PhraseCode>> = { duration: 'wants-length-of-time', number: 'wants-number-with-unit' };

/** Fits values to the signatures. `values` holds one value an operand, null where it already failed. */
export function checkArguments(run: Run, entry: FunctionEntry, expression: CallExpression, values: readonly (FormulaValue | null)[], optionValues: readonly (FormulaValue | null)[]): CheckedArguments | null {
  for (const [index, signature] of entry.signatures.entries()) {
    if (values.length <= signature.parameters.length && fitsAll(signature, values)) return fit(run, entry, index, expression, values, optionValues);
  }
  return fit(run, entry, nearestSignature(entry, values), expression, values, optionValues);
}

function fitsAll(signature: Signature, values: readonly (FormulaValue | null)[]): boolean {
  return place(signature, values) !== null;
}

/** Operands by parameter; an optional parameter may be skipped when its successor fits. Null when something does not fit. */
function place(signature: Signature, values: readonly (FormulaValue | null)[]): (FormulaValue | undefined)[] | null {
  const placed: (FormulaValue | undefined)[] = [];
  let next = 0;
  for (const parameter of signature.parameters) {
    const value = values[next];
    if (next < values.length && value === null) {
      placed.push(undefined);
      next += 1;
      continue;
    }
    const coerced = value === undefined || value === null ? null : coerce(parameter.type, value);
    if (coerced) {
      placed.push(coerced);
      next += 1;
    } else if (parameter.optional) placed.push(undefined);
    else return null;
  }
  return next === values.length ? placed : null;
}

function nearestSignature(entry: FunctionEntry, values: readonly (FormulaValue | null)[]): number {
  let best = 0;
  let bestScore = -1;
  for (const [index, signature] of entry.signatures.entries()) {
    let score = 0;
    for (const [position, value] of values.entries()) {
      const parameter = signature.parameters[position];
      if (value && parameter && coerce(parameter.type, value)) score += 1;
      else break;
    }
    if (score > bestScore) {
      best = index;
      bestScore = score;
    }
  }
  return best;
}

function fit(run: Run, entry: FunctionEntry, index: number, expression: CallExpression, values: readonly (FormulaValue | null)[], optionValues: readonly (FormulaValue | null)[]): CheckedArguments | null {
  const signature = entry.signatures[index]!;
  const options = checkOptions(run, entry, signature, expression, optionValues);
  const placed = place(signature, values);
  if (!placed) return explain(run, entry, signature, expression, values);
  if (values.some((value) => value === null) || !options) return null;
  const expressions: (Expression | undefined)[] = [];
  let next = 0;
  for (const value of placed) {
    expressions.push(value === undefined ? undefined : expression.operands[next]);
    if (value !== undefined) next += 1;
  }
  return { operands: placed, expressions, options, signature: index };
}

/** Says which operand is wrong, missing or too many. */
function explain(run: Run, entry: FunctionEntry, signature: Signature, expression: CallExpression, values: readonly (FormulaValue | null)[]): null {
  const { parameters } = signature;
  const label = signatureLabel(entry.name, signature);
  let next = 0;
  for (const parameter of parameters) {
    const value = values[next];
    if (value === undefined) {
      if (parameter.optional) continue;
      return run.fail('missing-argument', expression.nameRange, { function: entry.name, argument: parameter.name, expected: [wanted[parameter.type]], signature: label });
    }
    if (value === null || coerce(parameter.type, value)) {
      next += 1;
      continue;
    }
    if (parameter.optional && next + 1 <= values.length && parameter !== parameters.at(-1)) continue;
    return wrong(run, entry, parameter, value, expression.operands[next]!);
  }
  if (next < values.length) {
    const surplus = expression.operands[next]!;
    return run.fail('too-many-arguments', { start: surplus.range.start, end: expression.operands.at(-1)!.range.end }, { function: entry.name, signature: label });
  }
  return null;
}

function wrong(run: Run, entry: FunctionEntry, parameter: Parameter, value: FormulaValue, operand: Expression): null {
  const args = { function: entry.name, argument: parameter.name, expected: [wanted[parameter.type]], found: valueKind(value) };
  const wantsSeries = parameter.type === 'series' || parameter.type === 'readings' || parameter.type === 'number or series';
  const columns = value.type === 'tank' && wantsSeries
    ? [...run.context.dataset.series.values()].filter((series) => series.place === value.id).map((series) => series.id) : [];
  return run.fail('wrong-argument', operand.range, args, columns.slice(0, 6).map((column) => run.replace(operand.range, column)));
}

function checkOptions(run: Run, entry: FunctionEntry, signature: Signature, expression: CallExpression, values: readonly (FormulaValue | null)[]): Map<string, { value: FormulaValue; range: SourceRange }> | null {
  const options = new Map<string, { value: FormulaValue; range: SourceRange }>();
  let sound = true;
  for (const [index, written] of expression.options.entries()) {
    const known = signature.options.find((option) => option.name === written.name);
    if (!known) {
      const nearest = nearestName(written.name, signature.options.map((option) => option.name));
      run.fail('option-unknown-here', written.nameRange, { function: entry.name, option: written.name, options: signature.options.map((option) => option.name) },
        nearest ? [run.replace(written.nameRange, nearest, { preferred: true })] : []);
      sound = false;
      continue;
    }
    const value = values[index];
    if (!value) {
      sound = false;
      continue;
    }
    const coerced = coerceOption(known, value);
    if (!coerced) {
      run.fail('wrong-argument', written.value.range, {
        function: entry.name, argument: known.name, expected: [wantedOption[known.type]], found: valueKind(value),
      });
      sound = false;
    } else options.set(known.name, { value: coerced, range: written.value.range });
  }
  for (const option of signature.options) {
    if (option.required && !expression.options.some((written) => written.name === option.name)) {
      run.fail('missing-argument', expression.nameRange, { function: entry.name, argument: option.name, expected: [wantedOption[option.type]], signature: signatureLabel(entry.name, signature) });
      sound = false;
    }
  }
  return sound ? options : null;
}

function coerceOption(option: OptionParameter, value: FormulaValue): FormulaValue | null {
  if (option.type === 'number') return value.type === 'number' ? value : value.type === 'duration' ? durationNumber(value) : null;
  const duration = value.type === 'duration' ? value.duration : value.type === 'number' ? numberDuration(value) : null;
  return duration !== null && duration > 0 ? { type: 'duration', duration } : null;
}

const pressureUnit = parseUnit('hPa');

/** The value as the parameter wants it, or null when it cannot be that. */
function coerce(type: ParameterType, value: FormulaValue): FormulaValue | null {
  const numeric = value.type === 'series' && (value.content ?? 'number') === 'number';
  switch (type) {
    case 'series': return numeric ? value : null;
    case 'readings': return numeric || isWords(value) ? value : null;
    case 'condition': return isTruths(value) ? value : null;
    case 'readings or condition': return value.type === 'series' ? value : null;
    case 'number': return value.type === 'number' ? value : value.type === 'duration' ? durationNumber(value) : null;
    case 'number or series': return value.type === 'number' || numeric ? value : value.type === 'duration' ? durationNumber(value) : null;
    case 'temperature': return (value.type === 'number' || numeric) && value.unit.kind === 'temperature' ? value : null;
    case 'pressure': return (value.type === 'number' || numeric) && pressureUnit !== null && convertible(value.unit, pressureUnit) ? value : null;
    case 'salinity': return (value.type === 'number' || numeric) && (value.unit.kind === 'salinity' || value.unit.symbol === '1') ? value : null;
    case 'instant': return value.type === 'instant' ? value : value.type === 'event' ? { type: 'instant', instant: value.instant } : null;
    case 'window': return value.type === 'window' ? value : null;
    case 'tank': return value.type === 'tank' ? value : null;
    case 'quantity': return value.type === 'quantity' ? value : null;
  }
}
