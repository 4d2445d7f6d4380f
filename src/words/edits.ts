// The way from a message of the edits to a sentence in the reader's language.
import type { MessageArguments } from '../problems/problem.ts';
import { editSentences, type EditMessageCode } from './en/edits.ts';
import type { Language } from './words.ts';

export function editSentence(message: { readonly code: EditMessageCode; readonly args: MessageArguments }, _language: Language = 'en'): string {
  return editSentences[message.code](message.args);
}
