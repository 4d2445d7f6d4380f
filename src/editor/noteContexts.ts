// Context keys of the note at hand: they keep commands out of the palette and the menus where they do not apply.
import * as vscode from 'vscode';
import { wasRead } from '../dataset/slotRecord.ts';
import type { Note } from '../experiment/types.ts';
import type { NoteStore } from './noteStore.ts';

const contexts: Readonly<Record<string, (note: Note | null) => boolean>> = {
  'evenwater.noteIsActive': (note) => note !== null,
  'evenwater.noteHasReadings': (note) => note?.tables.some((table) => table.file === null && table.rows.some(wasRead)) ?? false,
  'evenwater.noteHasTimes': (note) => (note?.protocol?.schedule?.slots.length ?? 0) > 0,
};

export function registerNoteContexts(notes: NoteStore): vscode.Disposable {
  const known = new Map<string, boolean>();
  const update = () => {
    const document = vscode.window.activeTextEditor?.document;
    const note = document ? notes.noteOf(document) : null;
    for (const [key, ask] of Object.entries(contexts)) {
      const value = ask(note);
      if (known.get(key) === value) continue;
      known.set(key, value);
      void vscode.commands.executeCommand('setContext', key, value);
    }
  };
  update();
  return vscode.Disposable.from(
    notes.onDidRead((document) => { if (vscode.window.activeTextEditor?.document === document) update(); }),
    vscode.window.onDidChangeActiveTextEditor(update),
  );
}
