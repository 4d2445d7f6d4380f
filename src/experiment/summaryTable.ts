// A `summary` block computed: every cell is a formula of the note, evaluated by the one evaluator. What cannot be computed
// keeps its reason, and is a problem at the place in the block that asked for it.
import { fix, problem, type Fix, type Problem, type SourceRange } from '../problems/problem.ts';
import type { ProblemCode } from '../problems/codes.ts';
import { mappedText } from '../note/mappedText.ts';
import type { Protocol, Window } from '../protocol/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import type { Evaluation, FormulaValue } from '../formula/types.ts';
import type { Instant } from '../time/instant.ts';
import { placesNamed, type NamedSeries, type ShownSeries } from './shownSeries.ts';
import type { NamedWindow, Part, SummaryOptions, SummaryRows } from './summaryBlock.ts';

/** A column of readings, a computed series, or treatment minus control of one of them. */
export interface SummarySubject {
  readonly kind: 'series' | 'gap';
  /** A tank or the room; null for a gap and for a series of several places. */
  readonly place: string | null;
  /** The quantity of a column (`DO`), or the formula of a computed series without its places. */
  readonly form: string;
  readonly instrument: string | null;
  readonly computed: boolean;
  /** The series as a formula; of the treatment side for a gap. */
  readonly formula: string;
}
export interface SummaryColumn { readonly subject: SummarySubject; readonly function: string }

export interface SummaryRow {
  readonly kind: 'window' | 'time' | 'tank' | 'gap' | 'before' | 'after' | 'change';
  /** As the block or the plan names it: a phase, a moment, a tank. */
  readonly name: string;
  readonly window: NamedWindow | null;
  readonly instant: number | null;
  readonly cells: readonly SummaryCell[];
  /** Fewest and most readings that a series has in the row; null where rows are moments. */
  readonly readings: { readonly least: number; readonly most: number } | null;
}

export interface SummaryCell {
  /** Empty where there is nothing to compute. */
  readonly formula: string;
  readonly value: FormulaValue | null;
  /** Why there is no value. */
  readonly reason: Problem | null;
  /** The value is a contrast, whose interval counts the scatter of the readings. */
  readonly contrast: boolean;
}

export interface SummaryTable {
  readonly rows: readonly SummaryRow[];
  readonly columns: readonly SummaryColumn[];
  readonly kind: SummaryRows['kind'];
  readonly caption: string | null;
  /** The series it sums up, for their names. */
  readonly series: readonly ShownSeries[];
  /** Between before and after. */
  readonly moment: { readonly name: string; readonly instant: Instant } | null;
  /** Of a table by tank that is cut by `from` and `to`. */
  readonly window: Window | null;
}

/** What a cell lacks because of the readings, not because of how it was asked for. */
const forWantOfReadings: ReadonlySet<ProblemCode> = new Set<ProblemCode>([
  'no-readings', 'empty-window', 'too-few-readings', 'no-reading-at-time', 'outside-readings', 'censored-value', 'no-neighbours', 'no-stretch', 'zero-base',
  'level-not-reached', 'never-settled', 'never-turns', 'no-joint-rows', 'result-failed',
]);

const blank: SummaryCell = { formula: '', value: null, reason: null, contrast: false };

/** Functions of which a difference between tanks or stretches means nothing. */
const withoutGap: ReadonlySet<string> = new Set(['count', 'missing']);

/** `min(mat.DO, dark)`, `at(mat.DO, 22:00)`. */
function partsOf(name: Part, series: Part, stretch: Part | null): Part[] {
  const glue = (text: string): Part => ({ text, range: series.range, verbatim: false });
  return [name, glue('('), series, ...(stretch ? [glue(', '), stretch] : []), glue(')')];
}

const textOf = (parts: readonly Part[]): string => parts.map((part) => part.text).join('');

class SummaryMaker {
  readonly problems: Problem[] = [];
  private readonly options: SummaryOptions;
  private readonly context: FormulaContext;
  private readonly protocol: Protocol;

  constructor(options: SummaryOptions, context: FormulaContext, protocol: Protocol) {
    this.options = options;
    this.context = context;
    this.protocol = protocol;
  }

