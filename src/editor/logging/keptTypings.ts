// Rows that were begun and left, one a note: they stand in the prompt again the next time, also after a window reload.
import * as vscode from 'vscode';
import type { KeptTyping } from '../../edits/keptTyping.ts';

const storedAs = 'evenwater.begun';

export class KeptTypings {
  readonly #memory: vscode.Memento;
  /** What is stored, less what a prompt has taken up: a row that is being written is not offered a second time. */
  readonly #offered: Map<string, KeptTyping>;

  constructor(context: vscode.ExtensionContext) {
    this.#memory = context.workspaceState;
    this.#offered = new Map(Object.entries(this.#stored()));
  }

  /** Takes up what was kept for a note. It stays stored until `keep` says what became of it. */
  take(note: vscode.Uri): KeptTyping | null {
    const found = this.#offered.get(note.toString()) ?? null;
    this.#offered.delete(note.toString());
    return found;
  }

  async keep(note: vscode.Uri, kept: KeptTyping | null): Promise<void> {
    const { [note.toString()]: before, ...others } = this.#stored();
    if (kept !== null) this.#offered.set(note.toString(), kept);
    if (before === undefined && kept === null) return;
    await this.#memory.update(storedAs, kept === null ? others : { ...others, [note.toString()]: kept });
  }

  #stored(): Readonly<Record<string, KeptTyping>> {
    const stored = this.#memory.get<unknown>(storedAs);
    if (typeof stored !== 'object' || stored === null) return {};
    return Object.fromEntries(Object.entries(stored).filter((entry): entry is [string, KeptTyping] => isKept(entry[1])));
  }
}

function isKept(value: unknown): boolean {
  const { typed, time } = (value ?? {}) as Record<string, unknown>;
  return typeof typed === 'string' && typeof time === 'number';
}
