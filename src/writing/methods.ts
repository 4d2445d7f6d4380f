// The methods paragraph, written from the protocol and the readings.
import type { Note } from '../experiment/types.ts';
import type { Paragraph } from './types.ts';

export function writeMethods(_note: Note): Paragraph[] { return []; }
