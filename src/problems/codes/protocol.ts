// Problem codes raised by src/protocol.
import type { CodeEntry } from '../codeEntry.ts';

export const protocolCodes = {
} as const satisfies Record<string, CodeEntry>;
