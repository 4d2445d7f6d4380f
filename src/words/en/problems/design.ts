// English sentences for the problems of src/design. Arguments arrive as text or numbers, already formatted.
import type { designCodes } from '../../../problems/codes/design.ts';
import type { Sentences } from '../../sentences.ts';

export const designSentences: Sentences<keyof typeof designCodes> = {
};
