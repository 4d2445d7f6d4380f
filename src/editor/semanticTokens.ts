// Colours by meaning for the names of a note. The legend's own kinds are declared in the manifest.
import * as vscode from 'vscode';
import { tokenModifiers, tokens, tokenTypes } from '../assist/tokens.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

const legend = new vscode.SemanticTokensLegend([...tokenTypes], [...tokenModifiers]);

export function registerSemanticTokens(notes: NoteStore): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  return vscode.Disposable.from(
    changed,
    notes.onDidRead(() => changed.fire()),
    vscode.languages.registerDocumentSemanticTokensProvider(noteSelector, {
      onDidChangeSemanticTokens: changed.event,
      provideDocumentSemanticTokens: async (document, token) => {
        const note = await notes.noteAtRest(document, token);
        if (!note?.protocol) return null;
        const builder = new vscode.SemanticTokensBuilder(legend);
        for (const each of tokens(note)) builder.push(toRange(document, each.range), each.type, [...each.modifiers]);
        return builder.build();
      },
    }, legend),
  );
}
