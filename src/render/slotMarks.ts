// Marks of a readings table that tell of the plan: a row that came late or early, planned times that nobody read.
import { missedBehind, slotRecord, type OffTime } from '../dataset/slotRecord.ts';
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import type { ReadingRow } from '../readings/types.ts';
import type { Instant } from '../time/instant.ts';
import { formatClock, formatDuration } from '../time/text.ts';
import { slotWords, type SlotWords } from '../words/slots.ts';
import type { Language } from '../words/languages.ts';
import { element, escapeHtml, type Html } from './html.ts';

export interface SlotMarks {
  /** Beside a row's time; empty for a row that came in time. */
  readonly besideTime: (row: ReadingRow) => Html;
  /** A line of the table behind a row (null: in front of the first one); empty where nothing was missed. */
  readonly behind: (row: ReadingRow | null, width: number) => Html;
}

export function slotMarks(note: Note, protocol: Protocol, language: Language): SlotMarks {
  const words = slotWords(language);
  const record = slotRecord(note.tables, protocol);
  const missed = missedBehind(note.tables, record);
  const clock = (slot: Instant): string => formatClock(slot, protocol.zone);
  return {
    besideTime: (row) => {
      const offTime = record.offTime.get(row);
      return offTime ? element('span', { class: 'evenwater-flag evenwater-off-time', title: words.planned(clock(offTime.slot)) }, escapeHtml(offTimeText(offTime, words))) : '';
    },
    behind: (row, width) => {
      const slots = missed.get(row) ?? [];
      return slots.length === 0 ? '' : element('tr', { class: 'evenwater-missed' }, element('td', { colspan: width }, escapeHtml(words.notRead(slots.map(clock)))));
    },
  };
}

function offTimeText({ offset }: OffTime, words: SlotWords): string {
  const by = formatDuration(Math.abs(offset));
  return offset > 0 ? words.late(by) : words.early(by);
}
