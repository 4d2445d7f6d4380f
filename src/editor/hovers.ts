// Hover: asks each kind of thing that can stand under the pointer, and shows what is known about it.
import * as vscode from 'vscode';
import type { Note } from '../experiment/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { hoverClaim } from './hovers/claim.ts';
import { hoverDrawn } from './hovers/drawn.ts';
import { hoverFunction } from './hovers/function.ts';
import { hoverLooseNumber } from './hovers/looseNumber.ts';
import { hoverPlan } from './hovers/plan.ts';
import { hoverReading } from './hovers/reading.ts';
import { hoverResult } from './hovers/result.ts';
import { hoverName, hoverSeries } from './hovers/series.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

/** What one kind of hover finds at an offset of the note: the stretch it speaks of, the text, and what may stand below the rest. */
export interface Finding { readonly range: SourceRange; readonly text: vscode.MarkdownString; readonly working?: vscode.MarkdownString }
export type Find = (note: Note, offset: number, document: vscode.TextDocument) => Finding | null;

/**
 * In the order in which they are read: what stands under the pointer itself, the value that it is part of, the chart of a series.
 * The working comes last: a hover opens low, and that it is long may be seen only after scrolling.
 */
const finders: readonly Find[] = [hoverFunction, hoverName, hoverReading, hoverClaim, hoverLooseNumber, hoverResult, hoverPlan, hoverDrawn, hoverSeries];

export function registerHovers(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerHoverProvider(noteSelector, {
    provideHover: (document, position) => {
      const note = notes.noteOf(document);
      if (!note?.protocol) return null;
      const offset = document.offsetAt(position);
      const found = finders.map((find) => find(note, offset, document)).filter((each) => each !== null);
      if (found.length === 0) return null;
      const narrowest = found.map((each) => each.range).reduce((a, b) => (b.end - b.start < a.end - a.start ? b : a));
      return new vscode.Hover([...found.map((each) => each.text), ...found.flatMap(({ working }) => (working && working.value.trim() !== '' ? [working] : []))], toRange(document, narrowest));
    },
  });
}