  make(): SummaryTable {
    const { rows, caption } = this.options;
    const made = rows.kind === 'tanks' ? this.byTank(rows.window) : this.byTime(rows);
    const cut = rows.kind === 'tanks' && rows.window ? this.evaluate(rows.window.text).value : null;
    return {
      ...made, kind: rows.kind, caption, series: this.options.of.map(({ value, computed }) => ({ value, computed })),
      moment: rows.kind === 'before-after' ? { name: rows.moment.text, instant: rows.moment.instant } : null, window: cut?.type === 'window' ? { from: cut.from, to: cut.to } : null,
    };
  }

  private evaluate(formula: string): Evaluation { return evaluate(mappedText(formula), this.context); }

  /** A cell of one series, with its problems raised where the block asked for it. */
  private cell(parts: readonly Part[], row: string): SummaryCell {
    const formula = textOf(parts);
    const { value, problems } = this.evaluate(formula);
    for (const each of problems) this.raise(each, parts, row);
    return { formula, value, reason: value ? null : problems.find((each) => each.severity === 'error') ?? problems[0] ?? null, contrast: false };
  }

  /** A cell that others make up: what it lacks is said beside them. */
  private combined(formula: string): SummaryCell {
    const { value, problems } = this.evaluate(formula);
    return { formula, value, reason: value ? null : problems[0] ?? null, contrast: false };
  }

  private raise(found: Problem, parts: readonly Part[], row: string): void {
    let at = 0;
    const placed = parts.map((part) => ({ part, start: at, end: (at += part.text.length) }));
    const hit = placed.find(({ start, end }) => found.range.start >= start && found.range.end <= end && end > start) ?? placed[0]!;
    const move = (range: SourceRange): SourceRange => ({ start: range.start - hit.start + hit.part.range.start, end: range.end - hit.start + hit.part.range.start });
    const inside = (range: SourceRange): boolean => hit.part.verbatim && range.start >= hit.start && range.end <= hit.end;
    const fixes = found.fixes.filter((each) => each.edits.every((edit) => inside(edit.range)))
      .map((each) => ({ ...each, edits: each.edits.map((edit) => ({ ...edit, range: move(edit.range) })) }));
    const range = inside(found.range) ? move(found.range) : hit.part.range;
    const [name, , series] = parts as [Part, Part, Part];
    const own = forWantOfReadings.has(found.code) && found.severity === 'error';
    const raised = own ? problem('summary-cell-empty', range, { function: name.text, series: series.text, row, reason: found.code, ...this.namesOf(series.text, row) }, [...fixes, ...this.mends(found.code, series.text)])
      : { ...found, range, fixes, related: [] };
    if (!this.problems.some((each) => each.code === raised.code && each.range.start === range.start && each.args['row'] === raised.args['row'])) this.problems.push(raised);
  }

  /** What a sentence calls the series by: its quantity and its tank's label, empty for a computed series; and what the row is. */
  private namesOf(formula: string, row: string): { readonly quantity: string; readonly tank: string; readonly of: 'phase' | 'tank' | 'other' } {
    const { protocol } = this;
    const series = this.context.dataset.series.get(formula);
    return {
      quantity: protocol.measure.find((each) => each.id === series?.quantity)?.what?.value ?? '', tank: protocol.tanks.find((each) => each.id === series?.place)?.label ?? '',
      of: this.options.rows.kind === 'tanks' ? 'tank' : protocol.phases.some((each) => each.id === row) ? 'phase' : 'other',
    };
  }

  /** Asks for less: only the rows that have readings, only the series whose values can be counted. */
  private mends(code: ProblemCode, series: string): Fix[] {
    const { rows, places, of } = this.options;
    const write = (range: SourceRange, names: readonly string[]): Fix => {
      const text = `[${names.map((each) => (/[,"]/.test(each) ? `"${each}"` : each)).join(', ')}]`;
      return fix('replace-with', { text }, [{ range, newText: text }]);
    };
    if (code === 'censored-value') {
      const left = of.map((each) => each.value).filter((each) => each !== series);
      return left.length > 0 && places.of ? [write(places.of, left)] : places.show ? [write(places.show, ['count'])] : [];
    }
    if (rows.kind !== 'phases' && rows.kind !== 'windows') return [];
    const kept = rows.windows.filter((window) => this.count(series, window.text) > 0);
    return kept.length > 0 && kept.length < rows.windows.length && places.rows ? [write(places.rows, kept.map((window) => window.text))] : [];
  }

