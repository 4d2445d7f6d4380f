// Notes in unusual places: never saved, on the left side of a comparison, renamed, deleted, in another language; and the settings that
// change what is shown.
import * as vscode from 'vscode';
import { deepEqual, equal, match, ok } from '../assert.ts';
import { codeOf, find, fixes, fixture, hints, hoverText, lenses, open, ours, replace, revert, until, withCode } from './support.ts';

const textOf = async (name: string): Promise<string> => new TextDecoder().decode(await vscode.workspace.fs.readFile(fixture(name)));
const unfilled = (document: vscode.TextDocument) => until('problems', () => withCode(document, 'claim-unfilled'));

suite('notes elsewhere', () => {
  test('a note that was never saved is checked and helped like any other', async () => {
    const note = await vscode.workspace.openTextDocument({ language: 'markdown', content: await textOf('night.tank.md') });
    await vscode.window.showTextDocument(note);
    await unfilled(note);
    match(await hoverText(note, find(note, '{0.24 mg/L = fall(', '0.24')), /Computed, and the text matches/);
    ok((await lenses(note)).length >= 3, 'no lines above its blocks');
    const mend = (await fixes(note, find(note, '{? = last', '?'))).find((action) => action.edit);
    ok(mend, 'no fix');
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  });

  test('an old version, as a comparison shows it on its left, stays silent', async () => {
    const content = await textOf('night.tank.md');
    const provider = vscode.workspace.registerTextDocumentContentProvider('gitfs', { provideTextDocumentContent: () => content });
    try {
      const left = vscode.Uri.from({ scheme: 'gitfs', path: '/night.tank.md' });
      await vscode.commands.executeCommand('vscode.diff', left, fixture('night.tank.md'), 'comparison');
      const right = await vscode.workspace.openTextDocument(fixture('night.tank.md'));
      await unfilled(right);
      const old = await vscode.workspace.openTextDocument(left);
      equal(old.languageId, 'markdown');
      deepEqual(ours(old), []);
      deepEqual(await lenses(old), []);
      deepEqual(await hints(old), []);
      deepEqual(await fixes(old, find(old, '{? = last', '?')), []);
      const place = find(old, '  mat:\n', 'mat').start;
      equal(await hoverText(old, find(old, '{0.24 mg/L = fall(', '0.24')), '');
      const renamed = await vscode.commands.executeCommand<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', old.uri, place, 'lid').then((edit) => edit?.size ?? 0, () => 0);
      equal(renamed, 0);
      // The right side is the note itself.
      match(await hoverText(right, find(right, '{0.24 mg/L = fall(', '0.24')), /Computed, and the text matches/);
    } finally {
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
      provider.dispose();
    }
  });

  test('problems follow a note that is renamed, and go with one that is deleted', async () => {
    const [before, after] = [fixture('moving.tank.md'), fixture('moved.tank.md')];
    await vscode.workspace.fs.copy(fixture('night.tank.md'), before, { overwrite: true });
    await vscode.commands.executeCommand('vscode.open', before);
    const count = (uri: vscode.Uri) => vscode.languages.getDiagnostics(uri).filter((each) => each.source === 'evenwater').length;
    await until('problems', () => count(before) > 0);
    const edit = new vscode.WorkspaceEdit();
    edit.renameFile(before, after, { overwrite: true });
    ok(await vscode.workspace.applyEdit(edit), 'not renamed');
    await until('problems under the new name', () => count(after) > 0);
    await until('problems of the old name to go', () => count(before) === 0);
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await vscode.workspace.fs.delete(after);
    await until('problems to go', () => count(after) === 0);
  });

  test('a rename goes on into the notes that repeat the run', async () => {
    const note = await open('night.tank.md');
    const repeat = fixture('again.tank.md');
    await vscode.workspace.fs.writeFile(repeat, new TextEncoder().encode((await textOf('night.tank.md')).replace('question:', 'repeats: night.tank.md\nquestion:')));
    try {
      await unfilled(note);
      const edit = await vscode.commands.executeCommand<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', note.uri, find(note, '  open:\n', 'open').start, 'clear');
      const files = edit.entries().map(([uri, edits]) => [uri.path.split('/').at(-1), edits.length]).sort();
      equal(files.length, 2, JSON.stringify(files));
      equal(files[0]![0], 'again.tank.md');
      equal(files[0]![1], files[1]![1]);
    } finally {
      await vscode.workspace.fs.delete(repeat);
    }
  });

  test('problems go with the language, and come back with it', async () => {
    const note = await open('night.tank.md');
    await unfilled(note);
    await vscode.languages.setTextDocumentLanguage(note, 'plaintext');
    await until('problems to go', () => vscode.languages.getDiagnostics(note.uri).length === 0);
    const again = await vscode.languages.setTextDocumentLanguage(await vscode.workspace.openTextDocument(note.uri), 'markdown');
    await unfilled(again);
  });
});

