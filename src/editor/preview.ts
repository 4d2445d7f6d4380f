// The built-in Markdown preview: gives it our markdown-it plugin, with the notes that the editor has read already.
import type { MarkdownIt } from 'markdown-it';
import * as vscode from 'vscode';
import type { Note } from '../experiment/types.ts';
import { evenwaterMarkdown } from '../render/plugin.ts';
import type { DataFiles } from './dataFiles.ts';
import { interfaceLanguage } from './language.ts';
import type { NoteStore } from './noteStore.ts';

/** Where a text stands that the preview renders without saying so (`markdown.api.render` with a string). */
const nowhere = vscode.Uri.from({ scheme: 'untitled', path: 'note.md' });

/** What `activate` returns to the built-in Markdown extension. */
export function extendPreview(notes: NoteStore): { extendMarkdownIt: (md: MarkdownIt) => MarkdownIt } {
  const noteFor = (env: unknown, source: string): Note | null => {
    const note = notes.noteOfText(addressIn(env) ?? nowhere, source);
    return note?.syntax.isNote ? note : null;
  };
  return { extendMarkdownIt: (md) => evenwaterMarkdown(md, { noteFor, target: 'preview', interfaceLanguage }) };
}

/** Shows previews again when a data file has arrived or changed: their text is the same, what it computes is not. */
export function refreshPreviewsWithFiles(files: DataFiles): vscode.Disposable {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  return vscode.Disposable.from(
    files.onDidChange(() => {
      clearTimeout(waiting);
      waiting = setTimeout(() => void vscode.commands.executeCommand('markdown.preview.refresh'), 100);
    }),
    new vscode.Disposable(() => clearTimeout(waiting)),
  );
}

function addressIn(env: unknown): vscode.Uri | null {
  const address = (env as { currentDocument?: unknown } | null | undefined)?.currentDocument;
  return address instanceof vscode.Uri ? address : null;
}
