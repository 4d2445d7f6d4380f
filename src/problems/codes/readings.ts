// Problem codes raised by src/readings.
import type { CodeEntry } from '../codeEntry.ts';

export const readingsCodes = {
} as const satisfies Record<string, CodeEntry>;
