// The editor's display language, known once at activation, and the words of the other rooms in it.
// Sentences of this room's own go through vscode.l10n.
import * as vscode from 'vscode';
import { assistWords } from '../words/assist.ts';
import { editSentence as editSentenceIn } from '../words/edits.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { slipSentence as slipSentenceIn } from '../words/slips.ts';
import { fixTitle as fixTitleIn, problemSentence as problemSentenceIn } from '../words/words.ts';

export const interfaceLanguage: Language = languageOf(vscode.env.language);

export const helpWords = assistWords(interfaceLanguage);
export const problemSentence = (problem: Parameters<typeof problemSentenceIn>[0]): string => problemSentenceIn(problem, interfaceLanguage);
export const fixTitle = (fix: Parameters<typeof fixTitleIn>[0]): string => fixTitleIn(fix, interfaceLanguage);
export const editSentence = (message: Parameters<typeof editSentenceIn>[0]): string => editSentenceIn(message, interfaceLanguage);
export const slipSentence = (slip: Parameters<typeof slipSentenceIn>[0]): string => slipSentenceIn(slip, interfaceLanguage);
