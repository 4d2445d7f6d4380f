// Hover on a claim: which of the four marks it has, the value, the formula and its meaning, the working.
import * as vscode from 'vscode';
import { withUncertainty } from '../../assist/explain.ts';
import type { CheckedClaim } from '../../claims/types.ts';
import { problemSentence } from '../language.ts';
import type { Find } from '../hovers.ts';
import { contains } from '../places.ts';
import { appendFormula, appendWorking } from './working.ts';

export const hoverClaim: Find = (note, offset, document) => {
  const claim = note.claims.find((each) => contains(each.syntax.range, offset));
  if (!claim) return null;
  const text = new vscode.MarkdownString();
  appendVerdict(text, claim);
  const uncertain = withUncertainty(claim.evaluation?.value ?? null, note);
  if (uncertain) text.appendText(vscode.l10n.t('With the 95 % uncertainty of the instruments: {0}', uncertain)).appendMarkdown('\n\n');
  if (claim.mark !== 'stated') appendFormula(text, claim.syntax.formula.text, note);
  if (claim.evaluation) appendWorking(text, claim.evaluation, note, document);
  return { range: claim.syntax.range, text };
};

function appendVerdict(text: vscode.MarkdownString, claim: CheckedClaim): void {
  const bold = (words: string) => text.appendMarkdown(`**${words}**`);
  const plain = (words: string) => text.appendText(words);
  if (claim.mark === 'stated') {
    bold(vscode.l10n.t('Stated, not computed'));
    if (claim.syntax.source !== null) plain(` · ${claim.syntax.source}`);
  } else if (claim.state === 'failed') {
    bold(vscode.l10n.t('Unchecked: it could not be computed'));
    for (const problem of claim.problems.slice(0, 3)) text.appendMarkdown('\n\n').appendText(problemSentence(problem));
  } else if (claim.state === 'unfilled') {
    bold(vscode.l10n.t('Not filled in yet'));
    if (claim.computed !== null) plain(` · ${claim.computed}`);
  } else if (claim.mark === 'condition') {
    bold(claim.state === 'holds' ? vscode.l10n.t('Condition checked: it is true') : vscode.l10n.t('Condition checked: it is not true'));
    if (claim.state === 'holds') plain(` · ${vscode.l10n.t('this does not prove a cause')}`);
  } else {
    bold(claim.state === 'holds' ? vscode.l10n.t('Computed, and the text matches') : vscode.l10n.t('Computed, and the text does not match'));
    if (claim.computed !== null) plain(` · ${claim.computed}`);
  }
  text.appendMarkdown('\n\n');
}