  private count(series: string, window: string | null): number {
    const { value } = this.evaluate(window === null ? `count(${series})` : `count(${series}, ${window})`);
    return value?.type === 'number' ? value.value : 0;
  }

  private readings(series: readonly string[], window: string | null): { least: number; most: number } {
    const counts = series.map((each) => this.count(each, window));
    return { least: Math.min(...counts), most: Math.max(...counts) };
  }

  private subject(named: NamedSeries): SummarySubject {
    const series = this.context.dataset.series.get(named.value);
    return series
      ? { kind: 'series', place: series.place, form: series.quantity, instrument: series.instrument, computed: false, formula: named.value }
      : { kind: 'series', place: named.computed?.places.length === 1 ? named.computed.places[0]! : null, form: named.computed?.form ?? named.value, instrument: null, computed: true, formula: named.value };
  }

  /** Treatment and control side of each kind of series that all tanks of both roles show. */
  private gaps(subjects: readonly SummarySubject[]): { readonly subject: SummarySubject; readonly treatment: string; readonly control: string; readonly after: SummarySubject }[] {
    const roles = (['treatment', 'control'] as const).map((role) => placesNamed(role, this.protocol));
    if (roles.some((tanks) => tanks.length === 0)) return [];
    const kinds = new Map<string, SummarySubject[]>();
    for (const each of subjects) kinds.set(`${each.form}@${each.instrument ?? ''}`, [...(kinds.get(`${each.form}@${each.instrument ?? ''}`) ?? []), each]);
    return [...kinds.values()].flatMap((alike) => {
      const first = alike[0]!;
      const side = (role: 'treatment' | 'control', tanks: readonly string[]): string | null => {
        const own = tanks.map((tank) => alike.find((each) => each.place === tank));
        if (own.some((each) => each === undefined)) return null;
        return own.length === 1 ? own[0]!.formula : first.computed ? null : `${role}.${first.form}${first.instrument === null ? '' : `@${first.instrument}`}`;
      };
      const [treatment, control] = [side('treatment', roles[0]!), side('control', roles[1]!)];
      return treatment === null || control === null ? []
        : [{ subject: { ...first, kind: 'gap' as const, place: null, formula: treatment }, treatment, control, after: alike.at(-1)! }];
    });
  }

  private byTank(window: Part | null): { rows: SummaryRow[]; columns: SummaryColumn[] } {
    const { of, show } = this.options;
    const subjects = of.map((each) => ({ named: each, subject: this.subject(each) }));
    const forms = [...new Map(subjects.map(({ subject }) => [`${subject.form}@${subject.instrument ?? ''}`, subject])).values()];
    const columns = forms.flatMap((subject) => show.map((name): SummaryColumn => ({ subject, function: name.text })));
    const alike = (a: SummarySubject, b: SummarySubject): boolean => a.form === b.form && a.instrument === b.instrument;
    const places = [...new Set(subjects.map(({ subject }) => subject.place ?? subject.formula))];
    const rows = places.map((place): SummaryRow => {
      const own = subjects.filter(({ subject }) => (subject.place ?? subject.formula) === place);
      return {
        kind: 'tank', name: place, window: null, instant: null, readings: this.readings(own.map(({ named }) => named.value), window?.text ?? null),
        cells: forms.flatMap((form) => {
          const found = own.find(({ subject }) => alike(subject, form));
          return show.map((name) => (found ? this.cell(partsOf(name, { ...found.named, text: found.named.value }, window), place) : blank));
        }),
      };
    });
    const gaps = this.gaps(subjects.map(({ subject }) => subject));
    if (gaps.length === 0) return { rows, columns };
    const cells = columns.map((column) => {
      const gap = gaps.find(({ subject }) => alike(subject, column.subject));
      return gap && !withoutGap.has(column.function) ? this.combined(gapFormula(column.function, gap, window?.text ?? null)) : blank;
    });
    return { rows: [...rows, { kind: 'gap', name: '', window: null, instant: null, readings: null, cells }], columns };
  }

