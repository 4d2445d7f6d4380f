// Finds numbers in prose that a formula could give: each is a hint, so that the author may turn it into a claim.
import { problem, type Problem, type SourceRange } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax, ProseRun } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { convert, convertible, differenceUnit, isTimeUnit, parseUnit, perHour } from '../quantities/units.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { day, hour, type Instant } from '../time/instant.ts';
import { instantOf, utc, wallTimeOf } from '../time/zone.ts';
import { mappedText } from '../note/mappedText.ts';
import { unitFromAround } from './bareNumbers.ts';
import { claimWords } from '../words/claimWords.ts';
import { languageOf } from '../words/languages.ts';
import { evaluate } from '../formula/evaluate.ts';
import { parseFormula } from '../formula/parse.ts';
import { everyExpression, partOf } from './formulaShape.ts';
import { fittingUnit, needsNoUnit } from './compareNumber.ts';
import { plannedNames } from './claimWords.ts';
import type { AnyMention, ClockMention, NumberMention } from './mentions.ts';
import { readMentions } from './readMentions.ts';
import { namesTime, timesIn, type FormulaTimes } from './formulaTimes.ts';

/**
 * Hints for loose numbers, in digits or words. Numbers without a unit are left alone, unless what stands around them gives one; so are
 * numbers that the plan or a formula of the note states (a limit, a level). The formulas that give them are searched on demand only
 * (`findFixes`): a key typed in prose does not pay for it.
 */
export function findLooseNumbers(prose: readonly ProseRun[], context: FormulaContext, claims: readonly ClaimSyntax[] = []): Problem[] {
  if (!context.protocol || context.dataset.series.size === 0) return [];
  const language = context.protocol.language;
  const { multiples, unitAhead } = claimWords(languageOf(language));
  const names = plannedNames(context);
  const problems: Problem[] = [];
  let stated: NumberValue[] | null = null;
  let planned: NumberValue[] | null = null;
  for (const run of prose) {
    const words = plainDigits(run.text.text);
    const raise = (place: SourceRange): void => {
      problems.push(problem('loose-number', toDocumentRange(run.text, place), { text: run.text.text.slice(place.start, place.end).replace(/\s+/g, ' ') }));
    };
    for (const each of words.matchAll(multiples)) raise({ start: each.index, end: each.index + each[0].length });
    if (!/\p{N}/u.test(words) && !unitAhead.test(words)) continue;
    for (const read of readMentions(words, { language, names })) {
      const mention = read.kind === 'number' ? { ...read, unit: read.unit ?? unitFromAround(read, run, context) } : read;
      const kind = kindOf(mention, context);
      if (kind === null) continue;
      if (mention.kind === 'number') {
        stated ??= statedNumbers(context, claims);
        planned ??= plannedNumbers(context);
        const given = planned.some((each) => same(mention, each));
        if (!given && (kind === 'plan' || stated.some((each) => same(mention, each)))) continue;
      }
      raise(mention);
    }
  }
  return problems;
}

/** Digits of any alphabet as those that are read; the length stays. */
function plainDigits(text: string): string {
  return text.replace(/[^\P{Nd}\d]/gu, (digit) => (digit.length > 1 ? digit : String(digitValue(digit)))).replace(/．/gu, '.');
}

/** Decimal digits stand in blocks of ten. */
function digitValue(digit: string): number {
  let value = 0;
  while (value < 9 && /^\p{Nd}$/u.test(String.fromCharCode(digit.charCodeAt(0) - value - 1))) value += 1;
  return value;
}

/** Numbers that a formula over the plan alone gives: volumes, sides, facts of tanks, and named results that are one quantity. */
function plannedNumbers(context: FormulaContext): NumberValue[] {
  const tanks = context.protocol?.tanks ?? [];
  const formulas = [
    ...tanks.flatMap((tank) => (tank.size || tank.volume ? ['volume', 'length', 'width', 'height'].map((name) => `${name}(${tank.id})`) : [])),
    ...context.results.filter((result) => /^\s*[\d.]/u.test(result.formula.text)).map((result) => result.name),
  ];
  const computed = formulas.flatMap((formula): NumberValue[] => {
    const { value } = evaluate(mappedText(formula), context);
    return value?.type === 'number' ? [value] : [];
  });
  return [...computed, ...tanks.flatMap((tank) => [...tank.facts.values()].map((fact) => fact.value))];
}

/** Numbers that the plan states (limits, accuracies) and levels that conditions and formulas name. */
function statedNumbers(context: FormulaContext, claims: readonly ClaimSyntax[]): NumberValue[] {
  const { protocol } = context;
  if (!protocol) return [];
  const formulas = [
    ...protocol.stopRules.map((each) => each.when?.text), ...protocol.equalise.map((each) => each.accept?.text),
    ...context.results.map((each) => each.formula.text), ...claims.filter((each) => each.form !== 'stated').map((each) => each.formula.text),
  ].filter((each) => each !== undefined);
  const literals = formulas.flatMap((text) => everyExpression({ expression: parseFormula(text).expression, text: mappedText(text) }, context)).flatMap((each): NumberValue[] => {
    const unit = each.kind === 'number' && each.unit !== null ? parseUnit(each.unit) : null;
    return each.kind === 'number' && unit ? [{ type: 'number', value: each.value, unit, contributions: null }] : [];
  });
  return [
    ...literals, ...protocol.limits.flatMap((each) => [each.atLeast?.value ?? [], each.atMost?.value ?? []].flat()),
    ...protocol.measure.flatMap((each) => [each.accuracy ?? [], each.resolution ?? []].flat()),
  ];
}

