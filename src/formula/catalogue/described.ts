// An entry of the catalogue with its help in the reader's language. Names, examples and what it computes stay.
import { functionWords, operandWords } from '../../words/de/functionHelp.ts';
import type { Language } from '../../words/languages.ts';
import type { FunctionEntry, Signature } from './entry.ts';

/** The entry as it is described in a language; the catalogue's own words are English. */
export function describedIn(language: Language, entry: FunctionEntry): FunctionEntry {
  const words = language === 'de' && Object.hasOwn(functionWords, entry.name) ? functionWords[entry.name]! : null;
  if (!words) return entry;
  const about = <Operand extends { readonly name: string; readonly about: string }>(operand: Operand): Operand => (
    { ...operand, about: operandWords[`${entry.name}.${operand.name}`] ?? operandWords[operand.name] ?? operand.about });
  const signature = (each: Signature): Signature => ({ ...each, parameters: each.parameters.map(about), options: each.options.map(about) });
  return { ...entry, ...words, signatures: entry.signatures.map(signature) };
}
