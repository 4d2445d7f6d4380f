// A cell of a readings table: the reading as it was recorded, with its flags told by shape and in words.
import type { Protocol } from '../protocol/types.ts';
import type { Cell, CellState } from '../readings/types.ts';
import { decimalText } from '../charts/chartWords.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import type { PageWords } from '../words/page.ts';
import { element, escapeHtml, type Html } from './html.ts';

/** `6.42, 6.45`; where the comma is the decimal mark, `6,42; 6,45`. */
function repeatsText(repeats: readonly number[], protocol: Protocol): string {
  const mark = decimalMarkOf(protocol.language);
  return repeats.map((each) => String(each).replace('.', mark)).join(mark === ',' ? '; ' : ', ');
}

/** What a cell's text says, with the decimal mark of the note's language. */
function recordedText(state: CellState, protocol: Protocol): string {
  return state.kind === 'word' || state.kind === 'unreadable' ? state.text : state.text.replace(/(?<=\d)\.(?=\d)/gu, decimalMarkOf(protocol.language));
}

/** A cell as it was recorded, with its flags told by shape and in words. */
export function cellHtml(cell: Cell, protocol: Protocol, { readings: words }: PageWords): Html {
  const state = cell.state;
  const number = (value: number, decimals: number): string => decimalText(value, Math.max(0, decimals), protocol);
  const text = state.kind === 'number' && state.value !== null
    ? state.repeats.length > 1 ? number(state.value, state.decimals + 1) : number(state.value, state.decimals)
    : state.kind === 'word' ? state.word ?? state.text : state.kind === 'missing' ? '–' : recordedText(state, protocol);
  let html = escapeHtml(text);
  if (state.kind === 'missing') html = element('span', { title: words.notTaken }, html);
  if (state.repeats.length > 1) html = element('span', { title: words.meanOfReadings(state.repeats.length, repeatsText(state.repeats, protocol)) }, html, element('span', { class: 'evenwater-flag' }, words.meanOf(state.repeats.length)));
  if (cell.leftOut) html = element('s', { title: words.leftOutOfAll }, html) + element('span', { class: 'evenwater-flag' }, words.leftOut);
  if (cell.doubtful) html += element('span', { class: 'evenwater-flag evenwater-sign-flag', title: words.doubtful }, '?');
  if (cell.earlier.length > 0) {
    const first = cell.earlier.map((each) => recordedText(each, protocol)).join(' → ');
    html += element('span', { class: 'evenwater-flag evenwater-corrected' }, `${words.first} `, element('del', {}, escapeHtml(first)));
  }
  if (state.kind === 'unreadable') html = element('span', { class: 'evenwater-loud', title: words.cannotBeRead }, html);
  return html;
}
