// The commands: check, fill in, publish; what they write, and when they refuse.
import * as vscode from 'vscode';
import { equal, match, ok } from '../assert.ts';
import { fixture, open, replace, revert } from './support.ts';

interface Published { readonly written?: vscode.Uri; readonly refused?: string; readonly problems: readonly { readonly code: string }[] }

suite('commands', () => {
  let note: vscode.TextDocument;
  const post = () => fixture('night.html');
  const removePost = async () => { try { await vscode.workspace.fs.delete(post()); } catch { /* It was not written. */ } };
  suiteSetup(async () => { note = await open('night.tank.md'); await removePost(); });
  teardown(async () => { await revert(note); await removePost(); });

  test('check counts', async () => {
    const result = await vscode.commands.executeCommand<{ errors: number; warnings: number; claims: number }>('evenwater.check', note.uri);
    equal(result.errors, 0);
    equal(result.claims, 5);
  });

  test('fill in writes the value in the place of the question mark, in one step', async () => {
    equal(await vscode.commands.executeCommand('evenwater.fillIn', note.uri), 1);
    match(note.getText(), /\{7\.66 mg\/L = last\(mat\.DO\)\}/);
    await vscode.commands.executeCommand('undo');
    match(note.getText(), /\{\? = last\(mat\.DO\)\}/);
  });

  test('fill in on save only where the setting says so', async () => {
    const settings = vscode.workspace.getConfiguration('evenwater', note.uri);
    await settings.update('fillInOnSave', true, vscode.ConfigurationTarget.Global);
    try {
      await replace(note, 'The end.', 'The very end.');
      await note.save();
      match(note.getText(), /\{7\.66 mg\/L = last\(mat\.DO\)\}/);
    } finally {
      await settings.update('fillInOnSave', undefined, vscode.ConfigurationTarget.Global);
      await replace(note, '{7.66 mg/L = last(mat.DO)}', '{? = last(mat.DO)}');
      await replace(note, 'The very end.', 'The end.');
      await note.save();
    }
  });

  test('publish writes one HTML file beside the note, and again over its own', async () => {
    for (let round = 0; round < 2; round += 1) {
      const result = await vscode.commands.executeCommand<Published>('evenwater.publish', note.uri);
      ok(result.written, `refused: ${result.refused}`);
      const html = new TextDecoder().decode(await vscode.workspace.fs.readFile(post()));
      match(html, /^<!doctype html>/i);
      match(html, /data-formula="[^"]*fall\(mat\.DO, light-off\.\.22:30\)/);
      ok(!/<script/i.test(html), 'the post holds a script');
    }
  });

  test('recheck says that a post agrees with its note, and finds a number that was changed in it', async () => {
    ok((await vscode.commands.executeCommand<Published>('evenwater.publish', note.uri)).written, 'not published');
    const rechecked = async () => vscode.commands.executeCommand<{ holds?: boolean; differences?: number }>('evenwater.recheck', post());
    equal((await rechecked()).holds, true);
    const html = new TextDecoder().decode(await vscode.workspace.fs.readFile(post()));
    ok(html.includes('>2.9 %<'), 'the number to change is not there');
    await vscode.workspace.fs.writeFile(post(), new TextEncoder().encode(html.replace('>2.9 %<', '>3.9 %<')));
    const changed = await rechecked();
    equal(changed.holds, false);
    ok((changed.differences ?? 0) >= 1, 'no difference was told');
  });

  test('publish refuses while a claim does not match, and writes nothing', async () => {
    await replace(note, '{2.9 % = first-loss}', '{3.9 % = first-loss}');
    const result = await vscode.commands.executeCommand<Published>('evenwater.publish', note.uri);
    equal(result.refused, 'errors');
    equal(result.problems[0]?.code, 'claim-mismatch');
    let there = true;
    try { await vscode.workspace.fs.stat(post()); } catch { there = false; }
    ok(!there, 'a post was written');
  });
});
