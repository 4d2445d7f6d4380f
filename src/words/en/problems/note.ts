// English sentences for the problems of src/note. Arguments arrive as text or numbers, already formatted.
import type { noteCodes } from '../../../problems/codes/note.ts';
import type { Sentences } from '../../sentences.ts';

export const noteSentences: Sentences<keyof typeof noteCodes> = {
};
