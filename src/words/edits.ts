// The way from a message of the edits to a sentence in the reader's language.
import type { MessageArguments } from '../problems/problem.ts';
import { editSentences as german } from './de/edits.ts';
import { editSentences as english, type EditMessageCode } from './en/edits.ts';
import type { Language } from './languages.ts';

const sentences = { en: english, de: german } as const;

export function editSentence(message: { readonly code: EditMessageCode; readonly args: MessageArguments }, language: Language = 'en'): string {
  return sentences[language][message.code](message.args);
}
