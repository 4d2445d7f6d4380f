// Hover on a number that no formula checks: what this note computes that gives it, or comes near.
import * as vscode from 'vscode';
import { looseNumberAt } from '../../assist/explain.ts';
import { slipSentence } from '../language.ts';
import type { Find } from '../hovers.ts';
import { inlineCode } from './working.ts';
import { literally } from './literally.ts';

export const hoverLooseNumber: Find = (note, offset) => {
  const found = looseNumberAt(note, offset);
  if (!found) return null;
  const text = new vscode.MarkdownString();
  const giving = found.candidates.filter((each) => each.gives);
  text.appendMarkdown(`**${literally(vscode.l10n.t('No formula checks this number'))}**`);
  if (found.candidates.length > 0) text.appendMarkdown(`\n\n${literally(giving.length > 0 ? vscode.l10n.t('These give it:') : vscode.l10n.t('Nothing gives it; these come near:'))}`);
  for (const each of giving.length > 0 ? giving : found.candidates) {
    text.appendMarkdown('\n- ').appendMarkdown(inlineCode(each.formula)).appendMarkdown(literally(` = ${each.text}`));
    const slip = each.slip ? slipSentence(each.slip) : undefined;
    if (slip) text.appendMarkdown(literally(` · ${slip}`));
  }
  return { range: found.range, text };
};
