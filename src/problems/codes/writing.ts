// Problem codes raised by src/writing.
import type { CodeEntry } from '../codeEntry.ts';

export const writingCodes = {
} as const satisfies Record<string, CodeEntry>;
