// The command *import readings*: a file that is picked, through the preview, into the note; and what is remembered of its logger.
// Pasting and dropping are registered with it.
import * as vscode from 'vscode';
import type { ImportChoices, ImportProposal } from '../../edits/importProposal.ts';
import { proposeImport } from '../../edits/proposeImport.ts';
import type { Note } from '../../experiment/types.ts';
import { editSentence } from '../language.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { registerDrop } from './dropReadings.ts';
import type { ImportAs, ImportChoice } from './importPreview.ts';
import { loggerOf } from './loggers.ts';
import { registerPaste } from './pasteReadings.ts';
import { editsOf, previewSource, readSource, type TableSource } from './tableSource.ts';
import { applyToNote, reveal, saveNote } from './writeNote.ts';

/** For callers that are no keyboard: the file, and the choices that the preview would give. */
interface Asked { readonly uri?: vscode.Uri; readonly file?: vscode.Uri; readonly text?: string; readonly choices?: ImportChoices; readonly as?: ImportAs }

export function registerImport(notes: NoteStore): vscode.Disposable {
  const command = vscode.commands.registerCommand('evenwater.importReadings', async (argument?: unknown): Promise<boolean> => {
    const asked = (argument instanceof vscode.Uri ? { uri: argument } : typeof argument === 'object' && argument !== null ? argument : {}) as Asked;
    const document = await documentFor(asked.uri);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note?.protocol) {
      sayNoNote();
      return false;
    }
    return importInto(document, note, asked);
  });
  return vscode.Disposable.from(command, registerPaste(notes), registerDrop(notes));
}

async function importInto(document: vscode.TextDocument, note: Note, asked: Asked): Promise<boolean> {
  const source = await sourceFor(document, asked);
  const choice = source && (choiceAsked(source, note, asked) ?? await previewSource(document, note, source));
  if (!source || !choice) return false;
  const editor = vscode.window.visibleTextEditors.find((each) => each.document === document);
  const cursor = editor ? document.offsetAt(editor.selection.active) : note.text.length;
  const result = await editsOf(document, note, source, choice, cursor);
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
  if (!asked.as && choice.logger === null) void offerToRemember(document, choice.proposal);
  return true;
}

async function sourceFor(document: vscode.TextDocument, asked: Asked): Promise<TableSource | null> {
  if (asked.text !== undefined) return { content: asked.text, name: null, path: null };
  const file = asked.file ?? await pickFile(document);
  return file ? readSource(document, file) : null;
}

/** The choice that was handed in, so that nobody is asked. */
function choiceAsked(source: TableSource, note: Note, { as, choices }: Asked): ImportChoice | null {
  const proposal = as ? proposeImport(source.content, note, choices) : null;
  return as && proposal ? { as, proposal, logger: null } : null;
}

async function pickFile(document: vscode.TextDocument): Promise<vscode.Uri | undefined> {
  const chosen = await vscode.window.showOpenDialog({
    ...(document.isUntitled ? {} : { defaultUri: vscode.Uri.joinPath(document.uri, '..') }), canSelectMany: false,
    filters: { [vscode.l10n.t('Tables')]: ['csv', 'tsv', 'txt', 'dat', 'log'], [vscode.l10n.t('All files')]: ['*'] }, title: vscode.l10n.t('A file of readings'),
  });
  return chosen?.[0];
}

/** Offers to keep the choices under a name, for the next file with the same heads. */
export async function offerToRemember(document: vscode.TextDocument, proposal: ImportProposal): Promise<void> {
  if (proposal.headerLine === 0) return; // Without heads there is nothing to know the logger by.
  const remember = vscode.l10n.t('Remember');
  if (await vscode.window.showInformationMessage(vscode.l10n.t('Remember these columns for files like this one?'), remember) !== remember) return;
  const name = await vscode.window.showInputBox({ title: vscode.l10n.t('Name of the logger') });
  if (!name?.trim()) return;
  const settings = vscode.workspace.getConfiguration('evenwater', document.uri);
  const before = settings.inspect<unknown>('loggers')?.globalValue;
  await settings.update('loggers', { ...(typeof before === 'object' ? before : {}), [name.trim()]: loggerOf(proposal) }, vscode.ConfigurationTarget.Global);
}
