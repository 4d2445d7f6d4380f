// No false alarm while typing: what is half written under the cursor is no fault yet, and nothing round about moves.
import * as vscode from 'vscode';
import { deepEqual, equal, ok } from '../assert.ts';
import { codeOf, find, hints, lenses, open, ours, revert, until } from './support.ts';

const rest = (milliseconds: number) => new Promise((resolve) => { setTimeout(resolve, milliseconds); });

suite('calm while typing', () => {
  let note: vscode.TextDocument;
  suiteSetup(async () => { note = await open('night.tank.md'); });
  teardown(async () => { await revert(note); });

  /** Puts the cursor behind `text` and types there, key by key, as an author does. */
  async function type(text: string, typed: string): Promise<vscode.Position> {
    const editor = await vscode.window.showTextDocument(note);
    const { end } = find(note, text);
    editor.selection = new vscode.Selection(end, end);
    for (const letter of typed) await vscode.commands.executeCommand('type', { text: letter });
    return editor.selection.active;
  }

  const onLine = (line: number) => ours(note).filter((each) => each.range.start.line === line && each.severity === vscode.DiagnosticSeverity.Error).map(codeOf);

  test('an error on the line under the cursor waits for a pause; those of other lines do not', async () => {
    const started = Date.now();
    const { line } = await type('first-loss = percent-fall(mat.DO, light-off..22:30)', ' +');
    // The claim that uses the result fails on its own line meanwhile.
    await until('the problem elsewhere', () => ours(note).some((each) => each.severity === vscode.DiagnosticSeverity.Error && each.range.start.line !== line), 5000);
    const elsewhere = Date.now() - started;
    if (elsewhere < 1200) deepEqual(onLine(line), [], 'a false alarm:');
    await until('the error after a pause', () => onLine(line).length > 0, 5000);
    ok(Date.now() - started >= 1400, `shown after ${Date.now() - started} ms`);
  });

  test('it is shown as soon as the cursor leaves the line', async () => {
    const { line } = await type('first-loss = percent-fall(mat.DO, light-off..22:30)', ' +');
    await rest(500);
    const left = Date.now();
    await vscode.commands.executeCommand('cursorDown');
    await until('the error', () => onLine(line).length > 0, 5000);
    ok(Date.now() - left < 1000, `shown ${Date.now() - left} ms after the cursor left`);
  });

  test('it is shown as soon as the note is saved', async () => {
    const before = note.getText();
    const { line } = await type('first-loss = percent-fall(mat.DO, light-off..22:30)', ' +');
    await rest(450);
    await note.save();
    await until('the error', () => onLine(line).length > 0, 1000);
    const edit = new vscode.WorkspaceEdit();
    edit.replace(note.uri, new vscode.Range(0, 0, note.lineCount, 0), before);
    await vscode.workspace.applyEdit(edit);
    await note.save();
  });

  test('a warning waits longer than an error', async () => {
    const { line } = await type('The end.', ' It was {? = last(mat.DO)}.');
    const warned = () => ours(note).some((each) => codeOf(each) === 'claim-unfilled' && each.range.start.line === line);
    await rest(2200);
    equal(warned(), false, 'warned while the author paused for a moment:');
    await until('the warning', warned, 6000);
  });

  test('the lines above blocks and the values at line ends keep still while the plan is broken', async () => {
    const all = await until('CodeLens', async () => { const found = await lenses(note); return found.length >= 3 && found; });
    const [value] = await until('the value', async () => { const found = await hints(note); return found.length > 0 && found; });
    await type('  DO: {what: dissolved oxygen, unit: mg/L', '}');
    await until('the error after a pause', () => ours(note).some((each) => each.severity === vscode.DiagnosticSeverity.Error), 8000);
    const broken = await lenses(note);
    deepEqual(broken.map((lens) => lens.line), all.map((lens) => lens.line));
    ok(broken.every((lens) => lens.title !== '' && lens.title !== '–'), broken.map((lens) => lens.title).join(' | '));
    deepEqual((await hints(note)).map((hint) => hint.label), [value!.label]);
  });
});
