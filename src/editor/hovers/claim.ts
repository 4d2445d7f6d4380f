// Hover on a claim: which of the four marks it has, the value, the formula and its meaning, the working.
import * as vscode from 'vscode';
import { withUncertainty } from '../../assist/explain.ts';
import type { CheckedClaim } from '../../claims/types.ts';
import { problemSentence } from '../language.ts';
import type { Find } from '../hovers.ts';
import { contains } from '../places.ts';
import { appendFormula, workingOf } from './working.ts';
import { literally } from './literally.ts';

export const hoverClaim: Find = (note, offset, document) => {
  const claim = note.claims.find((each) => contains(each.syntax.range, offset));
  if (!claim) return null;
  const text = new vscode.MarkdownString();
  const uncertain = withUncertainty(claim.evaluation?.value ?? null, note);
  appendVerdict(text, claim, uncertain !== null);
  if (uncertain) text.appendMarkdown(literally(` · ${vscode.l10n.t('With the instruments’ 95 % uncertainty: {0}', uncertain)}`));
  text.appendMarkdown('\n\n');
  if (claim.mark !== 'stated') appendFormula(text, claim.syntax.formula.text, note);
  return { range: claim.syntax.range, text, ...(claim.evaluation ? { working: workingOf(claim.evaluation, note, document) } : {}) };
};

/** The mark and the value; the latter not where the text holds it and it follows with its uncertainty. */
function appendVerdict(text: vscode.MarkdownString, claim: CheckedClaim, valueFollows: boolean): void {
  const bold = (words: string) => text.appendMarkdown(`**${words}**`);
  const plain = (words: string) => text.appendMarkdown(literally(words));
  if (claim.mark === 'stated') {
    bold(vscode.l10n.t('Stated, not computed'));
    if (claim.syntax.source !== null) plain(` · ${claim.syntax.source}`);
  } else if (claim.state === 'failed') {
    bold(vscode.l10n.t('Unchecked: it could not be computed'));
    for (const problem of claim.problems.slice(0, 3)) text.appendMarkdown(`\n\n${literally(problemSentence(problem))}`);
  } else if (claim.state === 'unfilled') {
    bold(vscode.l10n.t('Not filled in yet'));
    if (claim.computed !== null) plain(` · ${claim.computed}`);
  } else if (claim.mark === 'condition') {
    bold(claim.state === 'holds' ? vscode.l10n.t('Condition checked: it is true') : vscode.l10n.t('Condition checked: it is not true'));
    if (claim.state === 'holds') plain(` · ${vscode.l10n.t('this does not prove a cause')}`);
  } else {
    bold(claim.state === 'holds' ? vscode.l10n.t('Computed, and the text matches') : vscode.l10n.t('Computed, and the text does not match'));
    if (claim.computed !== null && !(claim.state === 'holds' && valueFollows)) plain(` · ${claim.computed}`);
  }
}
