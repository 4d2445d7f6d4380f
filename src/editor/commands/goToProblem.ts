// From a problem in the preview to its place in the editor: the menu of the problem's line, which hands its place in.
import * as vscode from 'vscode';

export function registerGoToProblem(): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.goToProblem', async (given: unknown): Promise<void> => {
    const place = placeIn(given);
    if (!place) return;
    // The Markdown extension alone knows which note the preview shows, and in which column that stands.
    await vscode.commands.executeCommand('markdown.showSource');
    const editor = vscode.window.activeTextEditor;
    if (!editor) return;
    const at = editor.document.validatePosition(place);
    await vscode.window.showTextDocument(editor.document, { viewColumn: editor.viewColumn, selection: new vscode.Range(at, at) });
  });
}

/** What stands in `data-vscode-context` of a problem (src/render/errorBox.ts), which anybody may have written. */
function placeIn(given: unknown): vscode.Position | null {
  const { line, character } = (given ?? {}) as { readonly line?: unknown; readonly character?: unknown };
  return isCount(line) && isCount(character) ? new vscode.Position(line, character) : null;
}

const isCount = (value: unknown): value is number => Number.isInteger(value) && (value as number) >= 0;
