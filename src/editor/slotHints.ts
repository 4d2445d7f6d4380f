// Behind a table's lines: how late or early a row was read, and which planned times behind it nobody read.
import * as vscode from 'vscode';
import { slotEnds, type SlotEnd } from '../assist/slotEnds.ts';
import type { Zone } from '../time/instant.ts';
import { formatClock, formatDuration } from '../time/text.ts';
import { slotWords } from '../words/slots.ts';
import type { CalmNotes } from './calm.ts';
import { interfaceLanguage } from './language.ts';
import { noteSelector } from './selector.ts';

export function registerSlotHints(calm: CalmNotes): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  return vscode.Disposable.from(
    changed,
    calm.onDidShow(() => changed.fire()),
    vscode.languages.registerInlayHintsProvider(noteSelector, {
      onDidChangeInlayHints: changed.event,
      provideInlayHints: async (document, visible, token) => {
        const note = await calm.noteInCalm(document, token);
        if (!note?.protocol) return [];
        const { zone } = note.protocol;
        return slotEnds(note).map((end) => hintOf(document, end, zone)).filter((hint) => visible.contains(hint.position));
      },
    }),
  );
}

function hintOf(document: vscode.TextDocument, { at, offTime, missed }: SlotEnd, zone: Zone): vscode.InlayHint {
  const words = slotWords(interfaceLanguage);
  const by = offTime ? formatDuration(Math.abs(offTime.offset)) : '';
  const parts = [
    ...(offTime ? [offTime.offset > 0 ? words.late(by) : words.early(by)] : []),
    ...(missed.length > 0 ? [words.notRead(missed.map((slot) => formatClock(slot, zone)))] : []),
  ];
  const hint = new vscode.InlayHint(document.positionAt(at), parts.join(' · '));
  hint.paddingLeft = true;
  if (offTime) hint.tooltip = words.planned(formatClock(offTime.slot, zone));
  return hint;
}
