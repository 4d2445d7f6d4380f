// One language status item for the note at hand.
import * as vscode from 'vscode';
import type { CalmNotes } from './calm.ts';
import { claimCounts, problemCounts } from './counts.ts';
import type { NoteStore } from './noteStore.ts';
import { claimsSentence, problemsSentence } from './sentences.ts';

export function registerStatus(notes: NoteStore, calm: CalmNotes): vscode.Disposable {
  let item: vscode.LanguageStatusItem | null = null;
  const update = () => {
    const document = vscode.window.activeTextEditor?.document;
    const note = document ? notes.noteOf(document) : null;
    if (!note || !document) {
      item?.dispose();
      item = null;
      return;
    }
    const problems = problemCounts(calm.shownOf(document));
    item ??= vscode.languages.createLanguageStatusItem('evenwater.note', { language: 'markdown' });
    item.name = 'Evenwater';
    item.text = claimsSentence(claimCounts(note));
    item.detail = problemsSentence(problems);
    item.severity = problems.errors > 0 ? vscode.LanguageStatusSeverity.Error
      : problems.warnings > 0 ? vscode.LanguageStatusSeverity.Warning : vscode.LanguageStatusSeverity.Information;
    item.accessibilityInformation = { label: `Evenwater: ${item.text}; ${item.detail}` };
    item.command = { command: 'evenwater.check', title: vscode.l10n.t('Check') };
  };
  const isActive = (document: vscode.TextDocument) => vscode.window.activeTextEditor?.document === document;
  update();
  return vscode.Disposable.from(
    calm.onDidShow(({ document }) => { if (isActive(document)) update(); }),
    vscode.window.onDidChangeActiveTextEditor(update),
    new vscode.Disposable(() => item?.dispose()),
  );
}
