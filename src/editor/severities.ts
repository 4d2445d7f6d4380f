// The problems of a note with the severities that its author chose in the settings.
import * as vscode from 'vscode';
import { readSeverities, withSeverities, type SeverityChoices } from '../assist/severity.ts';
import type { Note } from '../experiment/types.ts';
import type { Problem } from '../problems/problem.ts';

export class Severities implements vscode.Disposable {
  readonly #log: vscode.LogOutputChannel;
  readonly #choices = new Map<string, SeverityChoices>();
  #problems = new WeakMap<Note, readonly Problem[]>();
  readonly #changed = new vscode.EventEmitter<void>();
  readonly #subscription: vscode.Disposable;
  /** The setting has changed. */
  readonly onDidChange = this.#changed.event;

  constructor(log: vscode.LogOutputChannel) {
    this.#log = log;
    this.#subscription = vscode.workspace.onDidChangeConfiguration((event) => {
      if (!event.affectsConfiguration('evenwater.severity')) return;
      this.#choices.clear();
      this.#problems = new WeakMap();
      this.#changed.fire();
    });
  }

  problemsOf(document: vscode.TextDocument, note: Note): readonly Problem[] {
    const known = this.#problems.get(note);
    if (known) return known;
    const problems = withSeverities(note.problems, this.#choicesFor(document));
    this.#problems.set(note, problems);
    return problems;
  }

  dispose(): void {
    this.#subscription.dispose();
    this.#changed.dispose();
  }

  #choicesFor(document: vscode.TextDocument): SeverityChoices {
    const key = document.uri.toString();
    const known = this.#choices.get(key);
    if (known) return known;
    const read = readSeverities(vscode.workspace.getConfiguration('evenwater', document.uri).get<unknown>('severity', null));
    for (const entry of read.unknown) this.#log.warn(`evenwater.severity: "${entry}" names no problem or no level, and changes nothing.`);
    this.#choices.set(key, read);
    return read;
  }
}
