// English sentences for the problems of src/claims. Arguments arrive as text or numbers, already formatted.
import type { claimsCodes } from '../../../problems/codes/claims.ts';
import type { Sentences } from '../../sentences.ts';

export const claimsSentences: Sentences<keyof typeof claimsCodes> = {
};
