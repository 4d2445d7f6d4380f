// The plan's commands: a table of every planned reading, the seal, and a repeat in a new note.
import * as vscode from 'vscode';
import { deepEqual, equal, match, ok } from '../assert.ts';
import { codeOf, open, ours, revert, until } from './support.ts';

suite('plan', () => {
  let note: vscode.TextDocument;
  suiteSetup(async () => { note = await open('night.tank.md'); });
  teardown(async () => { await revert(note); });
  suiteTeardown(async () => { await vscode.commands.executeCommand('workbench.action.closeAllEditors'); });

  test('the readings table holds every planned time, in one step of undo', async () => {
    const before = note.getText();
    const editor = await vscode.window.showTextDocument(note);
    const end = note.positionAt(before.length);
    editor.selection = new vscode.Selection(end, end);
    equal(await vscode.commands.executeCommand('evenwater.insertReadings', note.uri), true);
    const added = note.getText().slice(before.trimEnd().length);
    match(added, /```readings\r?\ntime +mat\.DO/);
    match(added, /\n20:00 +- /);
    await vscode.commands.executeCommand('undo');
    equal(note.getText(), before);
  });

  test('a plan with readings is not sealed any more', async () => {
    const before = note.getText();
    equal(await vscode.commands.executeCommand('evenwater.sealPlan', note.uri), false);
    equal(note.getText(), before);
  });

  test('a repeat is a new note, not saved, with nothing to mend but what waits for readings; then its plan is sealed', async () => {
    const uri = await vscode.commands.executeCommand<vscode.Uri>('evenwater.repeatExperiment', note.uri, '2026-05-02');
    equal(uri.scheme, 'untitled');
    match(uri.path, /night-2026-05-02\.tank\.md$/);
    const repeat = await until('the repeat', () => vscode.workspace.textDocuments.find((each) => each.uri.toString() === uri.toString() && each.getText() !== ''));
    equal(repeat.languageId, 'markdown');
    match(repeat.getText(), /repeats: night\.tank\.md sha256:[0-9a-f]{64}/);
    await until('its problems', () => ours(repeat).some((each) => codeOf(each) === 'nothing-read-yet'));
    deepEqual(ours(repeat).filter((each) => each.severity === vscode.DiagnosticSeverity.Error).map((each) => each.message), []);
    equal(await vscode.commands.executeCommand('evenwater.sealPlan', repeat.uri), true);
    ok(/sealed: \S+ sha256:/.test(repeat.getText()));
    await vscode.window.showTextDocument(repeat);
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  });
});
