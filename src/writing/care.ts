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

export function describeCare(note: Note, protocol: Protocol): RunPieces[] {
  const { care: careWords } = wordsOf(protocol);
  const times = readTimes(note);
  const long = isLong(protocol, times);
  const all: Entry[] = [...note.dataset.series.values()].flatMap((series) => [...series.times].map((time, index) => ({ series, index, time })));
  if (nothingRead(note.dataset)) return [];
  const source = ({ series, index }: Entry): Series['sources'][number] | undefined => series.sources[index];
  const bits = ({ series, index }: Entry): number => series.flags[index]!;
  const say = (entry: Entry, recorded: boolean): string => careWords.one({
    what: seriesName(entry.series, protocol), time: momentWords(entry.time, protocol, long), recorded: recorded ? recordedText(entry) : null,
    remark: remarkFor(source(entry)?.row.remark ?? null, entry.series),
  });
  const recordedText = (entry: Entry): string => stateText(source(entry)?.cell.state ?? null, entry.series, protocol);
  const sentences: RunPieces[] = [];

  const missing = all.filter((entry) => (bits(entry) & flag.missing) !== 0 && (source(entry)?.cell.earlier.length ?? 0) === 0 && times.includes(entry.time) && !wholeRowMissing(entry));
  const missingItems = [...note.dataset.series.values()].flatMap((series) => {
    const own = missing.filter((entry) => entry.series === series);
    return own.length > mostNamed ? [careWords.missingMany({ what: seriesName(series, protocol), count: own.length, of: series.times.length })] : own.map((entry) => say(entry, false));
  });
  const counted = missing.length === missingItems.length;
  if (missingItems.length > 0) sentences.push(counted ? careWords.missing(missingItems) : careWords.missingSome(missingItems));

  const leftOut = all.filter((entry) => (bits(entry) & flag.leftOut) !== 0);
  const doubtful = all.filter((entry) => (bits(entry) & flag.doubtful) !== 0 && (bits(entry) & flag.leftOut) === 0);
  const corrected = all.filter((entry) => (source(entry)?.cell.earlier.length ?? 0) > 0);
  const outside = all.filter((entry) => (bits(entry) & (flag.below | flag.above)) !== 0);
  if (leftOut.length > 0) sentences.push(careWords.leftOut(leftOut.map((entry) => say(entry, true))));
  if (doubtful.length > 0) sentences.push(careWords.doubtful(doubtful.map((entry) => say(entry, true))));
  if (corrected.length > 0) {
    sentences.push(careWords.corrected(corrected.map((entry) => careWords.correction({
      what: seriesName(entry.series, protocol), time: momentWords(entry.time, protocol, long), remark: remarkFor(source(entry)?.row.remark ?? null, entry.series),
      states: [...(source(entry)?.cell.earlier ?? []), source(entry)!.cell.state].map((state, place) =>
        state.kind === 'missing' ? (place === 0 ? careWords.foundLate : careWords.withdrawn) : stateText(state, entry.series, protocol)),
    }))));
  }
  if (outside.length > 0) sentences.push(careWords.outside(outside.map((entry) => say(entry, true))));
  const repeated = all.filter((entry) => (bits(entry) & flag.repeated) !== 0).length;
  if (repeated > 0) sentences.push(careWords.repeated({ count: repeated }));
  const shiftedRows = note.tables.flatMap((table) => table.rows.filter((row) => row.earlierTimes.length > 0));
  if (shiftedRows.length > 0) {
    sentences.push(careWords.timesCorrected(shiftedRows.map((row) => careWords.timeCorrection({
      states: [...row.earlierTimes, row.instant === null ? row.timeText : momentWords(row.instant, protocol, long)], remark: row.remark,
    }))));
  }
  if (leftOut.length + doubtful.length + corrected.length === 0) sentences.push(careWords.clean());
  return sentences;

  /** True where the row holds nothing at all: then the whole time was missed, and the deviations say so. */
  function wholeRowMissing(entry: Entry): boolean {
    const row = source(entry)?.row;
    return row !== undefined && row.cells.length > 1 && row.cells.every((cell) => cell.state.kind === 'missing');
  }
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
