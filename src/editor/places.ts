// From offsets in a note's text to the editor's positions and ranges.
import * as vscode from 'vscode';
import type { MappedText } from '../note/mappedText.ts';
import { toDocumentOffset, toDocumentRange } from '../note/mappedText.ts';
import type { SourceRange, TextEdit } from '../problems/problem.ts';

export function toRange(document: vscode.TextDocument, range: SourceRange): vscode.Range {
  return new vscode.Range(document.positionAt(range.start), document.positionAt(range.end));
}

/** The whole of a taken text, as it stands in the note. */
export function rangeOf(mapped: MappedText): SourceRange {
  return toDocumentRange(mapped, { start: 0, end: mapped.text.length });
}

export function contains(range: SourceRange, offset: number): boolean {
  return range.start <= offset && offset <= range.end;
}

/** The offset in the taken text of an offset in the note; null where that place is not part of it. */
export function offsetWithin(mapped: MappedText, documentOffset: number): number | null {
  for (const piece of mapped.pieces) {
    const offset = documentOffset - piece.document;
    if (offset >= 0 && offset <= piece.length) return toDocumentOffset(mapped, piece.offset + offset) === documentOffset ? piece.offset + offset : null;
  }
  return null;
}

/** Adds a fix's replacements to a workspace edit. */
export function addEdits(target: vscode.WorkspaceEdit, document: vscode.TextDocument, edits: readonly TextEdit[]): void {
  for (const edit of edits) target.replace(document.uri, toRange(document, edit.range), edit.newText);
}
