// Who asks: the language of the editor's help and its words, carried with the note through completion.
import type { Note } from '../experiment/types.ts';
import { assistWords, type AssistWords } from '../words/assist.ts';
import type { Language } from '../words/languages.ts';

export interface Asking { readonly language: Language; readonly words: AssistWords }
export interface AskedNote extends Note { readonly asking: Asking }

export const askedIn = (language: Language, note: Note): AskedNote => ({ ...note, asking: { language, words: assistWords(language) } });
