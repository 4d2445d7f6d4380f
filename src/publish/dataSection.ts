// Data and plan: the readings as they were recorded, the note's text and its hash, so that a stranger can check the post.
import { unitWords } from '../words/units.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { RenderContext } from '../render/context.ts';
import { formatInstant } from '../time/text.ts';
import { element, escapeHtml, type Html } from '../render/html.ts';
import { postWords } from '../words/post.ts';
import { embedHtml, type PostSource } from './embed.ts';

const mostRows = 5000;

function rawTable(table: ReadingsTable, index: number, several: boolean, context: RenderContext): Html {
  const zone = context.note.protocol!.zone;
  const words = postWords(context.language).data;
  const remarks = table.rows.some((row) => row.remark);
  const head = element('tr', {}, element('th', { scope: 'col' }, words.time), ...table.columns.map((column) => element('th', { scope: 'col' }, escapeHtml(column.id),
    column.unit && column.unit.print !== '1' ? `<br>${escapeHtml(unitWords(column.unit.print, context.language))}` : '')), ...(remarks ? [element('th', { scope: 'col' }, words.remark)] : []));
  const rows = table.rows.slice(0, mostRows).map((row) => element('tr', {},
    element('th', { scope: 'row' }, row.instant === null ? escapeHtml(row.timeText) : element('time', { datetime: formatInstant(row.instant, zone) }, escapeHtml(formatInstant(row.instant, zone).slice(0, 16).replace('T', ' ')))),
    ...row.cells.map((cell) => element('td', { class: 'evenwater-number' }, escapeHtml(cell.text))), ...(remarks ? [element('td', { class: 'remark' }, escapeHtml(row.remark ?? ''))] : [])));
  const name = table.name ?? (several ? words.block(index + 1) : null);
  const caption = words.caption({
    name, file: table.file ? { path: table.file.path, hash: table.file.sha256 || null } : null,
    shown: table.rows.length > mostRows ? { first: mostRows, of: table.rows.length } : null,
  });
  return element('div', { class: 'evenwater-table raw' }, element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': caption },
    element('table', {}, element('caption', {}, element('span', { class: 'evenwater-caption' }, escapeHtml(caption))), element('thead', {}, head), element('tbody', {}, ...rows))));
}

export function dataSectionHtml(context: RenderContext, source: PostSource): Html {
  const { note } = context;
  const { protocol } = note;
  const words = postWords(context.language).data;
  const tables = note.tables.filter((table) => table.rows.length > 0);
  const fact = (name: string, value: Html): Html => element('dt', {}, name) + element('dd', {}, value);
  const facts = [
    ...source.files.map((file) => fact(file.role === 'note' ? words.note : escapeHtml(file.path), element('span', { class: 'hash' }, `SHA-256 ${file.sha256}`))),
    ...(protocol ? [fact(words.times, escapeHtml(words.zone(protocol.zone.name === 'UTC' ? null : protocol.zone.name)))] : []),
    ...(protocol?.licence ? [fact(words.licence, escapeHtml(protocol.licence.value))] : []),
    ...(note.accepted.length > 0 ? [fact(words.accepted, escapeHtml(words.acceptedBy([...new Set(note.accepted.map((each) => each.code))])))] : []),
    fact(words.madeWith, escapeHtml(`Evenwater ${source.toolVersion}`)),
  ].join('');
  return element('section', { class: 'data evenwater-block', 'aria-labelledby': 'data' }, element('h2', { id: 'data' }, words.heading),
    element('dl', { class: 'facts' }, facts), embedHtml(source.files, words),
    tables.length > 0 ? element('p', {}, escapeHtml(words.key)) : '', ...tables.map((table, index) => rawTable(table, index, tables.length > 1, context)),
    element('details', { class: 'whole' }, element('summary', {}, words.whole), element('pre', { class: 'note-text', tabindex: 0 }, '\n', escapeHtml(note.text))));
}
