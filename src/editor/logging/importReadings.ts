// Imports: the command (a file that is picked), and pasting or dropping a table into a note, where it is clearly one.
import * as vscode from 'vscode';
import { importFile, importTable, importedBlockText, proposeImport, type ImportChoices, type ImportProposal } from '../../edits/importTable.ts';
import type { Note } from '../../experiment/types.ts';
import { lineBreakOf } from '../../edits/edit.ts';
import { editSentence } from '../../words/edits.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { noteSelector } from '../selector.ts';
import { previewImport } from './importPreview.ts';
import { choicesOf, loggerFor, loggerOf, readLoggers } from './loggers.ts';
import { applyToNote, reveal, saveNote } from './writeNote.ts';

/** For callers that are no keyboard: the file, and the choices that the preview would give. */
interface Asked { readonly uri?: vscode.Uri; readonly file?: vscode.Uri; readonly text?: string; readonly choices?: ImportChoices; readonly as?: 'table' | 'file' }

export function registerImport(notes: NoteStore): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('evenwater.importReadings', async (argument?: unknown): Promise<boolean> => {
      const asked = (argument instanceof vscode.Uri ? { uri: argument } : typeof argument === 'object' && argument !== null ? argument : {}) as Asked;
      const document = await documentFor(asked.uri);
      const note = document && await notes.noteWithFiles(document);
      if (!document || !note?.protocol) {
        sayNoNote();
        return false;
      }
      return importInto(document, note, asked);
    }),
    vscode.languages.registerDocumentPasteEditProvider(noteSelector, new TablePaste(notes), { providedPasteEditKinds: [kind], pasteMimeTypes: ['text/plain'] }),
  );
}

async function importInto(document: vscode.TextDocument, note: Note, asked: Asked): Promise<boolean> {
  const file = asked.text === undefined ? asked.file ?? await pickFile(document) : null;
  if (file === undefined) return false;
  let source: Uint8Array | string;
  try {
    source = file ? await vscode.workspace.fs.readFile(file) : asked.text ?? '';
  } catch (error) {
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} cannot be read: {1}', file?.path ?? '', error instanceof Error ? error.message : String(error)));
    return false;
  }
  const inside = file ? pathFrom(document.uri, file) : null;
  const known = knownLogger(document, source, note);
  const choices = asked.choices ?? known?.choices ?? {};
  const proposal = asked.as ? proposeImport(source, note, choices) : null;
  const choice = asked.as && proposal ? { as: asked.as, proposal }
    : await previewImport(source, note, choices, inside !== null, known ? vscode.l10n.t('Import readings (logger {0})', known.name) : vscode.l10n.t('Import readings'));
  if (!choice) return false;
  const editor = vscode.window.visibleTextEditors.find((each) => each.document === document);
  const cursor = editor ? document.offsetAt(editor.selection.active) : note.text.length;
  const result = choice.as === 'file' && inside !== null && typeof source !== 'string'
    ? importFile(note, choice.proposal, inside, source, cursor) : importTable(note, choice.proposal, cursor);
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
  if (!asked.as && !known) void offerToRemember(document, choice.proposal);
  return true;
}

async function pickFile(document: vscode.TextDocument): Promise<vscode.Uri | undefined> {
  const chosen = await vscode.window.showOpenDialog({
    defaultUri: document.isUntitled ? undefined : vscode.Uri.joinPath(document.uri, '..'), canSelectMany: false,
    filters: { [vscode.l10n.t('Tables')]: ['csv', 'tsv', 'txt', 'dat', 'log'], [vscode.l10n.t('All files')]: ['*'] }, title: vscode.l10n.t('A file of readings'),
  });
  return chosen?.[0];
}

/** The file's path from the note, with forward slashes; null when it lies outside the note's folder tree. */
export function pathFrom(note: vscode.Uri, file: vscode.Uri): string | null {
  const folder = note.path.slice(0, note.path.lastIndexOf('/') + 1);
  return note.scheme === file.scheme && note.authority === file.authority && file.path.startsWith(folder) ? file.path.slice(folder.length) : null;
}

function knownLogger(document: vscode.TextDocument, source: Uint8Array | string, note: Note): { name: string; choices: ImportChoices } | null {
  const setting = vscode.workspace.getConfiguration('evenwater', document.uri).get<unknown>('loggers', null);
  const found = loggerFor(proposeImport(source, note)?.names ?? [], readLoggers(setting));
  return found && { name: found.name, choices: choicesOf(found.logger) };
}

async function offerToRemember(document: vscode.TextDocument, proposal: ImportProposal): Promise<void> {
  if (proposal.headerLine === 0) return; // Without heads there is nothing to know the logger by.
  const remember = vscode.l10n.t('Remember');
  if (await vscode.window.showInformationMessage(vscode.l10n.t('Remember these columns for files like this one?'), remember) !== remember) return;
  const name = await vscode.window.showInputBox({ title: vscode.l10n.t('Name of the logger') });
  if (!name?.trim()) return;
  const settings = vscode.workspace.getConfiguration('evenwater', document.uri);
  const before = settings.get<unknown>('loggers', null);
  await settings.update('loggers', { ...(typeof before === 'object' ? before : {}), [name.trim()]: loggerOf(proposal) }, vscode.ConfigurationTarget.Global);
}

const kind = vscode.DocumentDropOrPasteEditKind.Text.append('evenwater', 'readings');

/** Pasted cells become a block of readings; the plain paste comes first wherever anything is unclear. */
class TablePaste implements vscode.DocumentPasteEditProvider {
  readonly #notes: NoteStore;
  constructor(notes: NoteStore) { this.#notes = notes; }

  async provideDocumentPasteEdits(document: vscode.TextDocument, ranges: readonly vscode.Range[], data: vscode.DataTransfer, _context: vscode.DocumentPasteEditContext, token: vscode.CancellationToken): Promise<vscode.DocumentPasteEdit[]> {
    const [range] = ranges;
    const note = this.#notes.noteOf(document);
    if (!note?.protocol || !range || ranges.length > 1) return [];
    const offset = document.offsetAt(range.start);
    if (note.syntax.blocks.some((block) => offset > block.range.start && offset < block.range.end)) return [];
    const text = await data.get('text/plain')?.asString();
    if (!text || token.isCancellationRequested || !/\n/.test(text.trim()) || text.includes('```')) return [];
    const known = knownLogger(document, text, note);
    const proposal = proposeImport(text, note, known?.choices ?? {});
    if (!proposal || proposal.heads.length === 0 || proposal.asks.some((ask) => ask.code === 'import-unmapped')) return [];
    // What must be asked is asked by the command; the paste stays plain.
    if (proposal.asks.length > 0) return [];
    const edit = new vscode.DocumentPasteEdit(importedBlockText(proposal, lineBreakOf(note.text)), vscode.l10n.t('Import as readings'), kind);
    if (proposal.unreadTimes.length > 0 || proposal.unreadCells.length > 0) edit.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
    return [edit];
  }
}
