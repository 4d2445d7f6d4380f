// Words for how a table of readings is written: its delimiter, its decimal mark, the order of its dates.
import * as vscode from 'vscode';
import type { DecimalMark, DelimiterName } from '../../readings/file/layout.ts';
import type { DateOrder } from '../../readings/file/stamps.ts';

export const delimiterWord = (name: DelimiterName): string => ({
  comma: vscode.l10n.t('commas'), semicolon: vscode.l10n.t('semicolons'), tab: vscode.l10n.t('tabs'), bar: vscode.l10n.t('bars'), space: vscode.l10n.t('spaces'),
})[name];
export const orderWord = (order: DateOrder): string => ({
  'year-month-day': vscode.l10n.t('year, month, day'), 'day-month-year': vscode.l10n.t('day, month, year'), 'month-day-year': vscode.l10n.t('month, day, year'),
})[order];
export const decimalWord = (mark: DecimalMark): string => (mark === '.' ? vscode.l10n.t('point, 7.31') : vscode.l10n.t('comma, 7,31'));
