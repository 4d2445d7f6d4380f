// The editor's journal: each row is stored here before the note is touched, one file a row, and goes when the note is saved.
// It lives in the extension's own storage, in whatever file system that is.
import { sha256Of } from '../../protocol/sha256.ts';
import * as vscode from 'vscode';
import { pendingText, readPending, type PendingRow } from '../../edits/pendingRow.ts';

export class RowJournal {
  readonly #folder: vscode.Uri;
  readonly #log: vscode.LogOutputChannel;

  constructor(context: vscode.ExtensionContext, log: vscode.LogOutputChannel) {
    this.#folder = vscode.Uri.joinPath(context.storageUri ?? context.globalStorageUri, 'journal');
    this.#log = log;
  }

  /** Resolves when the row is stored; false when it could not be. */
  async add(note: vscode.Uri, row: PendingRow): Promise<boolean> {
    try {
      await vscode.workspace.fs.writeFile(this.#file(note, row), new TextEncoder().encode(pendingText(row)));
      return true;
    } catch (error) {
      this.#log.error(error instanceof Error ? error : String(error));
      return false;
    }
  }

  async remove(note: vscode.Uri, row: PendingRow): Promise<void> {
    try {
      await vscode.workspace.fs.delete(this.#file(note, row));
    } catch (error) {
      this.#log.debug(`A journal entry was gone already: ${String(error)}`);
    }
  }

  /** Rows of a note that never were seen on disk, the first one first. */
  async rows(note: vscode.Uri): Promise<PendingRow[]> {
    const folder = this.#folderOf(note);
    let names: [string, vscode.FileType][];
    try {
      names = await vscode.workspace.fs.readDirectory(folder);
    } catch {
      return []; // Nothing was logged into this note yet.
    }
    const rows: PendingRow[] = [];
    for (const [name] of names.sort(([a], [b]) => (a < b ? -1 : 1))) {
      const row = await this.#read(vscode.Uri.joinPath(folder, name));
      if (row) rows.push(row);
    }
    return rows;
  }

  async #read(file: vscode.Uri): Promise<PendingRow | null> {
    try {
      return readPending(new TextDecoder().decode(await vscode.workspace.fs.readFile(file)));
    } catch (error) {
      this.#log.warn(`${file.path} could not be read: ${String(error)}`);
      return null;
    }
  }

  #folderOf(note: vscode.Uri): vscode.Uri {
    return vscode.Uri.joinPath(this.#folder, sha256Of(note.toString()).slice(0, 16));
  }

  #file(note: vscode.Uri, row: PendingRow): vscode.Uri {
    return vscode.Uri.joinPath(this.#folderOf(note), `${row.id.replace(/[^\w-]/g, '')}.json`);
  }
}

/** Ids sort by the time they were made. */
export function newRowId(now: number): string {
  return `${now.toString(36).padStart(9, '0')}-${Math.random().toString(36).slice(2, 10)}`;
}
