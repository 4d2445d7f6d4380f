// A table on its way into a note, from a file or as text: previewed, then turned into edits; a file from elsewhere is copied beside
// the note where the keeper wants to refer to it.
import * as vscode from 'vscode';
import type { EditResult } from '../../edits/edit.ts';
import { importFile, importTable } from '../../edits/importTable.ts';
import type { Note } from '../../experiment/types.ts';
import { previewImport, type ImportChoice } from './importPreview.ts';
import { readLoggers, type Loggers } from './loggers.ts';

export interface TableSource {
  readonly content: Uint8Array | string;
  /** Name of the file; null for text. */
  readonly name: string | null;
  /** Path from the note, with forward slashes, for a file inside the note's folder tree; null elsewhere. */
  readonly path: string | null;
}

/** The file's bytes and where it lies; null, with a message, when it cannot be read. */
export async function readSource(document: vscode.TextDocument, file: vscode.Uri): Promise<TableSource | null> {
  try {
    return { content: await vscode.workspace.fs.readFile(file), name: nameOf(file), path: document.isUntitled ? null : pathFrom(document.uri, file) };
  } catch (error) {
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} cannot be read: {1}', file.path, error instanceof Error ? error.message : String(error)));
    return null;
  }
}

const nameOf = (file: vscode.Uri): string => file.path.slice(file.path.lastIndexOf('/') + 1);

/** The file's path from the note, with forward slashes; null when it lies outside the note's folder tree. */
export function pathFrom(note: vscode.Uri, file: vscode.Uri): string | null {
  const folder = note.path.slice(0, note.path.lastIndexOf('/') + 1);
  return note.scheme === file.scheme && note.authority === file.authority && file.path.startsWith(folder) ? file.path.slice(folder.length) : null;
}

/** Regular loggers as the settings of this note remember them. */
export const loggersFor = (document: vscode.TextDocument): Loggers => readLoggers(vscode.workspace.getConfiguration('evenwater', document.uri).get<unknown>('loggers', null));

/** The preview for a source; null when the keeper leaves it. */
export function previewSource(document: vscode.TextDocument, note: Note, source: TableSource): Promise<ImportChoice | null> {
  return previewImport({
    source: source.content, note, loggers: loggersFor(document),
    title: source.name === null ? vscode.l10n.t('Import readings') : vscode.l10n.t('Import readings from {0}', source.name),
    keep: source.name === null || document.isUntitled ? null : source.path !== null ? 'file' : 'copy',
  });
}

/** The edits of a choice. A copy of the file is on disk before they are handed out. */
export async function editsOf(document: vscode.TextDocument, note: Note, source: TableSource, choice: ImportChoice, offset: number): Promise<EditResult> {
  if (choice.as === 'table' || typeof source.content === 'string') return importTable(note, choice.proposal, offset);
  const path = choice.as === 'file' ? source.path : await copyBeside(document.uri, source.name ?? 'readings.csv', source.content);
  return path === null ? importTable(note, choice.proposal, offset) : importFile(note, choice.proposal, path, source.content, offset);
}

/** Puts the file beside the note under its own name, or, where another file has that name, with a number behind it. */
async function copyBeside(note: vscode.Uri, name: string, bytes: Uint8Array): Promise<string> {
  const dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length;
  for (let number = 1; ; number += 1) {
    const tried = number === 1 ? name : `${name.slice(0, dot)}-${number}${name.slice(dot)}`;
    const target = vscode.Uri.joinPath(note, '..', tried);
    const there = await vscode.workspace.fs.readFile(target).then((found) => found, () => null);
    if (there === null) await vscode.workspace.fs.writeFile(target, bytes);
    if (there === null || sameBytes(there, bytes)) return tried;
  }
}

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((byte, index) => byte === b[index]);
