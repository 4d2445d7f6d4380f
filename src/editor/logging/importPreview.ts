// The preview of an import: what was detected, each line of it changeable, and the rows as the note would write them.
import * as vscode from 'vscode';
import { proposeImport, type ImportChoices, type ImportProposal } from '../../edits/importTable.ts';
import { plannedHeads } from '../../edits/insertReadingsTable.ts';
import type { Note } from '../../experiment/types.ts';
import type { DateOrder } from '../../readings/file/stamps.ts';
import type { DecimalMark, DelimiterName } from '../../readings/file/layout.ts';
import { readHead } from '../../readings/heads.ts';
import { loadZone } from '../../time/zone.ts';
import { editSentence } from '../../words/edits.ts';

export type ImportAs = 'table' | 'file';
export interface ImportChoice { readonly as: ImportAs; readonly proposal: ImportProposal }

interface Item extends vscode.QuickPickItem { readonly act?: () => Promise<ImportChoices | ImportAs | null> }

/** Shows the proposal until it is taken (as a table of the note, or as a pinned file) or left. */
export async function previewImport(source: Uint8Array | string, note: Note, choices: ImportChoices, mayPin: boolean, title: string): Promise<ImportChoice | null> {
  let chosen = choices;
  for (;;) {
    const proposal = proposeImport(source, note, chosen);
    if (!proposal) {
      void vscode.window.showErrorMessage(editSentence({ code: 'nothing-to-import', args: {} }));
      return null;
    }
    const picked = await vscode.window.showQuickPick(itemsOf(proposal, note, mayPin), { title, placeHolder: vscode.l10n.t('Pick a line to change it'), ignoreFocusOut: true });
    if (!picked) return null;
    const answer = await picked.act?.();
    if (answer === 'table' || answer === 'file') return { as: answer, proposal };
    if (answer) chosen = { ...chosen, ...answer };
  }
}

function itemsOf(proposal: ImportProposal, note: Note, mayPin: boolean): Item[] {
  const separator = (label: string): Item => ({ label, kind: vscode.QuickPickItemKind.Separator });
  const ready = proposal.asks.length === 0;
  const orders = proposal.dateOrders.length > 1 ? proposal.dateOrders : ['year-month-day', 'day-month-year', 'month-day-year'] as const;
  return [
    ...proposal.asks.map((ask): Item => ({ label: `$(question) ${editSentence(ask)}`, ...(ask.code === 'date-order-unclear' ? { act: () => dateOrder(orders) } : {}) })),
    ...(ready ? [{ label: `$(check) ${vscode.l10n.t('Import {0} rows as a table', proposal.rows.filter((row) => row.time !== null).length)}`, act: () => Promise.resolve('table' as const) }] : []),
    ...(ready && mayPin && !proposal.clockOnly ? [{ label: `$(pin) ${vscode.l10n.t('Refer to the file, pinned by its hash')}`, act: () => Promise.resolve('file' as const) }] : []),
    separator(vscode.l10n.t('Detected')),
    { label: vscode.l10n.t('Cells are separated by'), description: delimiterWord(proposal.delimiter), act: () => pickOne<DelimiterName, ImportChoices>(['comma', 'semicolon', 'tab', 'bar', 'space'], delimiterWord, (delimiter) => ({ delimiter })) },
    { label: vscode.l10n.t('Decimal mark'), description: proposal.decimal ?? '?', act: () => pickOne<DecimalMark, ImportChoices>(['.', ','], (mark) => mark, (decimal) => ({ decimal })) },
    ...(proposal.clockOnly ? [] : [{ label: vscode.l10n.t('Dates are written'), description: proposal.dateOrder ? orderWord(proposal.dateOrder) : '?', act: () => dateOrder(orders) }]),
    ...(proposal.offsets ? [] : [{ label: vscode.l10n.t('Time zone'), description: proposal.timeZone, act: () => timeZone(proposal.timeZone) }]),
    separator(vscode.l10n.t('Columns')),
    ...proposal.columns.map((column): Item => ({ label: column.from, description: column.to === null ? vscode.l10n.t('not imported') : `→ ${withUnit(column.to, note)}`, act: () => target(proposal, column.from, note) })),
    ...unmapped(proposal).map((name): Item => ({ label: name, description: vscode.l10n.t('not imported'), act: () => target(proposal, name, note) })),
    separator(vscode.l10n.t('Rows')),
    ...proposal.rows.slice(0, 5).map((row): Item => ({ label: `${row.time ?? '?'}  ${row.cells.join('  ')}`, description: row.remark ?? '' })),
    ...(ready && proposal.unreadTimes.length > 0 ? [{ label: `$(warning) ${vscode.l10n.t('Kept as comments, the time cannot be read: lines {0}', listed(proposal.unreadTimes))}` }] : []),
    ...(proposal.unreadCells.length > 0 ? [{ label: `$(warning) ${vscode.l10n.t('Cells that are no readings, kept as remarks: lines {0}', listed(proposal.unreadCells))}` }] : []),
  ];
}

