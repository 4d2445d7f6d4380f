// The command *repeat this experiment*: the active note's plan with new dates, in a new note that is not saved yet.
import * as vscode from 'vscode';
import { repeatNote } from '../../edits/repeatNote.ts';
import { formatDate, readDate } from '../../time/text.ts';
import { editSentence } from '../language.ts';
import type { NoteStore } from '../noteStore.ts';
import { documentFor, sayNoNote } from './activeNote.ts';
import { openNewNote } from './openNewNote.ts';

export function registerRepeatExperiment(notes: NoteStore): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.repeatExperiment', async (address?: unknown, date?: unknown): Promise<vscode.Uri | null> => {
    const document = await documentFor(address);
    const note = document && notes.noteOf(document);
    if (!document || !note?.protocol) {
      sayNoNote();
      return null;
    }
    const today = formatDate(Date.now(), note.protocol.zone);
    const start = typeof date === 'string' ? date : await vscode.window.showInputBox({
      title: vscode.l10n.t('Repeat This Experiment'), prompt: vscode.l10n.t('On which day does the repeat start? The clock times stay.'), value: today,
      validateInput: (text) => (readDate(text) ? undefined : vscode.l10n.t('Write the day as year, month and day: {0}', today)),
    });
    if (start === undefined) return null;
    const name = document.uri.path.slice(document.uri.path.lastIndexOf('/') + 1);
    const result = repeatNote(note, name, start.trim());
    if (!result.ok) {
      void vscode.window.showInformationMessage(editSentence(result.message));
      return null;
    }
    const folder = document.uri.scheme === 'untitled' ? undefined : vscode.Uri.joinPath(document.uri, '..');
    return openNewNote(`${name.replace(/(?:\.tank)?\.md$/i, '')}-${start.trim()}`, result.text, folder);
  });
}
