// The extension starts, quietly, and offers what its manifest says.
import * as vscode from 'vscode';
import { deepEqual, equal, ok } from '../assert.ts';
import { open, until } from './support.ts';

suite('starting', () => {
  test('a Markdown file starts the extension, which extends the preview', async () => {
    await open('night.tank.md');
    const extension = vscode.extensions.getExtension('evenwater.evenwater');
    ok(extension, 'the extension is not installed');
    await until('activation', () => extension.isActive);
    equal(typeof (extension.exports as { extendMarkdownIt?: unknown }).extendMarkdownIt, 'function');
  });

  test('every command of the manifest is registered', async () => {
    const registered = await vscode.commands.getCommands(true);
    const manifest = vscode.extensions.getExtension('evenwater.evenwater')!.packageJSON as { contributes: { commands: { command: string }[] } };
    deepEqual(manifest.contributes.commands.map(({ command }) => command).filter((command) => !registered.includes(command)), []);
  });

  test('a note stays a Markdown document', async () => {
    equal((await open('night.tank.md')).languageId, 'markdown');
  });
});
