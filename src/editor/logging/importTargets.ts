// What a column of an imported table holds, picked by the keeper: a head of the plan, in the plan's unit or another, the time
// (alone, or a date together with the clock beside it), a remark, or nothing.
import * as vscode from 'vscode';
import { plannedHeads } from '../../edits/insertReadingsTable.ts';
import { plainHead, withColumn } from '../../edits/importColumns.ts';
import type { ImportColumn, ImportProposal } from '../../edits/importProposal.ts';
import type { Protocol } from '../../protocol/types.ts';
import type { Unit } from '../../quantities/types.ts';
import { convertible, unitTable } from '../../quantities/units.ts';
import { readHead } from '../../readings/heads.ts';

interface Choice extends vscode.QuickPickItem { readonly column?: ImportColumn; readonly typed?: boolean }

/** The columns after the keeper picked what `from` holds; null when nothing was picked. */
export async function pickTarget(proposal: ImportProposal, from: string, protocol: Protocol): Promise<readonly ImportColumn[] | null> {
  const chosen = await vscode.window.showQuickPick(choicesFor(proposal, from, protocol), { title: from, placeHolder: vscode.l10n.t('What does this column hold?'), ignoreFocusOut: true, matchOnDescription: true });
  if (chosen?.column) return withColumn(proposal.columns, chosen.column);
  if (!chosen?.typed) return null;
  const typed = await vscode.window.showInputBox({ title: from, prompt: vscode.l10n.t('A tank and a quantity, with a unit in brackets if it is not the plan\'s: mat.T[degF]'), value: targetOf(proposal, from) ?? '', ignoreFocusOut: true });
  return typed === undefined ? null : withColumn(proposal.columns, { from, to: typed.trim() || null });
}

/** A head in words: with the unit in which its cells are read. */
export function describeHead(head: string, protocol: Protocol): string {
  const unit = head === 'time' || head === 'remark' ? null : unitOf(head, protocol);
  return unit ? `${plainHead(head)}, ${unit.print}` : head;
}

const unitOf = (head: string, protocol: Protocol): Unit | null => readHead({ text: head, start: 0, end: head.length }, protocol, new Set()).column.unit;
const targetOf = (proposal: ImportProposal, from: string): string | null => proposal.columns.find((column) => column.from === from)?.to ?? null;

function choicesFor(proposal: ImportProposal, from: string, protocol: Protocol): Choice[] {
  const now = targetOf(proposal, from);
  const isReading = now !== null && now !== 'time' && now !== 'remark';
  const holding = new Map(proposal.columns.map((column) => [column.to === null ? '' : plainHead(column.to), column.from]));
  const head = (to: string, label = to): Choice => {
    const other = holding.get(plainHead(to));
    const note = to === now ? vscode.l10n.t('as it is') : other !== undefined && other !== from && to !== 'remark' ? vscode.l10n.t('now {0}', other) : '';
    return { label, description: note, column: { from, to } };
  };
  const group = (label: string, items: readonly Choice[]): Choice[] => (items.length > 0 ? [{ label, kind: vscode.QuickPickItemKind.Separator }, ...items] : []);
  const beside = proposal.names.filter((name) => name !== from && !from.includes(' + ') && !proposal.columns.some((column) => column.from === name && column.to !== null));
  return [
    ...group(vscode.l10n.t('In another unit'), isReading ? unitsFor(now, protocol).map((unit) => ({ ...head(`${plainHead(now)}[${unit.symbol}]`, `${plainHead(now)}, ${unit.print}`), description: unit.symbol })) : []),
    ...group(vscode.l10n.t('Readings'), plannedHeads(protocol).map((each) => head(each, describeHead(each, protocol)))),
    ...group(vscode.l10n.t('Time and words'), [
      head('time', vscode.l10n.t('Time')), head('remark', vscode.l10n.t('Remark')),
      ...beside.slice(0, 6).map((name): Choice => ({ label: vscode.l10n.t('Date, with the clock time in {0}', name), column: { from: `${from} + ${name}`, to: 'time' } })),
    ]),
    ...group(vscode.l10n.t('Other'), [{ label: vscode.l10n.t('Do not import'), column: { from, to: null } }, { label: vscode.l10n.t('Another column or unit…'), typed: true }]),
  ];
}

/** Units in which the cells under a head could stand, other than the one that is set. */
function unitsFor(head: string, protocol: Protocol): Unit[] {
  const unit = unitOf(head, protocol);
  return unit ? unitTable.filter((entry) => entry.symbol !== unit.symbol && !/\s/u.test(entry.symbol) && convertible(entry.unit, unit)).map((entry) => entry.unit) : [];
}
