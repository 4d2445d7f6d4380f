// Data files: loaded through the editor's file system, and read again when they change.
import * as vscode from 'vscode';
import { equal, match } from '../assert.ts';
import { fixture, open, ours, until, withCode } from './support.ts';

suite('data files', () => {
  test('a claim over readings in a file is checked once the file is loaded, and again when it changes', async () => {
    const before = await vscode.workspace.fs.readFile(fixture('probe.csv'));
    const note = await open('from-file.tank.md');
    await until('the file', () => ours(note).every((each) => each.severity !== vscode.DiagnosticSeverity.Error) && !withCode(note, 'data-file-not-loaded'));
    const result = await vscode.commands.executeCommand<{ errors: number; claims: number }>('evenwater.check', note.uri);
    equal(result.errors, 0);
    equal(result.claims, 1);
    const html = await vscode.commands.executeCommand<string>('markdown.api.render', note);
    match(html, /data-formula="rise\(mat\.DO\)"[^>]*>0\.05 mg\/L</);
    try {
      await vscode.workspace.fs.writeFile(fixture('probe.csv'), new TextEncoder().encode(new TextDecoder().decode(before).replace('8.26', '8.46')));
      await until('the mismatch', () => withCode(note, 'claim-mismatch'), 30_000);
    } finally {
      await vscode.workspace.fs.writeFile(fixture('probe.csv'), before);
    }
    await until('the mismatch to go', () => !withCode(note, 'claim-mismatch'), 30_000);
  });
});
