// The computed value behind each `?` that is not filled in yet, at its place in the sentence.
import * as vscode from 'vscode';
import type { NoteStore } from './noteStore.ts';
import { rangeOf, toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerInlayValues(notes: NoteStore): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  return vscode.Disposable.from(
    changed,
    notes.onDidRead(() => changed.fire()),
    vscode.languages.registerInlayHintsProvider(noteSelector, {
      onDidChangeInlayHints: changed.event,
      provideInlayHints: async (document, visible, token) => {
        const note = await notes.noteAtRest(document, token);
        if (!note) return [];
        return note.claims.flatMap((claim) => {
          if (claim.state !== 'unfilled' || claim.computed === null) return [];
          const range = toRange(document, rangeOf(claim.syntax.words));
          if (!visible.contains(range)) return [];
          const hint = new vscode.InlayHint(range.end, claim.computed);
          hint.paddingLeft = true;
          hint.tooltip = new vscode.MarkdownString().appendCodeblock(claim.syntax.formula.text.trim(), 'text');
          hint.textEdits = [new vscode.TextEdit(range, claim.computed)];
          return [hint];
        });
      },
    }),
  );
}