function same(mention: NumberMention, stated: NumberValue): boolean {
  const unit = fittingUnit(mention.unit, stated.unit);
  return unit !== null && Math.abs(convert(stated.value, stated.unit, unit) - mention.value) <= 1e-9 * Math.abs(mention.value);
}

/**
 * What stands inside a claim's words and its formula does not check: numbers in a unit the note measures or in per cent, but of another
 * kind than the value's (`fits`), and, where the value is no time, times that the formula does not name.
 */
export function looseInWords(syntax: ClaimSyntax, mentions: readonly AnyMention[], context: FormulaContext, fits: (unit: Unit) => boolean, timesToo: boolean): Problem[] {
  let stated: NumberValue[] | null = null;
  let times: FormulaTimes | null = null;
  const loose = (mention: AnyMention): boolean => {
    if (kindOf(mention, context) !== 'data') return false;
    if (mention.kind !== 'number' || (mention.unit !== null && isTimeUnit(mention.unit))) {
      return timesToo && !namesTime(times ??= timesIn(syntax.formula, context), mention, context.protocol?.zone ?? utc);
    }
    if (mention.unit === null || fits(mention.unit)) return false;
    stated ??= statedNumbers(context, [syntax]);
    return !stated.some((each) => same(mention, each));
  };
  return [...mentions.filter(loose), ...looseMultiples(syntax, context)].map(({ start, end }) =>
    problem('loose-number', toDocumentRange(syntax.words, { start, end }), { text: syntax.words.text.slice(start, end).replace(/\s+/g, ' ') }));
}

/** `twice as fast`, `halved`, `a third of its oxygen` in the words of a formula that holds no ratio. */
function looseMultiples({ words, formula }: ClaimSyntax, context: FormulaContext): { start: number; end: number }[] {
  const found = [...words.text.matchAll(claimWords(languageOf(context.protocol?.language)).multiples)];
  if (found.length === 0) return [];
  const ratio = everyExpression(partOf(formula, context), context).some((each) => (each.kind === 'binary' && (each.operator === '/' || each.operator === '*')) || (each.kind === 'number' && each.unit === null));
  return ratio ? [] : found.map((each) => ({ start: each.index, end: each.index + each[0].length }));
}

/** `data`: the note measures or derives it; `plan`: only worth a hint where a formula gives it; null: not loose. */
function kindOf(mention: AnyMention, context: FormulaContext): 'data' | 'plan' | null {
  if (mention.kind === 'clock') return mention.style !== 'word' && withinRun(mention, context) ? 'data' : null;
  if (mention.kind === 'duration') return mention.duration <= runLength(context) ? 'data' : null;
  if ((mention.kind !== 'number' && mention.kind !== 'unclear') || mention.unit === null) return null;
  const unit = mention.unit;
  if (mention.kind === 'unclear') return 'data';
  if (isTimeUnit(unit)) {
    // `two hours later` tells a story more often than it states what was read.
    if (mention.written === 'words') return null;
    const hours = parseUnit('h');
    return hours && convert(mention.value, unit, hours) * hour <= runLength(context) ? 'data' : null;
  }
  if (unit.kind === 'percentage' || unit.kind === 'percentage-points') return 'data';
  if (measured(unit, context)) return 'data';
  return needsNoUnit(unit) ? null : 'plan';
}

function measured(unit: Unit, context: FormulaContext): boolean {
  for (const { unit: own } of context.dataset.series.values()) {
    if (needsNoUnit(own) && own.symbol === '1') continue;
    const rate = perHour(differenceUnit(own));
    if (fittingUnit(unit, own) !== null || (unit.kind === 'parts-per-million' && isConcentration(own)) || convertible(unit, differenceUnit(own)) || convertible(unit, rate)) return true;
  }
  return false;
}

/** Mass in a volume: what ppm is said of in water. */
const isConcentration = ({ dimension }: Unit): boolean => dimension.mass === 1 && dimension.length === -3 && dimension.time === 0;

function runOf(context: FormulaContext): { from: Instant; to: Instant } | null {
  const { times } = context.dataset;
  const from = context.protocol?.schedule?.start ?? times[0];
  const to = context.protocol?.schedule?.end ?? times.at(-1);
  return from === undefined || to === undefined ? null : { from: Math.min(from, times[0] ?? from), to: Math.max(to, times.at(-1) ?? to) };
}

function runLength(context: FormulaContext): number {
  const run = runOf(context);
  return run ? run.to - run.from : 0;
}

/** A clock time that some moment of the run has; with a date, that moment. */
function withinRun(clock: ClockMention, context: FormulaContext): boolean {
  const run = runOf(context);
  if (!run) return false;
  const zone = context.protocol?.zone ?? utc;
  for (let near = run.from; near <= run.to + day; near += day) {
    const around = wallTimeOf(near, zone);
    const date = clock.date;
    if (date && (date.month !== around.month || date.day !== around.day || (date.year !== null && date.year !== around.year))) continue;
    const meaning = instantOf({ ...around, hour: clock.hour, minute: clock.minute, second: clock.second ?? 0 }, zone);
    const instant = meaning.kind === 'single' ? meaning.instant : meaning.kind === 'repeated' ? meaning.earlier : null;
    if (instant !== null && instant >= run.from && instant <= run.to) return true;
    if (near - run.from > 400 * day) return false;
  }
  return false;
}
