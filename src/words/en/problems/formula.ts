// English sentences for the problems of src/formula. Arguments arrive as text or numbers, already formatted.
import type { formulaCodes } from '../../../problems/codes/formula.ts';
import type { Sentences } from '../../sentences.ts';

export const formulaSentences: Sentences<keyof typeof formulaCodes> = {
};
