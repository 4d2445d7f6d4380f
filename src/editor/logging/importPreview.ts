// The preview of an import: what was detected, each line of it changeable, the rows as the note would write them, and every
// line of the file that is not simply a row.
import * as vscode from 'vscode';
import type { ImportChoices, ImportProposal } from '../../edits/importProposal.ts';
import { proposeImport } from '../../edits/proposeImport.ts';
import type { Note } from '../../experiment/types.ts';
import type { Protocol } from '../../protocol/types.ts';
import type { DateOrder } from '../../readings/file/stamps.ts';
import type { DecimalMark, DelimiterName } from '../../readings/file/layout.ts';
import { loadZone } from '../../time/zone.ts';
import { editSentence } from '../language.ts';
import { describeHead, pickTarget } from './importTargets.ts';
import { decimalWord, delimiterWord, orderWord } from './importWords.ts';
import { choicesOf, fittingLoggers, type Loggers } from './loggers.ts';

/** A block of readings; a reference to the file, pinned by its hash; the same for a file that is copied beside the note first. */
export type ImportAs = 'table' | 'file' | 'copy';
export interface ImportChoice { readonly as: ImportAs; readonly proposal: ImportProposal; /** The remembered logger that was used. */ readonly logger: string | null }

/** What is looked at, and what may become of it. */
export interface Previewed {
  readonly source: Uint8Array | string;
  readonly note: Note;
  readonly title: string;
  /** How the file itself may stay: `file` where it lies beside the note, `copy` where it can be brought there, null for pasted text. */
  readonly keep: 'file' | 'copy' | null;
  readonly loggers: Loggers;
}

interface State { readonly choices: ImportChoices; readonly logger: string | null }
type Act = () => Promise<ImportAs | Partial<State> | null>;
interface Item extends vscode.QuickPickItem { readonly act?: Act }

/** Beside the label, not in it: there it would be read out by its name. */
const warningIcon = new vscode.ThemeIcon('warning');

/** Shows the proposal until it is taken or left. A remembered logger of the file's heads is proposed first. */
export async function previewImport(previewed: Previewed): Promise<ImportChoice | null> {
  const { source, note } = previewed;
  let proposal = proposeImport(source, note);
  const names = proposal?.names ?? [];
  const [known] = fittingLoggers(names, previewed.loggers);
  let state: State = { choices: {}, logger: null };
  const change = (changed: Partial<State>): void => {
    state = { ...state, ...changed };
    proposal = proposeImport(source, note, state.choices);
  };
  if (known) change({ choices: choicesOf(known.logger), logger: known.name });
  for (;;) {
    if (!proposal || !note.protocol) {
      void vscode.window.showErrorMessage(editSentence({ code: 'nothing-to-import', args: {} }));
      return null;
    }
    const items = itemsOf(proposal, note.protocol, previewed, state, names);
    const picked = await vscode.window.showQuickPick(items, { title: previewed.title, placeHolder: vscode.l10n.t('Pick a line to change it; Escape leaves the note as it is'), ignoreFocusOut: true, matchOnDescription: true });
    if (!picked) return null;
    const answer = await picked.act?.();
    if (answer === 'table' || answer === 'file' || answer === 'copy') return { as: answer, proposal, logger: state.logger };
    if (answer) change(answer);
  }
}

