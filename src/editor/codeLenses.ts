// A line above the blocks that matter while working: the plan's problems and the claims, and how far the readings are.
import * as vscode from 'vscode';
import type { Note } from '../experiment/types.ts';
import type { Block } from '../note/syntax.ts';
import { formatClock } from '../time/text.ts';
import { claimCounts, problemCounts, slotCounts } from './counts.ts';
import type { NoteStore } from './noteStore.ts';
import { noteSelector } from './selector.ts';
import { claimsSentence, problemsSentence } from './sentences.ts';

export function registerCodeLenses(notes: NoteStore): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  return vscode.Disposable.from(
    changed,
    notes.onDidRead(() => changed.fire()),
    vscode.languages.registerCodeLensProvider(noteSelector, {
      onDidChangeCodeLenses: changed.event,
      provideCodeLenses: async (document, token) => {
        if (!vscode.workspace.getConfiguration('evenwater', document.uri).get<boolean>('codeLens', true)) return [];
        const note = await notes.noteAtRest(document, token);
        return note ? note.syntax.blocks.flatMap((block, index) => lensesOf(document, note, block, index)) : [];
      },
    }),
  );
}

function lensesOf(document: vscode.TextDocument, note: Note, block: Block, index: number): vscode.CodeLens[] {
  const titles = block.word === 'protocol' ? planTitles(note, block) : block.word === 'readings' ? readingsTitles(note, index) : [];
  const line = document.lineAt(block.startLine).range;
  return titles.map((title) => new vscode.CodeLens(line, { title, command: 'evenwater.check' }));
}

function planTitles(note: Note, block: Block): string[] {
  if (!note.protocol) return [];
  return [
    vscode.l10n.t('Plan: {0}', problemsSentence(problemCounts(note, block.range))),
    capital(claimsSentence(claimCounts(note))),
  ];
}

function readingsTitles(note: Note, index: number): string[] {
  const table = note.tables.find((each) => each.block === index);
  if (!table || !note.protocol) return [];
  const isLast = table === note.tables.at(-1);
  const slots = isLast ? slotCounts(note.protocol, note.tables) : null;
  if (!slots) return [table.rows.length === 1 ? vscode.l10n.t('1 row') : vscode.l10n.t('{0} rows', table.rows.length)];
  const read = vscode.l10n.t('{0} of {1} slots read', slots.read, slots.planned);
  return [slots.next === null ? read : vscode.l10n.t('{0} · next {1}', read, formatClock(slots.next, note.protocol.zone))];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
