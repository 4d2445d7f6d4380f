// Problem codes raised by src/claims.
import type { CodeEntry } from '../codeEntry.ts';

export const claimsCodes = {
} as const satisfies Record<string, CodeEntry>;
