// The command *explain problem*: the reference, at a problem's code. The code itself, in hovers and in the list of problems, is a
// link to that section alone.
import * as vscode from 'vscode';
import { problemCodes } from '../../problems/codes.ts';
import { codeOf, diagnosticSource } from '../diagnostics.ts';
import { referencePage } from '../explanations.ts';

export function registerExplainProblem(extension: vscode.Uri, log: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.explainProblem', async (given?: unknown): Promise<vscode.Uri | null> => {
    const code = typeof given === 'string' ? given : await codeAtCursor();
    if (code === null || !Object.hasOwn(problemCodes, code)) return null;
    const page = referencePage(extension).with({ fragment: code });
    try {
      await vscode.commands.executeCommand('markdown.showPreview', page);
    } catch (error) {
      // Without the built-in Markdown extension the page is shown as text.
      log.info(`The preview of the reference could not be opened: ${error instanceof Error ? error.message : String(error)}`);
      await showAsText(page, code);
    }
    return page;
  });
}

async function showAsText(page: vscode.Uri, code: string): Promise<void> {
  const document = await vscode.workspace.openTextDocument(page.with({ fragment: '' }));
  const at = document.positionAt(Math.max(0, document.getText().indexOf(`### ${code}\n`)));
  await vscode.window.showTextDocument(document, { preview: true, selection: new vscode.Range(at, at) });
}

/** The code of the problem under the cursor: of the line's where none is, chosen where there are several. */
async function codeAtCursor(): Promise<string | null> {
  const editor = vscode.window.activeTextEditor;
  if (!editor) return null;
  const own = vscode.languages.getDiagnostics(editor.document.uri).filter((each) => each.source === diagnosticSource);
  const { active } = editor.selection;
  const here = own.filter((each) => each.range.contains(active));
  const near = here.length > 0 ? here : own.filter((each) => each.range.start.line <= active.line && active.line <= each.range.end.line);
  if (near.length === 0) {
    void vscode.window.showInformationMessage(vscode.l10n.t('There is no problem on this line.'));
    return null;
  }
  if (near.length === 1) return codeOf(near[0]!);
  const items = near.map((each) => ({ label: codeOf(each), detail: each.message }));
  return (await vscode.window.showQuickPick(items, { title: vscode.l10n.t('Which problem?'), matchOnDetail: true }))?.label ?? null;
}
