// Data and plan: the readings as they were recorded, the note's text and its hash, so that a stranger can check the post.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { ReadingsTable } from '../readings/types.ts';
import type { RenderContext } from '../render/context.ts';
import { formatInstant } from '../time/text.ts';
import { element, escapeHtml, type Html } from '../render/html.ts';
import { embedHtml, type PostSource } from './embed.ts';

/** SHA-256 of a text as UTF-8, in hexadecimal. */
export function textHash(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

const mostRows = 5000;

function rawTable(table: ReadingsTable, index: number, several: boolean, context: RenderContext): Html {
  const zone = context.note.protocol!.zone;
  const remarks = table.rows.some((row) => row.remark);
  const head = element('tr', {}, element('th', { scope: 'col' }, 'time'), ...table.columns.map((column) => element('th', { scope: 'col' }, escapeHtml(column.id),
    column.unit && column.unit.print !== '1' ? `<br>${escapeHtml(column.unit.print)}` : '')), ...(remarks ? [element('th', { scope: 'col' }, 'remark')] : []));
  const rows = table.rows.slice(0, mostRows).map((row) => element('tr', {},
    element('th', { scope: 'row' }, row.instant === null ? escapeHtml(row.timeText) : element('time', { datetime: formatInstant(row.instant, zone) }, escapeHtml(formatInstant(row.instant, zone).slice(0, 16).replace('T', ' ')))),
    ...row.cells.map((cell) => element('td', { class: 'evenwater-number' }, escapeHtml(cell.text))), ...(remarks ? [element('td', { class: 'remark' }, escapeHtml(row.remark ?? ''))] : [])));
  const name = table.name ?? (several ? `block ${index + 1}` : null);
  const file = table.file ? ` From ${table.file.path}${table.file.sha256 ? `, SHA-256 ${table.file.sha256}` : ''}.` : '';
  const more = table.rows.length > mostRows ? ` The first ${mostRows} of ${table.rows.length} rows.` : '';
  const caption = `Readings as recorded${name ? `, ${name}` : ''}.${file}${more}`;
  return element('div', { class: 'evenwater-table raw' }, element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': caption },
    element('table', {}, element('caption', {}, element('span', { class: 'evenwater-caption' }, escapeHtml(caption))), element('thead', {}, head), element('tbody', {}, ...rows))));
}

export function dataSectionHtml(context: RenderContext, source: PostSource): Html {
  const { note } = context;
  const { protocol } = note;
  const tables = note.tables.filter((table) => table.rows.length > 0);
  const fact = (name: string, value: Html): Html => element('dt', {}, name) + element('dd', {}, value);
  const facts = [
    ...source.files.map((file) => fact(file.role === 'note' ? 'Note' : escapeHtml(file.path), element('span', { class: 'hash' }, `SHA-256 ${file.sha256}`))),
    ...(protocol ? [fact('Times', escapeHtml(protocol.zone.name === 'UTC' ? 'UTC' : `local time in ${protocol.zone.name}`))] : []),
    ...(protocol?.licence ? [fact('Licence', escapeHtml(protocol.licence.value))] : []),
    ...(note.accepted.length > 0 ? [fact('Accepted', escapeHtml(`by the author, who looked at these warnings and lets them stand: ${[...new Set(note.accepted.map((each) => each.code))].join(', ')}`))] : []),
    fact('Made with', escapeHtml(`Evenwater ${source.toolVersion}`)),
  ].join('');
  const key = 'In the table below a value in brackets was left out of every calculation, “a->b” is a correction with its first value kept, “?” marks a doubtful reading, “-” a reading not taken, “<” and “>” a value outside the instrument’s range, and “a/b” repeats taken at once.';
  return element('section', { class: 'data evenwater-block', 'aria-labelledby': 'data' }, element('h2', { id: 'data' }, 'Data and plan'),
    element('dl', { class: 'facts' }, facts), embedHtml(source.files),
    tables.length > 0 ? element('p', {}, escapeHtml(key)) : '', ...tables.map((table, index) => rawTable(table, index, tables.length > 1, context)),
    element('details', { class: 'whole' }, element('summary', {}, 'The note as it was written'), element('pre', { class: 'note-text', tabindex: 0 }, '\n', escapeHtml(note.text))));
}
