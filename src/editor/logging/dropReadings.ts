// A logger's file dropped onto a note: the same preview as by command. Files that may be something else keep their usual drop first.
import * as vscode from 'vscode';
import { proposeImport } from '../../edits/proposeImport.ts';
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

class PreviewedDrop extends vscode.DocumentDropEdit {
  readonly document: vscode.TextDocument;
  readonly note: Note;
  readonly source: TableSource;
  readonly offset: number;
  constructor(document: vscode.TextDocument, note: Note, source: TableSource, offset: number, sure: boolean) {
    super('', vscode.l10n.t('Import Readings…'), kind);
    [this.document, this.note, this.source, this.offset] = [document, note, source, offset];
    if (!sure) this.yieldTo = usual;
  }
}

class TableDrop implements vscode.DocumentDropEditProvider<PreviewedDrop> {
  readonly #notes: NoteStore;
  constructor(notes: NoteStore) { this.#notes = notes; }

  async provideDocumentDropEdits(document: vscode.TextDocument, position: vscode.Position, data: vscode.DataTransfer, token: vscode.CancellationToken): Promise<PreviewedDrop[]> {
    const note = this.#notes.noteOf(document);
    const source = note?.protocol ? await droppedTable(document, data) : null;
    if (!note?.protocol || !source || token.isCancellationRequested) return [];
    const proposal = proposeImport(source.content, note);
    if (!proposal) return [];
    const sure = tables.test(source.name ?? '') && proposal.heads.length > 0 && proposal.columns.some((column) => column.to === 'time');
    return [new PreviewedDrop(document, note, source, document.offsetAt(position), sure)];
  }

  async resolveDocumentDropEdit(edit: PreviewedDrop): Promise<PreviewedDrop> {
    const { document, note, source, offset } = edit;
    const choice = await previewSource(document, note, source);
    if (!choice) return edit;
    const result = await editsOf(document, note, source, choice, offset);
    if (!result.ok) void vscode.window.showErrorMessage(editSentence(result.message));
    return filled(edit, document, result);
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
