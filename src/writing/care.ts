// The methods' paragraph on what happened to single readings: missing, left out, doubtful, corrected, outside the range.
import type { Note } from '../experiment/types.ts';
import { nothingRead } from '../experiment/waiting.ts';
import type { Protocol } from '../protocol/types.ts';
import { flag, type Series } from '../dataset/types.ts';
import type { CellState } from '../readings/types.ts';
import { printedMinus } from '../quantities/format.ts';
import type { Instant } from '../time/instant.ts';
import { inUnits, isLong, momentWords, seriesName, withMark, wordsOf } from './facts.ts';
import { readTimes } from './sampling.ts';
import type { RunPieces } from './figures.ts';
import type { Run } from './types.ts';

const mostNamed = 4;

/** The remark of a row, without the column's name in front of it. */
function remarkFor(remark: string | null, series: Pick<Series, 'id' | 'place' | 'quantity'>): string | null {
  if (remark === null) return null;
  const bare = remark.trim();
  for (const name of [series.id, `${series.place}.${series.quantity}`]) {
    if (bare.startsWith(`${name} `)) return bare.slice(name.length).replace(/^[\s:,-]+/, '').trim();
  }
  return bare === '' ? null : bare;
}

interface Entry { readonly series: Series; readonly index: number; readonly time: Instant }

/** The sentences on how the readings were kept: what is missing, left out, doubtful, corrected, outside the instruments' range. */
export function describeCare(note: Note, protocol: Protocol): RunPieces[] {
  if (nothingRead(note.dataset)) return [];
  const { care: careWords } = wordsOf(protocol);
  const times = readTimes(note);
  const teller: Teller = { protocol, careWords, long: isLong(protocol, times) };
  const all: Entry[] = [...note.dataset.series.values()].flatMap((series) => [...series.times].map((time, index) => ({ series, index, time })));
  const leftOut = all.filter((entry) => has(entry, flag.leftOut));
  const doubtful = all.filter((entry) => has(entry, flag.doubtful) && !has(entry, flag.leftOut));
  const corrected = all.filter(isCorrected);
  const outside = all.filter((entry) => has(entry, flag.below | flag.above));
  const repeated = all.filter((entry) => has(entry, flag.repeated));
  const recorded = (entries: readonly Entry[]): string[] => entries.map((entry) => told(entry, stateText(sourceOf(entry)?.cell.state ?? null, entry.series, protocol), teller));
  return [
    ...missingSentences(note, all.filter((entry) => has(entry, flag.missing) && !isCorrected(entry) && times.includes(entry.time) && !wholeRowMissing(entry)), teller),
    ...sentence(recorded(leftOut), (items) => careWords.leftOut(items)),
    ...sentence(recorded(doubtful), (items) => careWords.doubtful(items)),
    ...sentence(corrected.map((entry) => correction(entry, teller)), (items) => careWords.corrected(items)),
    ...sentence(recorded(outside), (items) => careWords.outside(items)),
    ...sentence(repeated, ({ length }) => careWords.repeated({ count: length })),
    ...timeCorrections(note, teller),
    ...(leftOut.length + doubtful.length + corrected.length === 0 ? [careWords.clean<Run>()] : []),
  ];
}

/** How it is told; `long` where times need their date. */
interface Teller { readonly protocol: Protocol; readonly careWords: ReturnType<typeof wordsOf>['care']; readonly long: boolean }

/** A sentence over some items; none where there are none. */
const sentence = <Item>(items: readonly Item[], say: (items: readonly Item[]) => RunPieces): RunPieces[] => (items.length === 0 ? [] : [say(items)]);

const sourceOf = ({ series, index }: Entry): Series['sources'][number] | undefined => series.sources[index];
const has = ({ series, index }: Entry, flags: number): boolean => (series.flags[index]! & flags) !== 0;
const isCorrected = (entry: Entry): boolean => (sourceOf(entry)?.cell.earlier.length ?? 0) > 0;

/** True where the row holds nothing at all: then the whole time was missed, and the deviations say so. */
function wholeRowMissing(entry: Entry): boolean {
  const row = sourceOf(entry)?.row;
  return row !== undefined && row.cells.length > 1 && row.cells.every((cell) => cell.state.kind === 'missing');
}

/** One reading: what, when, what was recorded (null: nothing is said of it), and the row's remark. */
function told(entry: Entry, recorded: string | null, { protocol, careWords, long }: Teller): string {
  return careWords.one({
    what: seriesName(entry.series, protocol), time: momentWords(entry.time, protocol, long), recorded, remark: remarkFor(sourceOf(entry)?.row.remark ?? null, entry.series),
  });
}

/** Missing readings one by one; of a series with many, how many. */
function missingSentences(note: Note, missing: readonly Entry[], teller: Teller): RunPieces[] {
  const { protocol, careWords } = teller;
  const items = [...note.dataset.series.values()].flatMap((series) => {
    const own = missing.filter((entry) => entry.series === series);
    return own.length > mostNamed ? [careWords.missingMany({ what: seriesName(series, protocol), count: own.length, of: series.times.length })] : own.map((entry) => told(entry, null, teller));
  });
  return sentence(items, () => (missing.length === items.length ? careWords.missing(items) : careWords.missingSome(items)));
}

/** A corrected reading with all that it was before. */
function correction(entry: Entry, { protocol, careWords, long }: Teller): string {
  const source = sourceOf(entry)!;
  return careWords.correction({
    what: seriesName(entry.series, protocol), time: momentWords(entry.time, protocol, long), remark: remarkFor(source.row.remark, entry.series),
    states: [...source.cell.earlier, source.cell.state].map((state, place) =>
      state.kind === 'missing' ? (place === 0 ? careWords.foundLate : careWords.withdrawn) : stateText(state, entry.series, protocol)),
  });
}

/** Rows whose time was corrected. */
function timeCorrections(note: Note, { protocol, careWords, long }: Teller): RunPieces[] {
  const rows = note.tables.flatMap((table) => table.rows.filter((row) => row.earlierTimes.length > 0));
  const items = rows.map((row) => careWords.timeCorrection({
    states: [...row.earlierTimes, row.instant === null ? row.timeText : momentWords(row.instant, protocol, long)], remark: row.remark,
  }));
  return sentence(items, () => careWords.timesCorrected(items));
}

/** `7.02 mg/L`, `below 0.05 mg/L`, `calm`. */
function stateText(state: CellState | null, series: Series, protocol: Protocol): string {
  if (!state) return '';
  const { care: careWords } = wordsOf(protocol);
  const unit = series.unit.symbol === '1' || series.unit.kind === 'ph' ? '' : ` ${inUnits(series.unit.print, protocol)}`;
  const amount = (): string => withMark(digitsIn(state), protocol) + unit;
  switch (state.kind) {
    case 'number': return state.repeats.length > 1 ? withMark(state.text.replace(/[()?\s]/g, '').split('/').join(' / '), protocol) + unit : amount();
    case 'below': return careWords.below(amount());
    case 'above': return careWords.above(amount());
    case 'word': return careWords.word(state.word ?? state.text);
    case 'missing': return careWords.foundLate;
    case 'unreadable': return careWords.word(state.text);
  }
}

function digitsIn(state: CellState): string {
  return state.value === null ? state.text : printedMinus(state.value.toFixed(Math.max(0, Math.min(12, state.decimals))));
}
