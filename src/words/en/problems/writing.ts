// English sentences for the problems of src/writing. Arguments arrive as text or numbers, already formatted.
import type { writingCodes } from '../../../problems/codes/writing.ts';
import type { Sentences } from '../../sentences.ts';

export const writingSentences: Sentences<keyof typeof writingCodes> = {
};
