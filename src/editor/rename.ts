// Rename a tank, group, quantity, event, phase or named result everywhere in its note; a refusal says why.
import * as vscode from 'vscode';
import { prepareRename, rename, type Refusal } from '../assist/navigate.ts';
import { helpWords } from './language.ts';
import type { NoteStore } from './noteStore.ts';
import { addEdits, toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerRename(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerRenameProvider(noteSelector, {
    prepareRename: (document, position) => {
      const note = notes.noteOf(document);
      const found = note?.protocol ? prepareRename(note, document.offsetAt(position)) : null;
      // In plain Markdown, and on a heading or link of a note, others may know what to rename.
      if (!found || ('refusal' in found && found.refusal === 'no-name')) return undefined;
      if ('refusal' in found) throw new Error(sentence(found));
      return { range: toRange(document, found.range), placeholder: found.name };
    },
    provideRenameEdits: (document, position, newName) => {
      const note = notes.noteOf(document);
      const found = note?.protocol ? rename(note, document.offsetAt(position), newName) : null;
      if (!found || ('refusal' in found && found.refusal === 'no-name')) return undefined;
      if ('refusal' in found) throw new Error(sentence(found));
      const edit = new vscode.WorkspaceEdit();
      addEdits(edit, document, found.edits);
      return edit;
    },
  });
}

const sentence = ({ refusal, args }: Refusal): string => helpWords.renameRefusals[refusal](args);
