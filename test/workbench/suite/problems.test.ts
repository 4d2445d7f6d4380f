// Problems while writing: a claim that stops matching is seen at its place, and its fix mends it.
import * as vscode from 'vscode';
import { deepEqual, equal, match, ok } from '../assert.ts';
import { codeOf, find, fixes, open, ours, replace, revert, until, withCode } from './support.ts';

suite('problems', () => {
  let note: vscode.TextDocument;
  suiteSetup(async () => { note = await open('night.tank.md'); });
  teardown(async () => { await revert(note); });

  test('the note has no errors, and one claim to fill in', async () => {
    const unfilled = await until('the problem of the unfilled claim', () => withCode(note, 'claim-unfilled'));
    equal(unfilled.severity, vscode.DiagnosticSeverity.Warning);
    deepEqual(ours(note).filter((each) => each.severity === vscode.DiagnosticSeverity.Error).map((each) => each.message), []);
  });

  test('an edited reading makes its claims stop matching; the fix mends the text', async () => {
    await replace(note, '22:30    8.02', '22:30    7.92');
    const mismatch = await until('the mismatch', () => ours(note).find((each) => codeOf(each) === 'claim-mismatch' && note.getText(each.range).includes('0.24')));
    equal(mismatch.severity, vscode.DiagnosticSeverity.Error);
    const mend = await until('the preferred fix', async () => (await fixes(note, mismatch.range)).find((action) => action.isPreferred && action.title.includes('0.34')));
    ok(mend.edit, 'the fix has no edit');
    await vscode.workspace.applyEdit(mend.edit);
    match(note.getText(), /\{0\.34 mg\/L = fall\(mat\.DO, light-off\.\.22:30\)\}/);
    await until('the mismatch to go', () => !ours(note).some((each) => codeOf(each) === 'claim-mismatch' && note.getText(each.range).includes('0.34')));
  });

  test('a condition that is no longer true is an error', async () => {
    await replace(note, '22:30    8.02', '22:30    8.26');
    const untrue = await until('the false statement', () => withCode(note, 'statement-false'));
    equal(untrue.severity, vscode.DiagnosticSeverity.Error);
  });

  test('an unknown key in the plan is named, with the nearest one as its fix', async () => {
    await replace(note, 'water depth: 28 cm', 'water dept: 28 cm');
    const unknown = await until('the unknown key', () => withCode(note, 'unknown-key'));
    equal(note.getText(unknown.range), 'water dept');
    const mend = (await fixes(note, unknown.range)).find((action) => action.edit);
    ok(mend?.edit, 'there is no fix');
    await vscode.workspace.applyEdit(mend.edit);
    match(note.getText(), /water depth: 28 cm/);
  });

  test('a comma as decimal mark is mended by "fix all"', async () => {
    await replace(note, '23:00    7.84', '23:00    7,84');
    await until('the decimal comma', () => withCode(note, 'decimal-comma'));
    const all = await vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', note.uri,
      find(note, '7,84'), vscode.CodeActionKind.SourceFixAll.append('evenwater').value);
    ok(all[0]?.edit, 'there is no "fix all"');
    await vscode.workspace.applyEdit(all[0].edit);
    match(note.getText(), /23:00 {4}7\.84/);
  });
});
