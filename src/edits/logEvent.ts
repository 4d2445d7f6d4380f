// Logs an event (animals in, pump on): one entry under `events` of the plan, and a remark in the row of that time.
import type { Note } from '../experiment/types.ts';
import { toDocumentOffset } from '../note/mappedText.ts';
import type { TextEdit } from '../problems/problem.ts';
import { yamlText } from '../readings/file/fileKeys.ts';
import type { Instant } from '../time/instant.ts';
import { minute } from '../time/instant.ts';
import { formatInstant } from '../time/text.ts';
import { instantOf, wallTimeOf } from '../time/zone.ts';
import { remarkEdit } from './changeCell.ts';
import { done, lineBreakOf, refused, type EditResult } from './edit.ts';
import { cleanRemark } from './logRow.ts';

export interface EventToLog {
  readonly at: Instant;
  /** In words: `pump on`. */
  readonly what: string;
  /** Ids of tanks; empty: all. */
  readonly tanks?: readonly string[];
  /** A short name for formulas. */
  readonly id?: string | null;
}

/** Edits that log an event. The plan's other lines stay as they are. */
export function logEvent(note: Note, event: EventToLog): EditResult {
  const { protocol } = note;
  const block = note.syntax.blocks.find((each) => each.word === 'protocol');
  if (!protocol || !block) return refused('no-protocol');
  const what = cleanRemark(event.what);
  if (what === null) return refused('event-empty');
  const at = Math.floor(event.at / minute) * minute;
  const written = formatInstant(at, protocol.zone);
  const clear = instantOf(wallTimeOf(at, protocol.zone), protocol.zone).kind === 'single';
  const parts = [
    `at: ${written.slice(0, 10)} ${written.slice(11, 16)}${clear ? '' : written.slice(19)}`, `what: ${yamlText(what)}`,
    ...(event.tanks && event.tanks.length > 0 ? [`tanks: [${event.tanks.join(', ')}]`] : []), ...(event.id ? [`id: ${event.id}`] : []),
  ];
  const content = block.content.text;
  const lineBreak = lineBreakOf(note.text);
  const place = eventsPlace(content);
  if (place === null) return refused('events-unreadable');
  const prefix = block.linePrefix ?? '';
  const lines = [...(place.key ? ['events:'] : []), ...parts.map((part, index) => `${' '.repeat(place.indent)}${index === 0 ? '- ' : '  '}${part}`)];
  // Behind the line above, in front of its break.
  const before = content[place.at - 1] === '\n' ? place.at - 1 : place.at;
  const offset = toDocumentOffset(block.content, before, true);
  const edits: TextEdit[] = [{ range: { start: offset, end: offset }, newText: lines.map((line) => lineBreak + prefix + line).join('') }];
  const rows = note.tables.filter((table) => !table.file).flatMap((table) => table.rows);
  const row = rows.find((each) => each.instant !== null && Math.abs(each.instant - at) < minute);
  if (row) edits.push(...remarkEdit(note, row, what));
  return done(edits);
}

/** Where the new entry goes in the plan's text: behind the last entry of `events`, or at the end with a key of its own. */
function eventsPlace(content: string): { at: number; indent: number; key: boolean } | null {
  const key = /^events[ \t]*:[ \t]*([^\r\n]*)\r?$/mu.exec(content);
  if (!key) return { at: content.length, indent: 2, key: true };
  if (key[1]!.replace(/#.*$/u, '').trim() !== '') return null;
  let at = content.indexOf('\n', key.index) < 0 ? content.length : content.indexOf('\n', key.index) + 1;
  let end = at;
  let indent: number | null = null;
  while (at < content.length) {
    const stop = content.indexOf('\n', at) < 0 ? content.length : content.indexOf('\n', at) + 1;
    const line = content.slice(at, stop);
    const depth = /^[ ]*/u.exec(line)![0].length;
    const blank = line.trim() === '';
    if (!blank && depth === 0 && !line.startsWith('-') && !line.startsWith('#')) break;
    if (!blank && !line.trimStart().startsWith('#')) { end = stop; if (line.trimStart().startsWith('-')) indent ??= depth; }
    at = stop;
  }
  return { at: end, indent: indent ?? 2, key: false };
}
