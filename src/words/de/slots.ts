// German words for planned times against what was read.
import type { SlotWords } from '../en/slots.ts';
import { listedText } from './grammar.ts';

export const slotWords: SlotWords = {
  late: (by) => `${by} zu spät`,
  early: (by) => `${by} zu früh`,
  planned: (clock) => `geplant für ${clock} Uhr`,
  notRead: (clocks) => (clocks.length <= 3 ? `${listedText(clocks)} nicht abgelesen`
    : `${clocks[0]!} bis ${clocks.at(-1)!} nicht abgelesen (${clocks.length} geplante Zeiten)`),
  missedCount: (count) => `${count} verpasst`,
  lateCount: (count) => `${count} verspätet`,
  earlyCount: (count) => `${count} verfrüht`,
};
