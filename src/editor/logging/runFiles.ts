// Runs as files of the extension's own storage, one a note: every window of the editor sees the same ones.
import { sha256Of } from '../../protocol/sha256.ts';
import * as vscode from 'vscode';
import type { RunStorage } from './runHolder.ts';

export function runFiles(context: vscode.ExtensionContext, log: vscode.LogOutputChannel): RunStorage {
  const folder = vscode.Uri.joinPath(context.globalStorageUri, 'runs');
  const fileOf = (note: string) => vscode.Uri.joinPath(folder, `${sha256Of(note).slice(0, 16)}.json`);
  const read = async (file: vscode.Uri): Promise<string | null> => {
    try {
      return new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    } catch (error) {
      return error instanceof vscode.FileSystemError && error.code === 'FileNotFound' ? null : '';
    }
  };
  return {
    read: (note) => read(fileOf(note)),
    write: async (note, text) => {
      try {
        await vscode.workspace.fs.writeFile(fileOf(note), new TextEncoder().encode(text));
        return true;
      } catch (error) {
        log.warn(`A run could not be stored: ${String(error)}`);
        return false;
      }
    },
    remove: async (note) => {
      try {
        await vscode.workspace.fs.delete(fileOf(note));
      } catch (error) {
        log.debug(`A run was gone already: ${String(error)}`);
      }
    },
    all: async () => {
      try {
        const names = await vscode.workspace.fs.readDirectory(folder);
        const texts = await Promise.all(names.map(([name]) => read(vscode.Uri.joinPath(folder, name))));
        return texts.filter((text) => text !== null);
      } catch {
        return []; // No run was ever started.
      }
    },
  };
}
