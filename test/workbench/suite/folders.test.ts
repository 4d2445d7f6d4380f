// Several folders in one workspace: each note goes by the settings and the files of its own folder, and all are found.
import * as vscode from 'vscode';
import { deepEqual, equal, ok } from '../assert.ts';
import { hints, lenses, until, withCode } from './support.ts';

suite('several folders', () => {
  const inFolder = (index: number, name: string): vscode.Uri => vscode.Uri.joinPath(vscode.workspace.workspaceFolders![index]!.uri, name);
  const openIn = async (index: number, name: string): Promise<vscode.TextDocument> => {
    const document = await vscode.workspace.openTextDocument(inFolder(index, name));
    await vscode.window.showTextDocument(document);
    return document;
  };

  test('each note goes by the settings of its own folder', async () => {
    const [first, second] = [await openIn(0, 'night.tank.md'), await openIn(1, 'night.tank.md')];
    equal((await until('problems of the first', () => withCode(first, 'claim-unfilled'))).severity, vscode.DiagnosticSeverity.Warning);
    equal((await until('problems of the second', () => withCode(second, 'claim-unfilled'))).severity, vscode.DiagnosticSeverity.Error);
    ok((await lenses(first)).length >= 3, 'no lines above the blocks of the first');
    deepEqual(await lenses(second), []);
    equal((await hints(second)).length, 1);
  });

  test('a data file is looked for beside its own note', async () => {
    const away = inFolder(1, 'probe.csv');
    const bytes = await vscode.workspace.fs.readFile(away);
    await vscode.workspace.fs.delete(away);
    try {
      const [first, second] = [await openIn(0, 'from-file.tank.md'), await openIn(1, 'from-file.tank.md')];
      ok(await until('the missing file', () => withCode(second, 'data-file-missing')));
      const result = await vscode.commands.executeCommand<{ errors: number }>('evenwater.check', first.uri);
      equal(result.errors, 0);
    } finally {
      await vscode.workspace.fs.writeFile(away, bytes);
    }
  });

  test('notes of both folders are among the symbols of the workspace', async () => {
    const found = await vscode.commands.executeCommand<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'overnight oxygen minimum');
    const paths = found.map((symbol) => symbol.location.uri.toString());
    for (const index of [0, 1]) ok(paths.includes(inFolder(index, 'night.tank.md').toString()), paths.join(' '));
  });

  test('a repeat in another folder is another run: a rename stays in its own', async () => {
    const repeat = inFolder(1, 'again.tank.md');
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(inFolder(1, 'night.tank.md')));
    await vscode.workspace.fs.writeFile(repeat, new TextEncoder().encode(text.replace('question:', 'repeats: night.tank.md\nquestion:')));
    try {
      for (const [index, files] of [[0, 1], [1, 2]] as const) {
        const note = await openIn(index, 'night.tank.md');
        const at = note.positionAt(note.getText().indexOf('  open:') + 3);
        const edit = await vscode.commands.executeCommand<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', note.uri, at, 'clear');
        equal(edit.size, files, `folder ${index}:`);
      }
    } finally {
      await vscode.workspace.fs.delete(repeat);
    }
  });
});
