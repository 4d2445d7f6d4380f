// What the command line says, by language. Only src/cli asks for it, so none of it is in the editor's bundles.
import type { MessageArguments } from '../problems/problem.ts';
import { commandHelp as germanHelp } from './de/commandHelp.ts';
import { commandSentences as german } from './de/commandLine.ts';
import { commandHelp as englishHelp, type CommandHelp, type CommandName } from './en/commandHelp.ts';
import { commandSentences as english, type CommandSentence } from './en/commandLine.ts';
import type { Language } from './languages.ts';

export type { CommandHelp, CommandName, CommandSentence };

const sentences = { en: english, de: german } as const;
const helps = { en: englishHelp, de: germanHelp } as const;

/** A sentence whose language is not known yet: of a failure, say, that the way in turns into words. */
export type Say = (language: Language) => string;

export const commandSentence = (code: CommandSentence, args: MessageArguments, language: Language): string => sentences[language][code](args);
export const said = (code: CommandSentence, args: MessageArguments = {}): Say => (language) => commandSentence(code, args, language);
export const commandHelp = (language: Language): CommandHelp => helps[language];