function itemsOf(proposal: ImportProposal, protocol: Protocol, { keep, loggers }: Previewed, state: State, names: readonly string[]): Item[] {
  // What is changed by hand is no longer the remembered logger, and may be remembered anew.
  const set = (choices: ImportChoices): Partial<State> => ({ choices: { ...state.choices, ...choices }, logger: null });
  // With another delimiter or other heads the columns are others too.
  const relaid = (choices: ImportChoices): Partial<State> => {
    const { columns: _columns, ...rest } = state.choices;
    return { choices: { ...rest, ...choices }, logger: null };
  };
  const target = (from: string): Act => async () => {
    const columns = await pickTarget(proposal, from, protocol);
    return columns && set({ columns });
  };
  const item = (label: string, description: string, act: Act): Item => ({ label, description, act });
  const orders = proposal.dateOrders.length > 1 ? proposal.dateOrders : ['year-month-day', 'day-month-year', 'month-day-year'] as const;
  const dateOrder: Act = () => pickOne<DateOrder, Partial<State>>(orders, orderWord, (order) => set({ dateOrder: order }));
  const decimal: Act = () => pickOne<DecimalMark, Partial<State>>(['.', ','], decimalWord, (mark) => set({ decimal: mark }));
  const map: Act = async () => {
    const from = await vscode.window.showQuickPick(proposal.names, { title: vscode.l10n.t('Which column?'), ignoreFocusOut: true });
    return from === undefined ? null : target(from)();
  };
  const answers: Readonly<Record<string, Act>> = { 'date-order-unclear': dateOrder, 'decimal-unclear': decimal, 'import-unmapped': map };
  const fitting = fittingLoggers(names, loggers);
  return [
    ...proposal.asks.map((ask): Item => ({ label: editSentence(ask), iconPath: new vscode.ThemeIcon('question'), ...(answers[ask.code] ? { act: answers[ask.code]! } : {}) })),
    ...takeItems(proposal, keep),
    ...complaintItems(proposal, (column) => target(fromOf(proposal, column))),
    separator(vscode.l10n.t('Detected')),
    ...(fitting.length === 0 ? [] : [item(vscode.l10n.t('Logger'), state.logger ?? vscode.l10n.t('none'), () => pickLogger(fitting.map((each) => each.name), loggers))]),
    item(vscode.l10n.t('Cells are separated by'), delimiterWord(proposal.delimiter), () => pickOne<DelimiterName, Partial<State>>(['comma', 'semicolon', 'tab', 'bar', 'space'], delimiterWord, (delimiter) => relaid({ delimiter }))),
    item(vscode.l10n.t('Decimal mark'), proposal.decimal === null ? vscode.l10n.t('none seen') : decimalWord(proposal.decimal), decimal),
    item(vscode.l10n.t('Heads'), headsWord(proposal), () => pickHeads(proposal, relaid)),
    ...(proposal.clockOnly ? [] : [item(vscode.l10n.t('Dates are written'), proposal.dateOrder ? orderWord(proposal.dateOrder) : vscode.l10n.t('in a way that is not clear'), dateOrder)]),
    ...(proposal.offsets ? [] : [item(vscode.l10n.t('Time zone'), proposal.timeZone, async () => {
      const name = await typeZone(proposal.timeZone);
      return name === null ? null : set({ timeZone: name });
    })]),
    separator(vscode.l10n.t('Columns and units')),
    ...proposal.columns.map((column) => item(column.from, column.to === null ? vscode.l10n.t('not imported') : `→ ${describeHead(column.to, protocol)}`, target(column.from))),
    ...unmapped(proposal).map((name) => item(name, vscode.l10n.t('not imported'), target(name))),
    separator(vscode.l10n.t('First rows, as the note will write them')),
    ...proposal.rows.filter((row) => row.time !== null || proposal.asks.length > 0).slice(0, 5).map((row): Item => ({ label: `${row.time ?? '?'}   ${row.cells.join('   ')}`, description: row.remark ?? '' })),
  ];
}

const separator = (label: string): Item => ({ label, kind: vscode.QuickPickItemKind.Separator });

/** The ways to take the proposal, once nothing is left to ask. */
function takeItems(proposal: ImportProposal, keep: Previewed['keep']): Item[] {
  if (proposal.asks.length > 0) return [];
  const rows = proposal.rows.filter((row) => row.time !== null).length;
  const table: Item = { label: rows === 1 ? vscode.l10n.t('Import 1 row as a table') : vscode.l10n.t('Import {0} rows as a table', rows), iconPath: new vscode.ThemeIcon('check'), act: () => Promise.resolve('table' as const) };
  if (keep === null || proposal.clockOnly) return [table];
  const label = keep === 'file' ? vscode.l10n.t('Refer to the file, pinned by its hash') : vscode.l10n.t('Copy the file beside the note and refer to it, pinned by its hash');
  return [table, { label, iconPath: new vscode.ThemeIcon('pin'), act: () => Promise.resolve(keep) }];
}

