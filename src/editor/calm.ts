// Keeps problems calm while somebody types: knows the cursors and the time since the last key, asks src/assist/calm.ts what
// may be shown, and looks again when the cursor leaves the line or the keys have rested.
import * as vscode from 'vscode';
import { calmProblems, type CursorLine, type ShownProblem } from '../assist/calm.ts';
import type { Note } from '../experiment/types.ts';
import type { Problem } from '../problems/problem.ts';
import type { NoteStore } from './noteStore.ts';
import type { Severities } from './severities.ts';

interface Shown { readonly problems: readonly Problem[]; /** The same, as the next look compares them. */ readonly places: readonly ShownProblem[] }
interface Waiting { readonly errors: number; readonly timer: ReturnType<typeof setTimeout> }

export class CalmNotes implements vscode.Disposable {
  readonly #notes: NoteStore;
  readonly #severities: Severities;
  /** When a note was last typed in, by address. */
  readonly #typed = new Map<string, number>();
  readonly #before = new Map<string, Shown>();
  readonly #waiting = new Map<string, Waiting>();
  readonly #shown = new vscode.EventEmitter<{ readonly document: vscode.TextDocument; readonly problems: readonly Problem[] | null }>();
  readonly #subscription: vscode.Disposable;
  /** What should be shown of a document now; null where it is no note any more. */
  readonly onDidShow = this.#shown.event;

  constructor(notes: NoteStore, severities: Severities) {
    this.#notes = notes;
    this.#severities = severities;
    const lookAgain = (document: vscode.TextDocument) => { if (this.#waiting.has(document.uri.toString())) this.#update(document); };
    this.#subscription = vscode.Disposable.from(
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length > 0 && notes.lastNoteOf(document)) this.#typed.set(document.uri.toString(), Date.now());
      }),
      notes.onDidRead((document) => this.#update(document)),
      notes.onDidClose((document) => this.#forget(document.uri.toString())),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => lookAgain(textEditor.document)),
      vscode.window.onDidChangeActiveTextEditor(() => vscode.workspace.textDocuments.forEach(lookAgain)),
      vscode.workspace.onDidSaveTextDocument((document) => {
        this.#typed.delete(document.uri.toString());
        lookAgain(document);
      }),
      severities.onDidChange(() => vscode.workspace.textDocuments.forEach((document) => { if (notes.lastNoteOf(document)) this.#update(document); })),
    );
  }

  /** The problems that are shown of a document at the moment. */
  shownOf(document: vscode.TextDocument): readonly Problem[] {
    return this.#before.get(document.uri.toString())?.problems ?? [];
  }

  /** The note once its author rests and no error waits to be shown; null when cancelled meanwhile, or for anything but a note. */
  async noteInCalm(document: vscode.TextDocument, token: vscode.CancellationToken): Promise<Note | null> {
    const key = document.uri.toString();
    for (;;) {
      const note = await this.#notes.noteAtRest(document, token);
      if (!note || (this.#waiting.get(key)?.errors ?? 0) === 0) return note;
      await new Promise<void>((resolve) => {
        const stop = vscode.Disposable.from(
          this.onDidShow((shown) => { if (shown.document === document) { stop.dispose(); resolve(); } }),
          this.#notes.onDidClose((closed) => { if (closed === document) { stop.dispose(); resolve(); } }),
          token.onCancellationRequested(() => { stop.dispose(); resolve(); }),
        );
      });
    }
  }

  dispose(): void {
    this.#subscription.dispose();
    for (const { timer } of this.#waiting.values()) clearTimeout(timer);
    this.#shown.dispose();
  }

  #update(document: vscode.TextDocument): void {
    const note = this.#notes.lastNoteOf(document);
    const key = document.uri.toString();
    if (!note) {
      this.#forget(key);
      this.#shown.fire({ document, problems: null });
      return;
    }
    if (note.text !== document.getText()) return; // It is read again in a moment.
    const problems = this.#severities.problemsOf(document, note);
    const quiet = Date.now() - (this.#typed.get(key) ?? Number.NEGATIVE_INFINITY);
    const calm = calmProblems(problems, this.#before.get(key)?.places ?? [], cursorLines(document), quiet);
    clearTimeout(this.#waiting.get(key)?.timer);
    if (calm.next === null) this.#waiting.delete(key);
    else this.#waiting.set(key, { errors: calm.waitingErrors, timer: setTimeout(() => this.#update(document), calm.next + 10) });
    this.#before.set(key, { problems: calm.shown, places: calm.shown.map((problem) => ({ code: problem.code, line: document.positionAt(problem.range.start).line })) });
    this.#shown.fire({ document, problems: calm.shown });
  }

  #forget(key: string): void {
    clearTimeout(this.#waiting.get(key)?.timer);
    this.#waiting.delete(key);
    this.#before.delete(key);
    this.#typed.delete(key);
  }
}

/** The lines with a cursor in the editor that has the keyboard; none where the document is shown elsewhere only. */
function cursorLines(document: vscode.TextDocument): CursorLine[] {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document !== document) return [];
  return editor.selections.map(({ active }) => {
    const { range } = document.lineAt(active.line);
    return { line: active.line, range: { start: document.offsetAt(range.start), end: document.offsetAt(range.end) } };
  });
}
