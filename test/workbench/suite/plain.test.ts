// Everything else stays untouched: plain Markdown has no problems, no lines, no hints; a closed note leaves none behind.
import * as vscode from 'vscode';
import { deepEqual, equal } from '../assert.ts';
import { find, fixture, lenses, open, ours, replace, until, withCode } from './support.ts';

suite('plain Markdown', () => {
  test('a file without a protocol has nothing of ours', async () => {
    const plain = await open('plain.md');
    await new Promise((resolve) => { setTimeout(resolve, 800); });
    deepEqual(ours(plain), []);
    deepEqual(await lenses(plain), []);
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', plain.uri, find(plain, 'braces').start);
    deepEqual(hovers, []);
  });

  test('it renders as without the extension', async () => {
    const html = await vscode.commands.executeCommand<string>('markdown.api.render', '# A\n\n{1 mg/L = x}\n\n```readings\ntime mat.DO\n```\n');
    equal(html.includes('evenwater'), false);
    equal(html.includes('{1 mg/L = x}'), true);
  });

  test('problems go when the protocol goes, and come back with it', async () => {
    const note = await open('night.tank.md');
    await until('problems', () => withCode(note, 'claim-unfilled'));
    await replace(note, '```protocol', '```yaml');
    await until('problems to go', () => !withCode(note, 'claim-unfilled'));
    await vscode.commands.executeCommand('workbench.action.files.revert');
    await until('problems to come back', () => withCode(note, 'claim-unfilled'));
  });

  test('problems go when the note is closed for good', async () => {
    const copy = fixture('closing.tank.md');
    await vscode.workspace.fs.copy(fixture('night.tank.md'), copy, { overwrite: true });
    await vscode.commands.executeCommand('vscode.open', copy); // Not openTextDocument, which keeps a document for minutes.
    const note = await until('the note', () => vscode.workspace.textDocuments.find((document) => document.uri.toString() === copy.toString()));
    await until('problems', () => withCode(note, 'claim-unfilled'));
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await vscode.workspace.fs.delete(copy);
    await until('problems to go', () => vscode.languages.getDiagnostics(copy).length === 0);
  });
});