suite('severity', () => {
  let note: vscode.TextDocument;
  suiteSetup(async () => { note = await open('night.tank.md'); });
  const settings = () => vscode.workspace.getConfiguration('evenwater', note.uri);
  teardown(async () => {
    await settings().update('severity', undefined, vscode.ConfigurationTarget.Global);
    await revert(note);
  });

  test('a code gets the level that was chosen, or is not shown', async () => {
    await unfilled(note);
    await settings().update('severity', { 'claim-unfilled': 'hint', 'no-such-code': 'off' }, vscode.ConfigurationTarget.Global);
    await until('the hint', () => withCode(note, 'claim-unfilled')?.severity === vscode.DiagnosticSeverity.Hint);
    await settings().update('severity', { 'claim-unfilled': 'off' }, vscode.ConfigurationTarget.Global);
    await until('the problem to go', () => !withCode(note, 'claim-unfilled'));
    await settings().update('severity', undefined, vscode.ConfigurationTarget.Global);
    await until('the warning again', () => withCode(note, 'claim-unfilled')?.severity === vscode.DiagnosticSeverity.Warning);
  });

  test('a mismatch that is switched off still keeps the note from being published', async () => {
    await settings().update('severity', { 'claim-mismatch': 'off' }, vscode.ConfigurationTarget.Global);
    await replace(note, '{2.9 % = first-loss}', '{3.9 % = first-loss}');
    await until('the claims in the status', async () => (await lenses(note)).some((lens) => lens.title.includes('1 does not')));
    equal(withCode(note, 'claim-mismatch'), undefined);
    const before = (await vscode.workspace.fs.readDirectory(fixture('.'))).map(([name]) => name).sort();
    const result = await vscode.commands.executeCommand<{ refused?: string }>('evenwater.publish', note.uri);
    ok(result.refused, `published: ${JSON.stringify(result)}`);
    deepEqual((await vscode.workspace.fs.readDirectory(fixture('.'))).map(([name]) => name).sort(), before);
  });

  test('a problem leads to its explanation, says where else to look, and fades what has no effect', async () => {
    const problem = await unfilled(note);
    const target = (problem.code as { target: vscode.Uri }).target;
    match((await vscode.workspace.openTextDocument(target)).getText(), /^# claim-unfilled\n\n\*warning, with a fix\.\*/);
    const page = await vscode.commands.executeCommand<vscode.Uri | null>('evenwater.explainProblem', codeOf(problem));
    equal(page?.fragment, 'claim-unfilled');
    ok(page!.path.endsWith('/docs/reference.md'), page!.path);
    equal(await vscode.commands.executeCommand('evenwater.explainProblem', 'no-such-code'), null);
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await vscode.window.showTextDocument(note);
    await replace(note, 'water depth: 28 cm', 'water dept: 28 cm');
    await vscode.commands.executeCommand('cursorTop');
    const faded = await until('the unknown key', () => withCode(note, 'unknown-key'));
    deepEqual(faded.tags, [vscode.DiagnosticTag.Unnecessary]);
  });
});