/** What is not simply a row: the first few with their lines, the rest behind one more step. */
function complaintItems({ complaints, doubts, linesAbove }: ImportProposal, change: (column: number) => Act): Item[] {
  const [shown, few] = [complaints.map((each): Item => ({ label: editSentence(each.message), iconPath: warningIcon })), 4];
  const rest: Item[] = shown.length <= few ? shown : [...shown.slice(0, few - 1), {
    label: vscode.l10n.t('{0} more lines to look at…', shown.length - few + 1), iconPath: warningIcon,
    act: async () => { await vscode.window.showQuickPick(shown, { title: vscode.l10n.t('Lines that are not simply rows'), ignoreFocusOut: true }); return null; },
  }];
  const above: Item[] = linesAbove === 0 ? [] : [{ label: linesAbove === 1 ? vscode.l10n.t('One line above the heads is not imported.') : vscode.l10n.t('{0} lines above the heads are not imported.', linesAbove), iconPath: new vscode.ThemeIcon('info') }];
  const doubted = doubts.map(({ column, message }): Item => ({ label: editSentence(message), iconPath: warningIcon, act: change(column) }));
  const all = [...doubted, ...rest, ...above];
  return all.length === 0 ? [] : [separator(vscode.l10n.t('Look at these')), ...all];
}

/** The file's column that became the head at this place. */
const fromOf = ({ columns, heads }: ImportProposal, at: number): string => columns.find((column) => column.to === heads[at])?.from ?? '';

function unmapped(proposal: ImportProposal): string[] {
  const named = new Set(proposal.columns.flatMap((column) => [column.from, ...column.from.split(' + ')]));
  return proposal.names.filter((name) => !named.has(name));
}

const headsWord = ({ headerLine }: ImportProposal): string => (headerLine === 0 ? vscode.l10n.t('none; columns go by number') : vscode.l10n.t('line {0}', headerLine));

async function pickHeads(proposal: ImportProposal, relaid: (choices: ImportChoices) => Partial<State>): Promise<Partial<State> | null> {
  const lines = proposal.firstLines.map(({ line, text }) => ({ label: vscode.l10n.t('line {0}', line), description: text, line }));
  const chosen = await vscode.window.showQuickPick([...lines, { label: vscode.l10n.t('The file has no heads'), line: 0 }], { title: vscode.l10n.t('Which line holds the heads?'), ignoreFocusOut: true, matchOnDescription: true });
  return chosen ? relaid({ headerLine: chosen.line }) : null;
}

async function pickLogger(names: readonly string[], loggers: Loggers): Promise<Partial<State> | null> {
  const none = vscode.l10n.t('none');
  const chosen = await vscode.window.showQuickPick([...names, none], { title: vscode.l10n.t('Logger'), ignoreFocusOut: true });
  const logger = chosen === undefined ? undefined : loggers.get(chosen);
  if (logger) return { choices: choicesOf(logger), logger: chosen! };
  return chosen === none ? { choices: {}, logger: null } : null;
}

async function pickOne<Value extends string, Result>(values: readonly Value[], word: (value: Value) => string, result: (value: Value) => Result): Promise<Result | null> {
  const chosen = await vscode.window.showQuickPick(values.map((value) => ({ label: word(value), value })), { ignoreFocusOut: true });
  return chosen ? result(chosen.value) : null;
}

async function typeZone(now: string): Promise<string | null> {
  const name = await vscode.window.showInputBox({
    title: vscode.l10n.t('Time zone of the times in the file'), value: now, ignoreFocusOut: true,
    validateInput: (value) => (loadZone(value.trim()) || /^[+-]\d\d:?\d\d$/.test(value.trim()) ? null : vscode.l10n.t('Such as Europe/Amsterdam, UTC or +01:00.')),
  });
  return name?.trim() ?? null;
}
