// English sentences for the problems of src/readings. Arguments arrive as text or numbers, already formatted.
import type { readingsCodes } from '../../../problems/codes/readings.ts';
import type { Sentences } from '../../sentences.ts';

export const readingsSentences: Sentences<keyof typeof readingsCodes> = {
};
