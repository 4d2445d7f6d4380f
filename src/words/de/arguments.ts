// How arguments of problems read in German: lists, tanks, quantities of the closed list, phrases.
import type { MessageArguments } from '../../problems/problem.ts';
import { phraseIn } from '../phrases.ts';
import { text } from '../sentences.ts';
import { listedText, tankName } from './grammar.ts';
import { phrases } from './phrases.ts';
import { quantityNouns } from './quantities.ts';

export const phrase = (args: MessageArguments, name: string): string => phraseIn(phrases, args, name);

/** An argument as a list; a single text is a list of one, an empty one is none. */
export function list(args: MessageArguments, name: string): readonly string[] {
  const value = args[name];
  return typeof value === 'object' ? value : text(args, name) === '' ? [] : [text(args, name)];
}

/** `a, b und c`, `a oder b`. */
export const listed = (args: MessageArguments, name: string, word = 'und'): string => listedText(list(args, name), word);

/** `„a“, „b“`, at most eight. */
export const quoted = (args: MessageArguments, name: string): string => list(args, name).slice(0, 8).map((each) => `„${each}“`).join(', ');

/** `; gemeint ist vielleicht „…“`, where something near is known. */
export const near = (args: MessageArguments): string => (text(args, 'nearest') === '' ? '' : `; gemeint ist vielleicht „${text(args, 'nearest')}“`);

/** Labels of tanks, each with its noun: `Mattenbecken und Becken „open“`. */
export const tanks = (args: MessageArguments, name: string): string => listedText(list(args, name).map(tankName));

/** Quantities of the closed list by their German nouns, any other name as it stands. */
export const quantities = (args: MessageArguments, name: string, word = 'und'): string => listedText(list(args, name).map(quantityName), word);
export const quantity = (args: MessageArguments, name: string): string => quantityName(text(args, name));

/** A quantity's German noun by its English name of the list; another name stays. */
export const quantityName = (english: string): string => (Object.hasOwn(quantityNouns, english) ? quantityNouns[english]!.name : english);

export const many = (args: MessageArguments, name: string): boolean => list(args, name).length > 1;
export const one = (args: MessageArguments, name = 'count'): boolean => Number(args[name]) === 1;
