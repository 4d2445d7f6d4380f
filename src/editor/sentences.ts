// Short sentences about a note that CodeLens, the status item and the commands share.
import * as vscode from 'vscode';
import type { ClaimCounts, ProblemCounts } from './counts.ts';

/** "12 claims match", "11 claims match, 1 does not, 2 to fill in". */
export function claimsSentence(count: ClaimCounts): string {
  const checked = count.hold + count.fail;
  const parts: string[] = [];
  if (checked === 0 && count.unfilled === 0) return vscode.l10n.t('no claims to check');
  if (checked > 0) parts.push(count.hold === 1 ? vscode.l10n.t('1 claim matches') : vscode.l10n.t('{0} claims match', count.hold));
  if (count.fail > 0) parts.push(count.fail === 1 ? vscode.l10n.t('1 does not') : vscode.l10n.t('{0} do not', count.fail));
  if (count.unfilled > 0) parts.push(vscode.l10n.t('{0} to fill in', count.unfilled));
  return parts.join(', ');
}

/** "no problems", "1 error", "2 errors, 1 warning". */
export function problemsSentence({ errors, warnings }: ProblemCounts): string {
  const parts: string[] = [];
  if (errors > 0) parts.push(errors === 1 ? vscode.l10n.t('1 error') : vscode.l10n.t('{0} errors', errors));
  if (warnings > 0) parts.push(warnings === 1 ? vscode.l10n.t('1 warning') : vscode.l10n.t('{0} warnings', warnings));
  return parts.length > 0 ? parts.join(', ') : vscode.l10n.t('no problems');
}
