// Pasting cells into a note. Where they surely are readings of this note they become a table at once; where they may be, that is
// offered behind the plain paste: with the preview after a paste, and (as the editor resolves nothing there) as whole edits in the menu.
import * as vscode from 'vscode';
import type { EditResult } from '../../edits/edit.ts';
import { importTable } from '../../edits/importTable.ts';
import type { ImportChoices, ImportProposal } from '../../edits/importProposal.ts';
import { isSure, leftOut, proposeImport } from '../../edits/proposeImport.ts';
import { waysToRead } from '../../edits/importWays.ts';
import type { Note } from '../../experiment/types.ts';
import { addEdits } from '../places.ts';
import type { NoteStore } from '../noteStore.ts';
import { noteSelector } from '../selector.ts';
import { decimalWord, orderWord } from './importWords.ts';
import { choicesOf, fittingLoggers } from './loggers.ts';
import { editsOf, loggersFor, previewSource } from './tableSource.ts';

const kind = vscode.DocumentDropOrPasteEditKind.Empty.append('evenwater', 'readings');

export function registerPaste(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDocumentPasteEditProvider(noteSelector, new TablePaste(notes), { providedPasteEditKinds: [kind], pasteMimeTypes: ['text/plain'] });
}

/** Cells on their way into a note. */
interface Pasted { readonly document: vscode.TextDocument; readonly note: Note; readonly text: string; readonly offset: number }

/** A paste that waits for the preview. */
class PreviewedPaste extends vscode.DocumentPasteEdit {
  readonly pasted: Pasted;
  constructor(pasted: Pasted) {
    super('', vscode.l10n.t('Import as Readings…'), kind);
    this.pasted = pasted;
    this.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
  }
}

class TablePaste implements vscode.DocumentPasteEditProvider {
  readonly #notes: NoteStore;
  constructor(notes: NoteStore) { this.#notes = notes; }

  async provideDocumentPasteEdits(document: vscode.TextDocument, ranges: readonly vscode.Range[], data: vscode.DataTransfer, context: vscode.DocumentPasteEditContext, token: vscode.CancellationToken): Promise<vscode.DocumentPasteEdit[]> {
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
    const choices = known ? choicesOf(known.logger) : {};
    const proposal = known ? proposeImport(text, note, choices) : plain;
    // A time and at least one quantity of the plan must show: other tables are no business of ours.
    if (!proposal || proposal.heads.length === 0 || !proposal.columns.some((column) => column.to === 'time')) return [];
    const pasted = { document, note, text, offset };
    if (isSure(proposal)) return editFor(pasted, proposal, vscode.l10n.t('Import as Readings'), true);
    return context.triggerKind === vscode.DocumentPasteTriggerKind.PasteAs ? everyReading(pasted, proposal, choices) : [new PreviewedPaste(pasted)];
  }

  async resolveDocumentPasteEdit(edit: vscode.DocumentPasteEdit): Promise<vscode.DocumentPasteEdit> {
    if (!(edit instanceof PreviewedPaste)) return edit;
    const { document, note, text, offset } = edit.pasted;
    const source = { content: text, name: null, path: null };
    const choice = await previewSource(document, note, source);
    return choice ? filled(edit, document, await editsOf(document, note, source, choice, offset)) : edit;
  }
}

/** One edit for each way in which the cells can be read; each says in its title which way that is, and what it leaves out. */
function everyReading(pasted: Pasted, proposal: ImportProposal, choices: ImportChoices): vscode.DocumentPasteEdit[] {
  return waysToRead(proposal).flatMap((way) => {
    const read = proposeImport(pasted.text, pasted.note, { ...choices, ...way });
    const without = read ? leftOut(read) : [];
    const words = [
      ...(way.dateOrder ? [orderWord(way.dateOrder)] : []), ...(way.decimal ? [decimalWord(way.decimal)] : []),
      ...(without.length > 0 ? [vscode.l10n.t('without {0}', without.join(', '))] : []),
    ];
    return read ? editFor(pasted, read, words.length > 0 ? vscode.l10n.t('Import as Readings ({0})', words.join('; ')) : vscode.l10n.t('Import as Readings'), false) : [];
  });
}

function editFor({ document, note, offset }: Pasted, proposal: ImportProposal, title: string, sure: boolean): vscode.DocumentPasteEdit[] {
  const result = importTable(note, proposal, offset);
  const edit = filled(new vscode.DocumentPasteEdit('', title, kind), document, result);
  if (!sure) edit.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
  return result.ok ? [edit] : [];
}

/** The edit with what it does to the note, each as one step to undo. */
export function filled<Edit extends { additionalEdit?: vscode.WorkspaceEdit }>(edit: Edit, document: vscode.TextDocument, result: EditResult): Edit {
  if (!result.ok) return edit;
  edit.additionalEdit = new vscode.WorkspaceEdit();
  addEdits(edit.additionalEdit, document, result.edits);
  return edit;
}
