// Shows a new note in an editor, not saved yet: nothing is written until its author saves it.
import * as vscode from 'vscode';

/** `Does a mat lower the minimum?` to `does-a-mat-lower-the-minimum`. */
export function slugOf(text: string): string {
  const words = text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  return words.slice(0, 48).replace(/-[^-]*$/, (tail) => (words.length > 48 ? '' : tail)) || 'experiment';
}

/** Opens the text as an unsaved note in the folder (the workspace's first where none is given), under a name that is free. */
export async function openNewNote(slug: string, text: string, folder: vscode.Uri | null = vscode.workspace.workspaceFolders?.[0]?.uri ?? null): Promise<vscode.Uri> {
  const uri = folder ? await freeName(folder, slug) : vscode.Uri.from({ scheme: 'untitled', path: `${slug}.tank.md` });
  const document = await vscode.languages.setTextDocumentLanguage(await vscode.workspace.openTextDocument(uri), 'markdown');
  const edit = new vscode.WorkspaceEdit();
  edit.replace(uri, new vscode.Range(0, 0, document.lineCount, 0), text);
  await vscode.workspace.applyEdit(edit);
  const editor = await vscode.window.showTextDocument(document);
  editor.selection = new vscode.Selection(0, 0, 0, 0);
  return document.uri;
}

async function freeName(folder: vscode.Uri, slug: string): Promise<vscode.Uri> {
  for (let count = 1; ; count += 1) {
    const name = `${slug}${count === 1 ? '' : `-${count}`}.tank.md`;
    const file = vscode.Uri.joinPath(folder, name);
    const untitled = file.with({ scheme: 'untitled' });
    const open = vscode.workspace.textDocuments.some((each) => each.uri.path === file.path);
    let there = open;
    if (!open) {
      try {
        await vscode.workspace.fs.stat(file);
        there = true;
      } catch {
        there = false; // The name is free.
      }
    }
    if (!there) return untitled;
  }
}
