// Signature help: the function around the cursor, its signatures from the catalogue, and which operand is being written.
import type { Note } from '../experiment/types.ts';
import { functionByName, signatureLabel } from '../formula/catalogue.ts';
import { describedIn } from '../formula/catalogue/described.ts';
import type { Language } from '../words/languages.ts';
import { formulaAt, openCall } from './formulaPlace.ts';

export interface SignatureParameter {
  /** From and to in the label. */
  readonly label: readonly [number, number];
  readonly about: string;
}
export interface SignatureLine { readonly label: string; readonly about: string; readonly parameters: readonly SignatureParameter[] }
export interface SignatureHelp { readonly signatures: readonly SignatureLine[]; readonly activeSignature: number; readonly activeParameter: number }

/** Help for the call around an offset of `note.text`; null outside calls. */
export function signatureHelp(note: Note, offset: number, language: Language = 'en'): SignatureHelp | null {
  const formula = formulaAt(note.text, offset);
  const call = formula && openCall(formula.before);
  const english = call && functionByName(call.name);
  if (!call || !english) return null;
  const entry = describedIn(language, english);
  const signatures = entry.signatures.map((signature): SignatureLine => {
    const label = signatureLabel(entry.name, signature);
    let at = entry.name.length + 1;
    const take = (length: number): [number, number] => { const place: [number, number] = [at, at + length]; at += length + 2; return place; };
    const parameters = [
      ...signature.parameters.map((each) => ({ label: take(each.name.length + (each.optional ? 1 : 0)), about: each.about })),
      ...signature.options.map((each) => ({ label: take(`${each.name} …${each.required ? '' : '?'}`.length), about: each.about })),
    ];
    return { label, about: entry.definition, parameters };
  });
  const option = /^\s*([\p{L}][\p{L}-]*)\s+[-\d.]/u.exec(call.operand)?.[1];
  const fits = (index: number): boolean => { const each = entry.signatures[index]!; return call.index < each.parameters.length + each.options.length; };
  const activeSignature = Math.max(0, entry.signatures.findIndex((_, index) => fits(index)));
  const active = entry.signatures[activeSignature]!;
  const named = option ? active.options.findIndex((each) => each.name === option) : -1;
  const activeParameter = named >= 0 ? active.parameters.length + named : call.index;
  return { signatures, activeSignature, activeParameter };
}
