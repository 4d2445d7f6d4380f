// English sentences for the problems of src/protocol. Arguments arrive as text or numbers, already formatted.
import type { protocolCodes } from '../../../problems/codes/protocol.ts';
import type { Sentences } from '../../sentences.ts';

export const protocolSentences: Sentences<keyof typeof protocolCodes> = {
};
