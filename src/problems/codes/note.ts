// Problem codes raised by src/note.
import type { CodeEntry } from '../codeEntry.ts';

export const noteCodes = {
} as const satisfies Record<string, CodeEntry>;
