// Problem codes raised by src/design.
import type { CodeEntry } from '../codeEntry.ts';

export const designCodes = {
} as const satisfies Record<string, CodeEntry>;
