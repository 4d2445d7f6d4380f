// The command *recheck a post*: is every number of a published page what its own note and data give?
import * as vscode from 'vscode';
import { interfaceLanguage, problemSentence } from '../language.ts';

declare const EVENWATER_VERSION: string;

export type RecheckResult = { readonly holds: boolean; readonly differences: number } | { readonly refused: 'no-post' };

export function registerRecheck(log: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.recheck', async (address?: unknown): Promise<RecheckResult> => {
    const target = address instanceof vscode.Uri ? address : await choosePost();
    if (!target) return { refused: 'no-post' };
    let html: string;
    try {
      html = new TextDecoder('utf-8', { fatal: true }).decode(await vscode.workspace.fs.readFile(target));
    } catch {
      void vscode.window.showErrorMessage(vscode.l10n.t('{0} cannot be read as a page.', nameOf(target)));
      return { refused: 'no-post' };
    }
    return recheck(target, html, log);
  });
}

/** The page that is open in the editor, else one that the person picks. */
async function choosePost(): Promise<vscode.Uri | null> {
  const open = vscode.window.activeTextEditor?.document;
  if (open?.languageId === 'html') return open.uri;
  const chosen = await vscode.window.showOpenDialog({
    canSelectMany: false, filters: { [vscode.l10n.t('Published pages')]: ['html', 'htm'] }, openLabel: vscode.l10n.t('Recheck'), title: vscode.l10n.t('The post to recheck'),
  });
  return chosen?.[0] ?? null;
}

async function recheck(target: vscode.Uri, html: string, log: vscode.LogOutputChannel): Promise<RecheckResult> {
  // The drawing library waits until somebody asks.
  const [{ recheckPost }, { differenceSentence, faultSentence }] = await Promise.all([import('../../publish/recheck.ts'), import('../../publish/recheckWords.ts')]);
  const report = await recheckPost(html, EVENWATER_VERSION);
  const name = nameOf(target);
  if (report.files.length === 0 && report.madeWith === '') {
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} carries no note; it was not published from one.', name));
    return { refused: 'no-post' };
  }
  const version = report.sameVersion ? '' : vscode.l10n.t('Made with Evenwater {0}, rechecked with {1}: numbers and the words of the author are judged, generated wording, layout and drawings are not. ', report.madeWith, EVENWATER_VERSION);
  if (report.holds) {
    void vscode.window.showInformationMessage(version + vscode.l10n.t('{0}: {1} claims and {2} computed values agree with the note and data inside.', name, report.claims, report.values));
    return { holds: true, differences: 0 };
  }
  for (const fault of report.faults) log.error(`${name}: ${faultSentence(fault, interfaceLanguage)}`);
  for (const problem of report.note?.problems ?? []) if (problem.severity === 'error') log.error(`${name}: ${problem.code}: ${problemSentence(problem)}`);
  for (const each of report.differences) log.error(`${name}:${placeOf(html, each.range.start)}: ${differenceSentence(each, interfaceLanguage)}`);
  const show = vscode.l10n.t('Show List');
  const sentence = version + vscode.l10n.t('{0} does not agree with the note and data inside: {1} differences.', name, report.differences.length + report.faults.length);
  void vscode.window.showErrorMessage(sentence, show).then((chosen) => { if (chosen === show) log.show(); });
  return { holds: false, differences: report.differences.length + report.faults.length };
}

const nameOf = (target: vscode.Uri): string => target.path.slice(target.path.lastIndexOf('/') + 1);

function placeOf(text: string, offset: number): string {
  const before = text.slice(0, offset).split('\n');
  return `${before.length}:${before.at(-1)!.length + 1}`;
}
