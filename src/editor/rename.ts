// Rename a tank, group, quantity, event, phase or named result everywhere in its note, and in the notes that repeat it once the
// author has looked at them; a refusal says why.
import * as vscode from 'vscode';
import { namePlaces } from '../assist/names.ts';
import { nameAt, prepareRename, rename, type Refusal } from '../assist/navigate.ts';
import { renameInRepeat } from '../assist/renameRepeats.ts';
import { applyEdits } from '../edits/edit.ts';
import { readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import type { TextEdit } from '../problems/problem.ts';
import { helpWords } from './language.ts';
import type { NoteStore } from './noteStore.ts';
import { addEdits, toRange } from './places.ts';
import { repeatsOf } from './repeats.ts';
import { noteSelector } from './selector.ts';

export function registerRename(notes: NoteStore, log: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.languages.registerRenameProvider(noteSelector, {
    prepareRename: (document, position) => {
      const note = notes.noteOf(document);
      const found = note?.protocol ? prepareRename(note, document.offsetAt(position)) : null;
      // In plain Markdown, and on a heading or link of a note, others may know what to rename.
      if (!found || ('refusal' in found && found.refusal === 'no-name')) return undefined;
      if ('refusal' in found) throw new Error(sentence(found));
      return { range: toRange(document, found.range), placeholder: found.name };
    },
    provideRenameEdits: async (document, position, newName, token) => {
      const note = notes.noteOf(document);
      const found = note?.protocol ? rename(note, document.offsetAt(position), newName) : null;
      if (!found || ('refusal' in found && found.refusal === 'no-name')) return undefined;
      if ('refusal' in found) throw new Error(sentence(found));
      const edit = new vscode.WorkspaceEdit();
      addEdits(edit, document, found.edits);
      if (note) await addRepeats(edit, document, { note, offset: document.offsetAt(position), edits: found.edits, newName: newName.trim() }, token, log);
      return edit;
    },
  });
}

interface Renaming { readonly note: Note; readonly offset: number; readonly edits: readonly TextEdit[]; readonly newName: string }

/** The same name in the repeats of this run, for the author to confirm: those notes may stand in no editor. */
async function addRepeats(edit: vscode.WorkspaceEdit, document: vscode.TextDocument, { note, offset, edits, newName }: Renaming, token: vscode.CancellationToken, log: vscode.LogOutputChannel): Promise<void> {
  const place = nameAt(namePlaces(note), offset);
  const repeats = place && edits.length > 0 ? await repeatsOf(document.uri, token, log) : [];
  if (!place || repeats.length === 0) return;
  const after = readNote(applyEdits(note.text, edits));
  const metadata = { needsConfirmation: true, label: vscode.l10n.t('In repeats of this run') };
  for (const repeat of repeats) {
    for (const each of renameInRepeat(repeat.note, note, after, place, newName)) edit.replace(repeat.document.uri, toRange(repeat.document, each.range), each.newText, metadata);
  }
}

const sentence = ({ refusal, args }: Refusal): string => helpWords.renameRefusals[refusal](args);
