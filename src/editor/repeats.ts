// The notes of the workspace that repeat a run: found by the file that their plans name, in editors as they stand there.
import * as vscode from 'vscode';
import { mayRepeat } from '../assist/renameRepeats.ts';
import { readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import { repeatFacts } from '../protocol/planSeal.ts';
import { insideFolder } from './dataFiles.ts';
import { isMarkdown } from './selector.ts';

/** More notes than this are not looked through. */
const mostNotes = 1000;

export interface RepeatFound { readonly document: vscode.TextDocument; readonly note: Note }

/** Repeats of the note at this address. Reads every note file of the workspace once; only those that name the file are parsed. */
export async function repeatsOf(first: vscode.Uri, token: vscode.CancellationToken, log: vscode.LogOutputChannel): Promise<RepeatFound[]> {
  if (first.scheme === 'untitled') return [];
  const fileName = first.path.slice(first.path.lastIndexOf('/') + 1);
  const open = vscode.workspace.textDocuments.filter((document) => isMarkdown(document) && !document.isClosed);
  const files = await vscode.workspace.findFiles('**/*.tank.md', '**/node_modules/**', mostNotes, token);
  const addresses = new Map([...open.map((document) => document.uri), ...files].map((uri) => [uri.toString(), uri]));
  addresses.delete(first.toString());
  const found: RepeatFound[] = [];
  for (const uri of addresses.values()) {
    if (token.isCancellationRequested) return [];
    const document = open.find((each) => each.uri.toString() === uri.toString());
    const repeat = await readRepeat(uri, document, fileName, log);
    const name = repeat?.note.protocol && repeatFacts(repeat.note.protocol)?.name;
    if (repeat && name && insideFolder(uri, name)?.path === first.path) found.push(repeat);
  }
  return found;
}

async function readRepeat(uri: vscode.Uri, open: vscode.TextDocument | undefined, fileName: string, log: vscode.LogOutputChannel): Promise<RepeatFound | null> {
  try {
    const text = open?.getText() ?? new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
    if (!mayRepeat(text, fileName)) return null;
    const document = open ?? await vscode.workspace.openTextDocument(uri);
    return { document, note: readNote(document.getText()) };
  } catch (error) {
    log.info(`${uri.path} could not be read while looking for repeats: ${error instanceof Error ? error.message : String(error)}`);
    return null;
  }
}
