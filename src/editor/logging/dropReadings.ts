// A logger's file dropped onto a note. Where it surely holds readings of this note, the same preview as by command is shown before
// anything is dropped (the editor never resolves a drop later on); files that may be something else keep their usual drop first.
import * as vscode from 'vscode';
import type { EditResult } from '../../edits/edit.ts';
import { bareReference } from '../../edits/importTable.ts';
import { isSure, proposeImport } from '../../edits/proposeImport.ts';
import type { Note } from '../../experiment/types.ts';
import { editSentence } from '../language.ts';
import type { NoteStore } from '../noteStore.ts';
import { noteSelector } from '../selector.ts';
import { filled } from './pasteReadings.ts';
import { editsOf, previewSource, readSource, type TableSource } from './tableSource.ts';

const kind = vscode.DocumentDropOrPasteEditKind.Empty.append('evenwater', 'readings');
/** What a drop does without us: a link in Markdown, a path, plain text. */
const usual = [vscode.DocumentDropOrPasteEditKind.Empty.append('markdown'), vscode.DocumentDropOrPasteEditKind.Empty.append('uri'), vscode.DocumentDropOrPasteEditKind.Text];

const tables = /\.(?:csv|tsv)$/iu;
const perhapsTables = /\.(?:txt|dat|log|asc|prn)$/iu;

export function registerDrop(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDocumentDropEditProvider(noteSelector, new TableDrop(notes), { providedDropEditKinds: [kind], dropMimeTypes: ['text/uri-list', 'files'] });
}

class TableDrop implements vscode.DocumentDropEditProvider {
  readonly #notes: NoteStore;
  constructor(notes: NoteStore) { this.#notes = notes; }

  async provideDocumentDropEdits(document: vscode.TextDocument, position: vscode.Position, data: vscode.DataTransfer, token: vscode.CancellationToken): Promise<vscode.DocumentDropEdit[]> {
    const note = this.#notes.noteOf(document);
    const source = note?.protocol ? await droppedTable(document, data) : null;
    const proposal = note && source && proposeImport(source.content, note);
    if (!note || !source || !proposal || token.isCancellationRequested) return [];
    const offset = document.offsetAt(position);
    const fits = proposal.heads.length > 0 && proposal.columns.some((column) => column.to === 'time');
    if (fits && tables.test(source.name ?? '')) return [await this.#previewed(document, note, source, offset)];
    const behind = (title: string, result: EditResult): vscode.DocumentDropEdit[] => {
      const edit = filled(new vscode.DocumentDropEdit('', title, kind), document, result);
      edit.yieldTo = usual;
      return result.ok ? [edit] : [];
    };
    const asTable = isSure(proposal) ? behind(vscode.l10n.t('Import as Readings'), await editsOf(document, note, source, { as: 'table', proposal, logger: null }, offset)) : [];
    // Without columns yet: the note's own problem then asks for them, and offers what the heads say.
    return source.path === null ? asTable : [...asTable, ...behind(vscode.l10n.t('Refer to the File as Readings'), bareReference(note, source.path, offset))];
  }

  /** What the keeper took in the preview; left with Escape, nothing changes, and the usual drops are offered behind it. */
  async #previewed(document: vscode.TextDocument, note: Note, source: TableSource, offset: number): Promise<vscode.DocumentDropEdit> {
    const choice = await previewSource(document, note, source);
    if (!choice) return new vscode.DocumentDropEdit('', vscode.l10n.t('Leave the Note as It Is'), kind);
    const result = await editsOf(document, note, source, choice, offset);
    if (!result.ok) void vscode.window.showErrorMessage(editSentence(result.message));
    return filled(new vscode.DocumentDropEdit('', vscode.l10n.t('Import Readings'), kind), document, result);
  }
}

/** The one file that was dropped, where its name says that it may hold a table: by its address, or by its content alone. */
async function droppedTable(document: vscode.TextDocument, data: vscode.DataTransfer): Promise<TableSource | null> {
  const mayHold = (name: string): boolean => tables.test(name) || perhapsTables.test(name);
  const addresses = (await data.get('text/uri-list')?.asString() ?? '').split(/\r?\n/u).filter((line) => line !== '' && !line.startsWith('#'));
  if (addresses.length > 1) return null;
  if (addresses.length === 1) {
    const file = vscode.Uri.parse(addresses[0]!);
    return mayHold(file.path) ? readSource(document, file) : null;
  }
  const files = [...data].flatMap(([, item]) => item.asFile() ?? []);
  const [file] = files;
  return file && files.length === 1 && mayHold(file.name) ? { content: await file.data(), name: file.name, path: null } : null;
}
