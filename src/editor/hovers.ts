// Hover: asks each kind of thing that can stand under the pointer, and shows what is known about it.
import * as vscode from 'vscode';
import type { Note } from '../experiment/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { hoverClaim } from './hovers/claim.ts';
import { hoverFunction } from './hovers/function.ts';
import { hoverPlan } from './hovers/plan.ts';
import { hoverReading } from './hovers/reading.ts';
import { hoverResult } from './hovers/result.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

/** What one kind of hover finds at an offset of the note: the stretch it speaks of, and the text. */
export interface Finding { readonly range: SourceRange; readonly text: vscode.MarkdownString }
export type Find = (note: Note, offset: number, document: vscode.TextDocument) => Finding | null;

/** The narrowest thing first: a function's name stands inside a claim. */
const finders: readonly Find[] = [hoverFunction, hoverClaim, hoverResult, hoverReading, hoverPlan];

export function registerHovers(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerHoverProvider(noteSelector, {
    provideHover: (document, position) => {
      const note = notes.noteOf(document);
      if (!note?.protocol) return null;
      const offset = document.offsetAt(position);
      const found = finders.map((find) => find(note, offset, document)).filter((each) => each !== null);
      const first = found[0];
      return first ? new vscode.Hover(found.map((each) => each.text), toRange(document, first.range)) : null;
    },
  });
}