  private byTime(rows: Exclude<SummaryRows, { kind: 'tanks' }>): { rows: SummaryRow[]; columns: SummaryColumn[] } {
    const { of, show } = this.options;
    const subjects = of.map((named) => ({ named, subject: this.subject(named) }));
    const gaps = this.gaps(subjects.map(({ subject }) => subject));
    const columns: SummaryColumn[] = [];
    const makers: ((row: RowParts) => SummaryCell)[] = [];
    const add = (subject: SummarySubject, name: Part, make: (row: RowParts) => SummaryCell): void => {
      columns.push({ subject, function: name.text });
      makers.push(make);
    };
    for (const { named, subject } of subjects) {
      const series: Part = { ...named, text: named.value };
      for (const name of show) {
        add(subject, name, (row) => (row.from ? this.changeCell(name.text, series.text, row) : this.cell(partsOf(name, series, row.part), row.part.text)));
      }
      for (const gap of gaps.filter(({ after }) => after === subject)) {
        for (const name of show.filter((each) => !withoutGap.has(each.text))) add(gap.subject, name, (row) => this.gapCell(name.text, gap, row));
      }
    }
    const row = (kind: SummaryRow['kind'], parts: RowParts, instant: number | null = null): SummaryRow => ({
      kind, name: parts.part.text, window: parts.window, instant, cells: makers.map((make) => make(parts)),
      readings: instant !== null || parts.from ? null : this.readings(of.map((each) => each.value), parts.part.text),
    });
    const plain = (window: NamedWindow): RowParts => ({ part: window, window, from: null });
    if (rows.kind === 'times') return { columns, rows: rows.moments.map((moment) => row('time', { part: moment, window: null, from: null }, moment.instant)) };
    if (rows.kind !== 'before-after') return { columns, rows: rows.windows.map((window) => row('window', plain(window))) };
    return { columns, rows: [row('before', plain(rows.before)), row('after', plain(rows.after)), row('change', { part: rows.after, window: null, from: rows.before })] };
  }

  private changeCell(name: string, series: string, row: RowParts): SummaryCell {
    return withoutGap.has(name) ? blank : this.combined(changeFormula(name, series, row));
  }

  /** Treatment minus control in a row; in the row of changes the contrast, where before is the baseline and it can be computed. */
  private gapCell(name: string, gap: { readonly subject: SummarySubject; readonly treatment: string; readonly control: string }, row: RowParts): SummaryCell {
    if (!row.from) return this.combined(gapFormula(name, gap, row.part.text));
    if (name === 'mean' && !gap.subject.computed && gap.subject.instrument === null && /^baseline(?:-\d+)?$/.test(row.from.phase ?? '')) {
      const contrast = this.combined(`contrast(${gap.subject.form}, ${row.part.text})`);
      if (contrast.value) return { ...contrast, contrast: true };
    }
    return this.combined(`(${changeFormula(name, gap.treatment, row)}) - (${changeFormula(name, gap.control, row)})`);
  }
}

/** What a row puts into the formulas of its cells; `from` is the stretch before, in a row of changes. */
interface RowParts { readonly part: Part; readonly window: NamedWindow | null; readonly from: NamedWindow | null }

const call = (name: string, series: string, stretch: string | null): string => `${name}(${series}${stretch === null ? '' : `, ${stretch}`})`;

function gapFormula(name: string, gap: { readonly treatment: string; readonly control: string }, stretch: string | null): string {
  return `${call(name, gap.treatment, stretch)} - ${call(name, gap.control, stretch)}`;
}

function changeFormula(name: string, series: string, row: RowParts): string {
  return `${call(name, series, row.part.text)} - ${call(name, series, row.from!.text)}`;
}

/** Computes the table of a `summary` block. */
export function makeSummary(options: SummaryOptions, context: FormulaContext): { readonly table: SummaryTable; readonly problems: readonly Problem[] } {
  const maker = new SummaryMaker(options, context, context.protocol!);
  const table = maker.make();
  return { table, problems: maker.problems };
}
