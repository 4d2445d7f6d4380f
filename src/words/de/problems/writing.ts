// German sentences for the problems of src/writing.
import type { writingCodes } from '../../../problems/codes/writing.ts';
import type { Sentences } from '../../sentences.ts';

export const writingSentences: Sentences<keyof typeof writingCodes> = {
};
