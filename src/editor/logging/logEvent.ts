// The command *log an event*: animals in, pump on. It goes into the plan's events and into the remark of the row of that time.
import * as vscode from 'vscode';
import { logEvent } from '../../edits/logEvent.ts';
import { typedTime } from '../../edits/readRowInput.ts';
import { formatClock } from '../../time/text.ts';
import { utc } from '../../time/zone.ts';
import { editSentence } from '../language.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { applyToNote, reveal, saveNote } from './writeNote.ts';

interface Asked { readonly uri?: vscode.Uri; readonly what?: string; readonly at?: string; readonly now?: number; readonly tanks?: readonly string[] }

export function registerLogEvent(notes: NoteStore): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.logEvent', async (argument?: unknown): Promise<boolean> => {
    const asked = (argument instanceof vscode.Uri ? { uri: argument } : typeof argument === 'object' && argument !== null ? argument : {}) as Asked;
    const document = await documentFor(asked.uri);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note) {
      sayNoNote();
      return false;
    }
    const now = asked.now ?? Date.now();
    const what = asked.what ?? await vscode.window.showInputBox({ title: vscode.l10n.t('Log an event'), placeHolder: vscode.l10n.t('pump on'), prompt: vscode.l10n.t('What happened?') });
    if (what === undefined) return false;
    const at = asked.at ?? await vscode.window.showInputBox({
      title: vscode.l10n.t('Log an event: {0}', what), prompt: vscode.l10n.t('When?'), value: formatClock(now, note.protocol?.zone ?? utc),
      validateInput: (value) => (typedTime(value.trim(), note, now) === null ? editSentence({ code: 'time-unreadable', args: { text: value } }) : null),
    });
    if (at === undefined) return false;
    const tanks = asked.tanks ?? await tanksFor(note.protocol?.tanks ?? [], what);
    if (!tanks) return false;
    const time = typedTime(at.trim(), note, now);
    const all = tanks.length === (note.protocol?.tanks.length ?? 0);
    const result = time === null ? { ok: false as const, message: { code: 'time-unreadable' as const, args: { text: at } } } : logEvent(note, { at: time, what, tanks: all ? [] : tanks });
    if (!result.ok) {
      void vscode.window.showErrorMessage(editSentence(result.message));
      return false;
    }
    if (document.getText() !== note.text || !await applyToNote(document, result.edits)) {
      void vscode.window.showErrorMessage(vscode.l10n.t('The note kept changing; nothing was written.'));
      return false;
    }
    reveal(document, result.shows);
    if (!await saveNote(document)) void vscode.window.showWarningMessage(vscode.l10n.t('The change stands in the editor but is not on disk yet. Save the note.'));
    return true;
  });
}

async function tanksFor(tanks: readonly { readonly id: string; readonly label: string }[], what: string): Promise<readonly string[] | undefined> {
  if (tanks.length < 2) return [];
  const items = tanks.map((tank) => ({ label: tank.id, description: tank.label === tank.id ? '' : tank.label, picked: true }));
  for (;;) {
    const chosen = await vscode.window.showQuickPick(items, { title: vscode.l10n.t('Log an event: {0}', what), placeHolder: vscode.l10n.t('In which tanks? At least one.'), canPickMany: true });
    // An event in no tank would be read as one in all of them.
    if (chosen?.length !== 0) return chosen?.map((item) => item.label);
  }
}
