// Whole notes for the tests of the edits, and a short way to make an edit and read what came of it.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { applyEdits, type EditResult } from '../../../src/edits/edit.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';

export const table = `time   mat.DO  mat.T  open.DO     open.T  room.P
20:00    8.21   24.9     8.31       24.7  1009.4
20:30    8.24   24.9     8.30       24.7  1009.2
21:00    8.25   24.9     8.30       24.7  1009.1
22:00    8.26   24.8     8.29       24.6  1008.9   ; light off
22:30    8.02   24.8     8.28->8.26 24.6  1008.8   ; open.DO misread
`;

/** The text of a note with the base plan and the readings given; any further text stands behind. */
export function noteText(readings: string, rest = '', protocol = baseProtocol): string {
  return `# A night\n\n\`\`\`protocol\n${protocol}\`\`\`\n\n\`\`\`readings\n${readings}\`\`\`\n${rest}`;
}
export const note = (readings: string = table, rest = '', protocol = baseProtocol): Note => readNote(noteText(readings, rest, protocol));
export const at = (text: string): number => Date.parse(text.length === 5 ? `2026-03-1${text < '12' ? '5' : '4'}T${text}:00+01:00` : text);

/** The note's text after an edit that must succeed. */
export function made(before: Note, result: EditResult): string {
  assert.ok(result.ok, result.ok ? '' : result.message.code);
  return applyEdits(before.text, result.edits);
}
/** The lines of the first readings block after an edit. */
export function lines(before: Note, result: EditResult): string[] {
  return blockLines(made(before, result));
}
export function blockLines(text: string): string[] {
  return /```readings\r?\n([\s\S]*?)```/u.exec(text)![1]!.split(/\r?\n/u).slice(0, -1);
}
export const code = (result: EditResult): string => (result.ok ? 'ok' : result.message.code);
