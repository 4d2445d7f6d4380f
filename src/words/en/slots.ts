// English words for planned times against what was read. Lengths of time and clock times arrive as text.
import { listedText } from './grammar.ts';

export const slotWords = {
  /** `7 min late` */
  late: (by: string): string => `${by} late`,
  early: (by: string): string => `${by} early`,
  /** What a pointer shows: `planned for 02:30`. */
  planned: (clock: string): string => `planned for ${clock}`,
  notRead: (clocks: readonly string[]): string => (clocks.length <= 3 ? `${listedText(clocks)} not read`
    : `${clocks[0]!} to ${clocks.at(-1)!} not read (${clocks.length} planned times)`),
  missedCount: (count: number): string => `${count} missed`,
  lateCount: (count: number): string => `${count} late`,
  earlyCount: (count: number): string => `${count} early`,
};

export type SlotWords = typeof slotWords;
