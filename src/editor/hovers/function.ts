// Hover on a function's name in a formula: its entry of the catalogue.
import * as vscode from 'vscode';
import { functionByName, signatureLabel } from '../../formula/catalogue.ts';
import { describedIn } from '../../formula/catalogue/described.ts';
import type { Note } from '../../experiment/types.ts';
import type { MappedText } from '../../note/mappedText.ts';
import { toDocumentRange } from '../../note/mappedText.ts';
import { drawnTexts } from '../../assist/drawnTexts.ts';
import type { Find } from '../hovers.ts';
import { interfaceLanguage } from '../language.ts';
import { offsetWithin } from '../places.ts';
import { literally } from './literally.ts';

export const hoverFunction: Find = (note, offset) => {
  for (const formula of formulasOf(note)) {
    const within = offsetWithin(formula, offset);
    if (within === null) continue;
    const call = [...formula.text.matchAll(/([a-z][a-z0-9-]*)[ \t]*\(/gi)].find((match) => match.index <= within && within <= match.index + match[1]!.length) ?? aloneIn(formula.text);
    const english = call && functionByName(call[1]!.toLowerCase());
    if (!call || !english) continue;
    const entry = describedIn(interfaceLanguage, english);
    const labels = entry.signatures.map((signature) => signatureLabel(entry.name, signature));
    const text = new vscode.MarkdownString().appendCodeblock(labels.join('\n'), 'text').appendMarkdown(literally(entry.definition));
    if (entry.equation) text.appendCodeblock(entry.equation, 'text');
    text.appendMarkdown(`\n\n${literally(vscode.l10n.t('Gives: {0}', entry.units))}`);
    if (entry.source) text.appendMarkdown(`\n\n${literally(vscode.l10n.t('Source: {0}', entry.source))}`);
    return { range: toDocumentRange(formula, { start: call.index, end: call.index + call[1]!.length }), text };
  }
  return null;
};

/** A function's name that is the whole text, as the columns of a summary are. */
const aloneIn = (text: string): RegExpExecArray | null => { const match = /^\s*([a-z][a-z0-9-]*)\s*$/.exec(text); return match && functionByName(match[1]!) ? match : null; };

/** Every formula of the note: of claims, of named results, of the plan's conditions, of figures and summaries. */
function* formulasOf(note: Note): Generator<MappedText> {
  for (const claim of note.claims) if (claim.mark !== 'stated') yield claim.syntax.formula;
  for (const result of note.results) yield result.formula;
  for (const step of note.protocol?.equalise ?? []) if (step.accept) yield step.accept;
  for (const rule of note.protocol?.stopRules ?? []) if (rule.when) yield rule.when;
  for (const block of note.syntax.blocks) for (const { text } of drawnTexts(block)) yield text;
}
