// The command *open the example*: a whole note to look at and play with, as an unsaved copy, with its preview beside it.
import * as vscode from 'vscode';
import { openNewNote } from './openNewNote.ts';

const example = 'overnight-oxygen';

export function registerOpenExample(context: vscode.ExtensionContext): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.openExample', async (): Promise<vscode.Uri> => {
    const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(context.extensionUri, 'samples', `${example}.tank.md`));
    const note = await openNewNote(`example-${example}`, new TextDecoder().decode(bytes));
    await vscode.commands.executeCommand('markdown.showPreviewToSide', note);
    return note;
  });
}
