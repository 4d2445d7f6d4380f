// One note a document, read once a version and shared by every provider and by the preview.
// Reading is put off while the author types; whoever needs the note sooner gets it at once.
import * as vscode from 'vscode';
import { readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import type { FileContents } from '../readings/types.ts';
import type { DataFiles } from './dataFiles.ts';
import { isMarkdown, isNoteFile, mayBeNote } from './selector.ts';

/** Milliseconds of rest after a key before a note is read again. */
const rest = 300;
/** Notes kept; a preview may show a file that no editor holds open. */
const kept = 32;

interface Entry { readonly text: string; readonly files: FileContents; readonly note: Note }

export class NoteStore implements vscode.Disposable {
  readonly #entries = new Map<string, Entry>();
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();
  readonly #read = new vscode.EventEmitter<vscode.TextDocument>();
  readonly #rested = new vscode.EventEmitter<vscode.TextDocument>();
  readonly #closed = new vscode.EventEmitter<vscode.TextDocument>();
  readonly #files: DataFiles;
  readonly #log: vscode.LogOutputChannel;
  readonly #subscriptions: vscode.Disposable;
  /** The note of this document is up to date, or the document no longer is a note. */
  readonly onDidRead = this.#read.event;
  readonly onDidClose = this.#closed.event;

  constructor(files: DataFiles, log: vscode.LogOutputChannel) {
    this.#files = files;
    this.#log = log;
    this.#subscriptions = vscode.Disposable.from(
      vscode.workspace.onDidOpenTextDocument((document) => this.#schedule(document, 0)),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => { if (contentChanges.length > 0) this.#schedule(document, rest); }),
      vscode.workspace.onDidCloseTextDocument((document) => this.#forget(document)),
      files.onDidChange((uri) => {
        const document = openDocument(uri);
        if (document) this.#schedule(document, 0);
      }),
    );
    for (const document of vscode.workspace.textDocuments) this.#schedule(document, 0);
  }

  /** The note of a document as it stands now; null for anything but a note. */
  noteOf(document: vscode.TextDocument): Note | null {
    return isMarkdown(document) ? this.noteOfText(document.uri, document.getText()) : null;
  }

  /** The note as it was last read, which may be some keys behind the document; null where none was read. */
  lastNoteOf(document: vscode.TextDocument): Note | null {
    return isMarkdown(document) ? this.#entries.get(document.uri.toString())?.note ?? null : null;
  }

  /** The note of a text that stands at this address, from the cache where the text is the same. */
  noteOfText(uri: vscode.Uri, text: string): Note | null {
    const fileIsNote = isNoteFile(uri.path);
    if (!fileIsNote && !mayBeNote(text)) return null;
    const key = uri.toString();
    const files = this.#files.contentsFor(uri);
    const known = this.#entries.get(key);
    if (known && known.text === text && known.files === files) return known.note;
    const note = this.#readSafely(text, files, known?.note, fileIsNote);
    if (!note) return null;
    this.#entries.delete(key);
    this.#entries.set(key, { text, files, note });
    if (this.#entries.size > kept) this.#entries.delete(this.#entries.keys().next().value!);
    this.#files.want(uri, note.wants);
    return note;
  }

  /** The note once its author rests; null when cancelled meanwhile, or for anything but a note. */
  async noteAtRest(document: vscode.TextDocument, token: vscode.CancellationToken): Promise<Note | null> {
    const key = document.uri.toString();
    while (this.#timers.has(key) && !token.isCancellationRequested) {
      await new Promise<void>((resolve) => {
        const stop = vscode.Disposable.from(
          this.#rested.event((rested) => { if (rested.uri.toString() === key) { stop.dispose(); resolve(); } }),
          this.#closed.event((closed) => { if (closed.uri.toString() === key) { stop.dispose(); resolve(); } }),
          token.onCancellationRequested(() => { stop.dispose(); resolve(); }),
        );
      });
    }
    return token.isCancellationRequested ? null : this.noteOf(document);
  }

  /** The note with every data file that it wants, missing ones known to be missing. */
  async noteWithFiles(document: vscode.TextDocument): Promise<Note | null> {
    let note = this.noteOf(document);
    for (let round = 0; note && round < 4; round += 1) {
      await this.#files.settled(document.uri);
      const again = this.noteOf(document);
      if (again === note) break;
      note = again;
    }
    return note;
  }

  /** Reads a note at once after a change that is whole, such as a logged row: nobody is typing whom it could disturb. */
  readNow(document: vscode.TextDocument): void {
    if (!isMarkdown(document)) return;
    clearTimeout(this.#timers.get(document.uri.toString()));
    this.#readAndTell(document);
  }

  dispose(): void {
    this.#subscriptions.dispose();
    for (const timer of this.#timers.values()) clearTimeout(timer);
    this.#read.dispose();
    this.#rested.dispose();
    this.#closed.dispose();
  }

  #schedule(document: vscode.TextDocument, delay: number): void {
    if (!isMarkdown(document)) return;
    const key = document.uri.toString();
    clearTimeout(this.#timers.get(key));
    this.#timers.set(key, setTimeout(() => this.#readAndTell(document), delay));
  }

  #readAndTell(document: vscode.TextDocument): void {
    const key = document.uri.toString();
    this.#timers.delete(key);
    if (document.isClosed) return;
    const wasNote = this.#entries.has(key);
    const isNote = this.noteOf(document) !== null;
    if (!isNote) this.#entries.delete(key);
    if (isNote || wasNote) this.#read.fire(document); // Plain Markdown stays quiet: nothing is asked for again.
    this.#rested.fire(document);
  }

  #forget(document: vscode.TextDocument): void {
    if (!isMarkdown(document)) return;
    const key = document.uri.toString();
    clearTimeout(this.#timers.get(key));
    this.#timers.delete(key);
    this.#entries.delete(key);
    this.#files.forget(document.uri);
    this.#closed.fire(document);
  }

  /** readNote promises not to throw; should it, the author keeps an editor that works, and the log has the reason. */
  #readSafely(text: string, files: FileContents, previous: Note | undefined, fileIsNote: boolean): Note | null {
    try {
      return readNote(text, files, previous, { fileIsNote });
    } catch (error) {
      this.#log.error(error instanceof Error ? error : String(error));
      return null;
    }
  }
}

function openDocument(uri: vscode.Uri): vscode.TextDocument | undefined {
  const key = uri.toString();
  return vscode.workspace.textDocuments.find((document) => document.uri.toString() === key);
}
