// The document that a command works on: the address it was given, else the active editor's.
import * as vscode from 'vscode';

export async function documentFor(address: unknown): Promise<vscode.TextDocument | null> {
  if (address instanceof vscode.Uri) return vscode.workspace.openTextDocument(address);
  return vscode.window.activeTextEditor?.document ?? null;
}

/** Says that the command has nothing to work on. */
export function sayNoNote(): void {
  void vscode.window.showInformationMessage(vscode.l10n.t('Open a note first: a Markdown file with a protocol block.'));
}