/** A head with the unit in which its cells are read. */
function withUnit(head: string, note: Note): string {
  if (!note.protocol || head === 'time' || head === 'remark') return head;
  const { unit } = readHead({ text: head, start: 0, end: head.length }, note.protocol, new Set()).column;
  return unit ? `${head.replace(/\[.*$/u, '')}, ${unit.symbol}` : head;
}

const listed = (lines: readonly number[]): string => `${lines.slice(0, 12).join(', ')}${lines.length > 12 ? ` … (${lines.length})` : ''}`;

function unmapped(proposal: ImportProposal): string[] {
  const named = new Set(proposal.columns.flatMap((column) => [column.from, ...column.from.split(' + ')]));
  return proposal.names.filter((name) => name !== '' && !named.has(name));
}

const delimiterWord = (name: DelimiterName): string => ({
  comma: vscode.l10n.t('commas'), semicolon: vscode.l10n.t('semicolons'), tab: vscode.l10n.t('tabs'), bar: vscode.l10n.t('bars'), space: vscode.l10n.t('spaces'),
})[name];
const orderWord = (order: DateOrder): string => ({
  'year-month-day': vscode.l10n.t('year, month, day'), 'day-month-year': vscode.l10n.t('day, month, year'), 'month-day-year': vscode.l10n.t('month, day, year'),
})[order];

const dateOrder = (orders: readonly DateOrder[]) => pickOne<DateOrder, ImportChoices>(orders, orderWord, (order) => ({ dateOrder: order }));

async function pickOne<Value extends string, Result>(values: readonly Value[], word: (value: Value) => string, result: (value: Value) => Result): Promise<Result | null> {
  const chosen = await vscode.window.showQuickPick(values.map((value) => ({ label: word(value), value })), { ignoreFocusOut: true });
  return chosen ? result(chosen.value) : null;
}

async function timeZone(now: string): Promise<ImportChoices | null> {
  const name = await vscode.window.showInputBox({
    title: vscode.l10n.t('Time zone of the times in the file'), value: now, ignoreFocusOut: true,
    validateInput: (value) => (loadZone(value.trim()) || /^[+-]\d\d:?\d\d$/.test(value.trim()) ? null : vscode.l10n.t('Such as Europe/Amsterdam, UTC or +01:00.')),
  });
  return name === undefined ? null : { timeZone: name.trim() };
}

/** What a column holds: a head of the plan, the time, a remark, or nothing. */
async function target(proposal: ImportProposal, from: string, note: Note): Promise<ImportChoices | null> {
  const heads = note.protocol ? plannedHeads(note.protocol) : [];
  const other = vscode.l10n.t('Another column or unit…');
  const none = vscode.l10n.t('Do not import');
  const chosen = await vscode.window.showQuickPick([...heads, 'time', 'remark', none, other], { title: from, placeHolder: vscode.l10n.t('What does this column hold?'), ignoreFocusOut: true });
  const to = chosen === other ? await vscode.window.showInputBox({ title: from, prompt: vscode.l10n.t('Such as mat.T[degF]'), ignoreFocusOut: true }) : chosen;
  if (to === undefined) return null;
  const wanted = to === none || to.trim() === '' ? null : to.trim();
  const others = proposal.columns.filter((column) => column.from !== from).map((column) => (wanted !== null && wanted !== 'remark' && column.to === wanted ? { from: column.from, to: null } : column));
  return { columns: [...others, { from, to: wanted }] };
}
