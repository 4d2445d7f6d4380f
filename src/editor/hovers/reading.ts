// Hover on a reading or on a column's head: the value in words, what it was before, the step since the reading above, the instrument.
import * as vscode from 'vscode';
import { inOtherUnits, readingFacts } from '../../assist/explain.ts';
import { signed } from '../../assist/lineEnds.ts';
import type { Note } from '../../experiment/types.ts';
import type { MeasuredQuantity } from '../../protocol/types.ts';
import { instrumentFigure } from '../../formula/show.ts';
import { formatNumber, rateDecimals } from '../../quantities/format.ts';
import { differenceUnit } from '../../quantities/units.ts';
import type { Cell, CellState, ReadingColumn, ReadingRow } from '../../readings/types.ts';
import { hour } from '../../time/instant.ts';
import { formatClock, formatDate } from '../../time/text.ts';
import type { Find } from '../hovers.ts';
import { helpWords } from '../language.ts';
import { contains } from '../places.ts';
import { appendChart } from './series.ts';
import { cellAt, tableAt, type FoundCell } from './findCell.ts';
import { literally } from './literally.ts';

export const hoverReading: Find = (note, offset) => {
  const found = cellAt(note, offset);
  if (found) return { range: found.cell.range, text: cellText(note, found) };
  const table = tableAt(note, offset);
  const index = table?.columns.findIndex((column) => contains(column.range, offset)) ?? -1;
  const column = table?.columns[index];
  if (!table || !column) return null;
  const readings = table.rows.filter((row) => row.cells[index]?.state.kind === 'number').length;
  const text = heading(note, column);
  text.appendMarkdown(literally(readings === 1 ? vscode.l10n.t('1 reading') : vscode.l10n.t('{0} readings', readings)));
  return { range: column.range, text };
};

function heading(note: Note, column: ReadingColumn): vscode.MarkdownString {
  const place = note.protocol?.tanks.find((tank) => tank.id === column.place)?.label ?? column.place;
  const quantity = measureOf(note, column);
  const text = new vscode.MarkdownString().appendMarkdown(`**${literally(helpWords.seriesDetail(quantity?.what?.value ?? column.quantity, place))}**`);
  const instrument = [column.instrument ?? quantity?.with?.value, quantity?.accuracy ? `± ${instrumentFigure(quantity.accuracy)}` : null].filter(Boolean).join(' ');
  if (instrument) text.appendMarkdown(literally(` · ${instrument}`));
  return text.appendMarkdown('\n\n');
}

function cellText(note: Note, { table, row, column, cell, index }: FoundCell): vscode.MarkdownString {
  const text = heading(note, column);
  const zone = note.protocol!.zone;
  const when = row.instant === null ? row.timeText : `${formatDate(row.instant, zone)} ${formatClock(row.instant, zone)}`;
  text.appendMarkdown(literally(`${when}: ${stateText(cell.state, column)}`));
  const before = table.rows.slice(0, table.rows.indexOf(row)).findLast((each) => each.cells[index]?.state.kind === 'number' && !each.cells[index].leftOut);
  const step = !cell.leftOut && before && row.instant !== null && before.instant !== null ? stepText(cell, before.cells[index]!, row.instant - before.instant, column) : null;
  if (step) text.appendMarkdown(literally(` · ${step}`));
  const computed = computedOf(note, row, column, cell);
  // One paragraph, so that the chart below stays in view.
  for (const remark of [...(computed.length > 0 ? [computed.join(' · ')] : []), ...remarksOn(cell, column)]) text.appendMarkdown(`\n\n${literally(remark)}`);
  if (row.remark) text.appendMarkdown(`\n\n*${literally(row.remark)}*`);
  const series = note.dataset.series.get(column.id);
  if (series) appendChart(text, note, series, row.instant);
  return text;
}

/** The uncertainty of a number, and the saturation that a reading of oxygen means in its water. */
function computedOf(note: Note, row: ReadingRow, column: ReadingColumn, cell: Cell): string[] {
  if (cell.state.kind !== 'number' || cell.leftOut) return [];
  const { uncertainty, saturation } = readingFacts(note, column, row);
  const others = inOtherUnits(note, column, cell);
  return [
    ...(others.length > 0 ? [vscode.l10n.t('In other units: {0}', others.join(', '))] : []),
    ...(uncertainty ? [vscode.l10n.t('With the instruments’ 95 % uncertainty: {0}', uncertainty)] : []),
    ...(saturation ? [vscode.l10n.t('Saturation: {0}', saturation)] : []),
  ];
}

function remarksOn(cell: Cell, column: ReadingColumn): string[] {
  const remarks: string[] = [];
  if (cell.leftOut) remarks.push(vscode.l10n.t('Left out of every calculation, and kept in the table.'));
  if (cell.doubtful) remarks.push(vscode.l10n.t('Doubtful: used, drawn hollow, and named in the methods.'));
  if (cell.earlier.length > 0) remarks.push(vscode.l10n.t('Corrected; before: {0}', cell.earlier.map((state) => stateText(state, column)).join(', ')));
  if (cell.state.repeats.length > 1) remarks.push(vscode.l10n.t('Mean of {0} repeats: {1}', cell.state.repeats.length, cell.state.repeats.join(', ')));
  return remarks;
}

function stateText(state: CellState, column: ReadingColumn): string {
  const unit = column.unit ? ` ${column.unit.print}` : '';
  switch (state.kind) {
    case 'number': return `${formatNumber(state.value ?? 0, Math.max(0, state.decimals) + (state.repeats.length > 1 ? 1 : 0))}${unit}`;
    case 'below': return vscode.l10n.t('below {0}', `${state.text.replace(/^<\s*/, '')}${unit}`);
    case 'above': return vscode.l10n.t('above {0}', `${state.text.replace(/^>\s*/, '')}${unit}`);
    case 'word': return state.word ?? state.text;
    case 'missing': return vscode.l10n.t('not taken');
    case 'unreadable': return vscode.l10n.t('cannot be read: {0}', state.text);
  }
}

/** "−0.24 mg/L since the reading above, −0.48 per hour". */
function stepText(cell: Cell, before: Cell, elapsed: number, column: ReadingColumn): string | null {
  if (cell.state.kind !== 'number' || cell.state.value === null || before.state.value === null || elapsed <= 0 || !column.unit) return null;
  const change = cell.state.value - before.state.value;
  const decimals = Math.max(cell.state.decimals, before.state.decimals, 0);
  const unit = differenceUnit(column.unit).print;
  const hours = elapsed / hour;
  const rate = change / hours;
  return vscode.l10n.t('{0} {1} since the reading above, {2} per hour', signed(change, decimals), unit, signed(rate, rateDecimals(rate, decimals, hours, null)));
}

function measureOf(note: Note, column: ReadingColumn): MeasuredQuantity | undefined {
  return note.protocol?.measure.find((quantity) => quantity.id === column.quantity);
}
