// Pasting cells into a note. Where they surely are readings of this note they become a table at once; where they may be, that is
// offered behind the plain paste, and picking it shows the preview.
import * as vscode from 'vscode';
import type { EditResult } from '../../edits/edit.ts';
import { importTable } from '../../edits/importTable.ts';
import { isSure, proposeImport } from '../../edits/proposeImport.ts';
import type { Note } from '../../experiment/types.ts';
import { addEdits } from '../places.ts';
import type { NoteStore } from '../noteStore.ts';
import { noteSelector } from '../selector.ts';
import { choicesOf, fittingLoggers } from './loggers.ts';
import { editsOf, loggersFor, previewSource, type TableSource } from './tableSource.ts';

const kind = vscode.DocumentDropOrPasteEditKind.Empty.append('evenwater', 'readings');

export function registerPaste(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDocumentPasteEditProvider(noteSelector, new TablePaste(notes), { providedPasteEditKinds: [kind], pasteMimeTypes: ['text/plain'] });
}

/** A paste that waits for the preview. */
class PreviewedPaste extends vscode.DocumentPasteEdit {
  readonly document: vscode.TextDocument;
  readonly note: Note;
  readonly source: TableSource;
  readonly offset: number;
  constructor(document: vscode.TextDocument, note: Note, source: TableSource, offset: number) {
    super('', vscode.l10n.t('Import as Readings…'), kind);
    [this.document, this.note, this.source, this.offset] = [document, note, source, offset];
    this.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
  }
}

class TablePaste implements vscode.DocumentPasteEditProvider {
  readonly #notes: NoteStore;
  constructor(notes: NoteStore) { this.#notes = notes; }

  async provideDocumentPasteEdits(document: vscode.TextDocument, ranges: readonly vscode.Range[], data: vscode.DataTransfer, _context: vscode.DocumentPasteEditContext, token: vscode.CancellationToken): Promise<vscode.DocumentPasteEdit[]> {
    const [range] = ranges;
    const note = this.#notes.noteOf(document);
    // What is selected is to be replaced: that is the plain paste's work.
    if (!note?.protocol || !range?.isEmpty || ranges.length > 1) return [];
    const offset = document.offsetAt(range.start);
    if (note.syntax.blocks.some((block) => offset > block.range.start && offset < block.range.end)) return [];
    const text = await data.get('text/plain')?.asString();
    if (!text || token.isCancellationRequested || !/\n/.test(text.trim()) || text.includes('```')) return [];
    const plain = proposeImport(text, note);
    const [known] = fittingLoggers(plain?.names ?? [], loggersFor(document));
    const proposal = known ? proposeImport(text, note, choicesOf(known.logger)) : plain;
    // A time and at least one quantity of the plan must show: other tables are no business of ours.
    if (!proposal || proposal.heads.length === 0 || !proposal.columns.some((column) => column.to === 'time')) return [];
    const result = isSure(proposal) ? importTable(note, proposal, offset) : null;
    if (!result?.ok) return [new PreviewedPaste(document, note, { content: text, name: null, path: null }, offset)];
    return [filled(new vscode.DocumentPasteEdit('', vscode.l10n.t('Import as Readings'), kind), document, result)];
  }

  async resolveDocumentPasteEdit(edit: vscode.DocumentPasteEdit): Promise<vscode.DocumentPasteEdit> {
    if (!(edit instanceof PreviewedPaste)) return edit;
    const choice = await previewSource(edit.document, edit.note, edit.source);
    return choice ? filled(edit, edit.document, await editsOf(edit.document, edit.note, edit.source, choice, edit.offset)) : edit;
  }
}

/** The edit with what it does to the note, each as one step to undo. */
export function filled<Edit extends { additionalEdit?: vscode.WorkspaceEdit }>(edit: Edit, document: vscode.TextDocument, result: EditResult): Edit {
  if (!result.ok) return edit;
  edit.additionalEdit = new vscode.WorkspaceEdit();
  addEdits(edit.additionalEdit, document, result.edits);
  return edit;
}
