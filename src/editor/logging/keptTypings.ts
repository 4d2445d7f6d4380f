// Rows that were begun and left, one a note: they stand in the prompt again the next time, also after a window reload.
import * as vscode from 'vscode';
import type { KeptTyping } from '../../edits/keptTyping.ts';

const storedAs = 'evenwater.begun';

export class KeptTypings {
  readonly #memory: vscode.Memento;

  constructor(context: vscode.ExtensionContext) {
    this.#memory = context.workspaceState;
  }

  of(note: vscode.Uri): KeptTyping | null {
    return this.#all()[note.toString()] ?? null;
  }

  async keep(note: vscode.Uri, kept: KeptTyping | null): Promise<void> {
    const { [note.toString()]: before, ...others } = this.#all();
    if (before === undefined && kept === null) return;
    await this.#memory.update(storedAs, kept === null ? others : { ...others, [note.toString()]: kept });
  }

  #all(): Readonly<Record<string, KeptTyping>> {
    const stored = this.#memory.get<unknown>(storedAs);
    if (typeof stored !== 'object' || stored === null) return {};
    return Object.fromEntries(Object.entries(stored).filter((entry): entry is [string, KeptTyping] => isKept(entry[1])));
  }
}

function isKept(value: unknown): boolean {
  const { typed, time } = (value ?? {}) as Record<string, unknown>;
  return typeof typed === 'string' && typeof time === 'number';
}
