// How a value came about, as Markdown: formula, its meaning in words, the steps, and links to the readings behind it.
import * as vscode from 'vscode';
import { equationsBehind } from '../../assist/explain.ts';
import { contextOf } from '../../experiment/readNote.ts';
import type { Note } from '../../experiment/types.ts';
import { describedIn } from '../../formula/catalogue/described.ts';
import { plainWords } from '../../formula/plainWords.ts';
import type { Evaluation, WorkingStep } from '../../formula/types.ts';
import type { SourceRange } from '../../problems/problem.ts';
import { interfaceLanguage } from '../language.ts';
import { cellAt } from './findCell.ts';
import { formatClock } from '../../time/text.ts';
import { remarksBehind } from '../../words/remarks.ts';
import { literally } from './literally.ts';

/** More readings than this are counted, not listed. */
const listed = 6;

export function appendFormula(text: vscode.MarkdownString, formula: string, note: Note): void {
  const named = note.results.find((result) => result.name === formula.trim());
  text.appendCodeblock(named ? `${named.name} = ${named.formula.text.trim()}` : formula.trim(), 'text');
  const words = plainWords(formula, contextOf(note), interfaceLanguage);
  if (words !== formula) text.appendMarkdown(`${literally(`${words.charAt(0).toUpperCase()}${words.slice(1)}.`.replace(/\.\.$/, '.'))}\n\n`);
}

export function workingOf(evaluation: Evaluation, note: Note, document: vscode.TextDocument): vscode.MarkdownString {
  const text = new vscode.MarkdownString();
  for (const step of evaluation.working) {
    text.appendMarkdown('\n- ').appendMarkdown(inlineCode(step.formula)).appendMarkdown(literally(` = ${step.value}`));
    appendReadings(text, step, note, document);
  }
  text.appendMarkdown('\n');
  for (const remark of remarksBehind(evaluation.working, interfaceLanguage)) text.appendMarkdown(`\n- ${literally(remark)}`);
  text.appendMarkdown('\n');
  for (const { name, equation, source } of equationsBehind(evaluation).map((each) => describedIn(interfaceLanguage, each))) {
    text.appendMarkdown('\n- ').appendMarkdown(inlineCode(name)).appendMarkdown(literally(equation === '' ? '' : `: ${equation}`));
    if (source) text.appendMarkdown(` · ${literally(vscode.l10n.t('Source: {0}', source))}`);
  }
  return text.appendMarkdown('\n');
}

function appendReadings(text: vscode.MarkdownString, step: WorkingStep, note: Note, document: vscode.TextDocument): void {
  if (step.readings.length === 0) return;
  if (step.readings.length > listed) {
    text.appendMarkdown(` · ${literally(vscode.l10n.t('{0} readings', step.readings.length))}`);
    return;
  }
  step.readings.forEach((range, index) => {
    text.appendMarkdown(index === 0 ? ' · ' : ', ').appendMarkdown(`[${readingLabel(note, range)}](${linkTo(document, range)})`);
  });
}

/** `mat.DO 22:00 8.26`, in Markdown that shows it literally. */
function readingLabel(note: Note, range: SourceRange): string {
  const found = cellAt(note, range.start);
  const time = found && found.row.instant !== null && note.protocol ? formatClock(found.row.instant, note.protocol.zone) : found?.row.timeText;
  const label = [found?.column.id, time, note.text.slice(range.start, range.end)].filter(Boolean).join(' ');
  return literally(label);
}

function linkTo(document: vscode.TextDocument, range: SourceRange): string {
  const { line, character } = document.positionAt(range.start);
  return document.uri.with({ fragment: `L${line + 1},${character + 1}` }).toString();
}

/** Text as inline code, whatever backticks it holds. */
export function inlineCode(text: string): string {
  const fence = '`'.repeat(Math.max(0, ...[...text.matchAll(/`+/g)].map((run) => run[0].length)) + 1);
  return `${fence}${text.startsWith('`') || text.endsWith('`') ? ` ${text} ` : text}${fence}`;
}
