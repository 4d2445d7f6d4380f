// Problem codes raised by src/formula.
import type { CodeEntry } from '../codeEntry.ts';

export const formulaCodes = {
} as const satisfies Record<string, CodeEntry>;
