// Notes of the workspace among its symbols: found by title and by question.
import * as vscode from 'vscode';
import { matchesQuery, noteTitle, type NoteTitle } from '../assist/noteTitle.ts';

/** More notes than this are not listed; larger ones are not read. */
const mostNotes = 1000;
const largestNote = 4 * 1024 * 1024;
/** Milliseconds for which the list of notes holds; a query asks at every key. */
const fresh = 3000;

interface Known { readonly mtime: number; readonly title: NoteTitle | null; readonly position: vscode.Position }

export function registerWorkspaceNotes(log: vscode.LogOutputChannel): vscode.Disposable {
  const known = new Map<string, Known>();
  let listed: { readonly at: number; readonly uris: Thenable<vscode.Uri[]> } | null = null;
  return vscode.languages.registerWorkspaceSymbolProvider({
    provideWorkspaceSymbols: async (query, token) => {
      if (!listed || Date.now() - listed.at > fresh) listed = { at: Date.now(), uris: vscode.workspace.findFiles('**/*.tank.md', '**/node_modules/**', mostNotes) };
      const found: vscode.SymbolInformation[] = [];
      for (const uri of await listed.uris) {
        if (token.isCancellationRequested) return [];
        const note = await titleOf(uri, known, log);
        if (!note?.title || !(matchesQuery(note.title.title, query) || matchesQuery(note.title.question, query))) continue;
        found.push(new vscode.SymbolInformation(note.title.title, vscode.SymbolKind.File, note.title.question, new vscode.Location(uri, note.position)));
      }
      return found;
    },
  });
}

async function titleOf(uri: vscode.Uri, known: Map<string, Known>, log: vscode.LogOutputChannel): Promise<Known | null> {
  const key = uri.toString();
  try {
    const { mtime, size } = await vscode.workspace.fs.stat(uri);
    const before = known.get(key);
    if (before?.mtime === mtime) return before;
    if (size > largestNote) return null;
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
    const title = noteTitle(text);
    const head = text.slice(0, title?.range.start ?? 0);
    const entry = { mtime, title, position: new vscode.Position(head.split('\n').length - 1, head.length - head.lastIndexOf('\n') - 1) };
    known.set(key, entry);
    return entry;
  } catch (error) {
    log.info(`${uri.path} could not be read for the list of notes: ${error instanceof Error ? error.message : String(error)}`);
    return null;
  }
}
