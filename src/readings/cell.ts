// The grammar of one cell: readings, corrections, marks, repeats, limits of the instrument, words of a scale.
// Nothing here knows where the cell stands; offsets are inside the cell's own text.
import type { CellState } from './types.ts';

/** What a cell says, before it is put into a row. */
export interface CellReading {
  readonly state: CellState;
  readonly earlier: readonly CellState[];
  readonly leftOut: boolean;
  readonly doubtful: boolean;
  /** The cell with decimal points for its decimal commas; null when it has none. */
  readonly withPoints: string | null;
  /** Both meanings of a number such as `1,013`, or the number without its thousands marks; null when there is none. */
  readonly thousands: readonly string[] | null;
  /** A spelling that can be read and that surely means the same; null when there is none. */
  readonly rewrite: string | null;
}

/** Options that come from the column. */
export interface CellColumn {
  /** Words of the quantity's scale, or null for a quantity measured as a number. */
  readonly scale: readonly string[] | null;
  /** Decimal mark of a data file; in a note's table a comma is read and reported. */
  readonly decimal?: '.' | ',';
}

const plainNumber = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d{1,3})?$/u;
const commaNumber = /^[+-]?\d+,\d+$/u;
const perhapsThousands = /^[+-]?[1-9]\d{0,2},\d{3}$/u;
const thousandsNumber = /^[+-]?(?:\d{1,3}(?:['’]\d{3})+(?:[.,]\d+)?|\d{1,3}(?:,\d{3})+\.\d+|\d{1,3}(?:\.\d{3})+,\d+|\d{1,3}(?:,\d{3}){2,}|\d{1,3}(?:\.\d{3}){2,})$/u;

interface AtomReading { readonly state: CellState; readonly withPoints: string | null; readonly thousands: readonly string[] | null }

/** A word as it is compared: lower case, hyphens for spaces. */
export function scaleWord(text: string): string {
  return text.trim().toLowerCase().replace(/[\s_]+/gu, '-');
}

function stateOf(kind: CellState['kind'], text: string, rest: Partial<CellState> = {}): CellState {
  return { kind, value: null, repeats: [], decimals: -1, word: null, text, ...rest };
}

/** Digits after the decimal mark that the text shows: `7.31` has 2, `1.2e-3` has 4. */
function decimalsOf(text: string): number {
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e');
  const point = mantissa.indexOf('.');
  const digits = point < 0 ? 0 : mantissa.length - point - 1;
  return Math.min(20, Math.max(0, digits - Number(exponent)));
}

/** A number as a note or a file writes it; null when it is none or too large to hold. */
function readNumber(text: string, decimal: '.' | ','): { value: number; decimals: number; withPoint: string | null } | null {
  const comma = commaNumber.test(text);
  const written = comma ? text.replace(',', '.') : text;
  if (!plainNumber.test(written)) return null;
  const value = Number(written);
  if (!Number.isFinite(value)) return null;
  return { value: value === 0 ? 0 : value, decimals: decimalsOf(written), withPoint: comma && decimal === '.' ? written : null };
}

/** What a number with thousands marks could mean. */
function thousandsMeanings(text: string, decimal: '.' | ','): string[] | null {
  if (perhapsThousands.test(text) && decimal === '.') return [text.replace(',', ''), text.replace(',', '.')];
  if (!thousandsNumber.test(text)) return null;
  const last = Math.max(text.lastIndexOf(','), text.lastIndexOf('.'));
  const marks = text.match(/[.,'’]/gu) ?? [];
  const same = marks.every((mark) => mark === marks[0]);
  if (last < 0 || (same && marks.length > 1) || marks[0] === text[last]) return [text.replace(/[.,'’]/gu, '')];
  return [`${text.slice(0, last).replace(/[.,'’]/gu, '')}.${text.slice(last + 1)}`];
}

function readAtom(text: string, column: CellColumn): AtomReading {
  const decimal = column.decimal ?? '.';
  if (text === '-') return { state: stateOf('missing', text), withPoints: null, thousands: null };
  if (column.scale !== null) {
    const index = column.scale.findIndex((word) => scaleWord(word) === text.replace(/_/gu, '-'));
    if (index >= 0) return { state: stateOf('word', text, { word: column.scale[index]! }), withPoints: null, thousands: null };
    return { state: stateOf('unreadable', text), withPoints: null, thousands: null };
  }
  const limit = text.startsWith('<') ? 'below' : text.startsWith('>') ? 'above' : null;
  const parts = limit ? [text.slice(1)] : text.split('/');
  const numbers: { value: number; decimals: number; withPoint: string | null }[] = [];
  for (const part of parts) {
    const thousands = thousandsMeanings(part, decimal);
    if (thousands) {
      const whole = thousands.map((meaning) => text.replace(part, meaning));
      return { state: stateOf('unreadable', text), withPoints: null, thousands: whole };
    }
    const number = readNumber(part, decimal);
    if (!number) return { state: stateOf('unreadable', text), withPoints: null, thousands: null };
    numbers.push(number);
  }
  const withPoints = numbers.some((number) => number.withPoint !== null) ? text.replace(/,/gu, '.') : null;
  const decimals = Math.max(...numbers.map((number) => number.decimals));
  const values = numbers.map((number) => number.value);
  if (limit) return { state: stateOf(limit, text, { value: values[0]!, decimals }), withPoints, thousands: null };
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const value = values.length === 1 ? values[0]! : mean;
  if (!Number.isFinite(value)) return { state: stateOf('unreadable', text), withPoints: null, thousands: null };
  return { state: stateOf('number', text, { value, decimals, repeats: values.length > 1 ? values : [] }), withPoints, thousands: null };
}

/** Takes `(…)` and `?` off, in either order, each at most once. */
function takeMarks(text: string): { inner: string; leftOut: boolean; doubtful: boolean } {
  let inner = text;
  let leftOut = false;
  let doubtful = false;
  for (let turn = 0; turn < 3; turn += 1) {
    if (!doubtful && inner.length > 1 && inner.endsWith('?')) { doubtful = true; inner = inner.slice(0, -1); continue; }
    if (!leftOut && /^\([^()]+\)$/u.test(inner)) { leftOut = true; inner = inner.slice(1, -1); continue; }
    break;
  }
  return { inner, leftOut, doubtful };
}

/** A spelling of the same cell that the grammar knows, for signs that keyboards and spreadsheets put in. */
function respell(text: string): string | null {
  const plain = text.replace(/[→⟶➔]|=>/gu, '->').replace(/[−‐‑‒–—]/gu, '-');
  return plain === text ? null : plain;
}

/**
 * Reads one cell. Never fails: what cannot be read is a state `unreadable` that keeps the text.
 * Forms may combine: `(7.3?)`, `6.4->6.5?`, `(6.4->6.5)`, `-->8.26`, `8.28->-`, `<0.05?`, `6.42/6.45->6.43`.
 */
export function readCell(text: string, column: CellColumn): CellReading {
  if (column.scale === null && simple.test(text)) return simpleReading(text);
  const chain = takeMarks(text);
  const texts = chain.inner.split('->');
  const states: CellState[] = [];
  let leftOut = chain.leftOut;
  let doubtful = chain.doubtful;
  let withPoints = false;
  let thousands: string[] | null = null;
  const pointed: string[] = [];
  texts.forEach((part, index) => {
    const marks = takeMarks(part);
    const atom = readAtom(marks.inner, column);
    const last = index === texts.length - 1;
    // Doubt says something about a reading; on "not taken" it says nothing, and the cell is not understood.
    const odd = atom.state.kind === 'missing' && (marks.doubtful || (last && chain.doubtful));
    states.push(odd ? { ...atom.state, kind: 'unreadable', text: part } : { ...atom.state, text: part });
    if (last) { leftOut ||= marks.leftOut; doubtful ||= marks.doubtful; }
    if (atom.withPoints !== null) withPoints = true;
    pointed.push(atom.withPoints === null ? part : part.replace(/,/gu, '.'));
    if (atom.thousands && last) {
      thousands = atom.thousands.map((meaning) => text.replace(part, part.replace(marks.inner, meaning)));
    }
  });
  const unreadable = states.some((state) => state.kind === 'unreadable');
  const spelling = unreadable && !thousands ? respell(text) : null;
  const rewrite = spelling !== null && readable(spelling, column) ? spelling : null;
  return {
    state: states.at(-1)!, earlier: states.slice(0, -1), leftOut, doubtful,
    withPoints: withPoints ? text.replace(chain.inner, pointed.join('->')) : null, thousands, rewrite,
  };
}

/** By far the most cells: a short plain number, read without the detours. */
const simple = /^-?\d{1,9}(?:\.\d{1,9})?$/u;
const none: readonly never[] = [];
function simpleReading(text: string): CellReading {
  const point = text.indexOf('.');
  const state: CellState = { kind: 'number', value: Number(text) + 0, repeats: none, decimals: point < 0 ? 0 : text.length - point - 1, word: null, text };
  return { state, earlier: none, leftOut: false, doubtful: false, withPoints: null, thousands: null, rewrite: null };
}

/** True when every part of the cell can be read. */
function readable(text: string, column: CellColumn): boolean {
  if (respell(text) !== null) return false;
  const reading = readCell(text, column);
  return reading.thousands === null && [reading.state, ...reading.earlier].every((state) => state.kind !== 'unreadable');
}
