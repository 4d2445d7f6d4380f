// Hover on a named result, in its `values` block: the value and how it came about.
import * as vscode from 'vscode';
import { contextOf } from '../../experiment/readNote.ts';
import { showValue } from '../../formula/show.ts';
import { problemSentence } from '../language.ts';
import type { Find } from '../hovers.ts';
import { contains, rangeOf } from '../places.ts';
import { appendFormula, workingOf } from './working.ts';
import { literally } from './literally.ts';

export const hoverResult: Find = (note, offset, document) => {
  const result = note.results.find((each) => contains(each.nameRange, offset) || contains(rangeOf(each.formula), offset));
  if (!result) return null;
  const text = new vscode.MarkdownString().appendMarkdown(`**${result.name}**`);
  const { value, problems } = result.evaluation;
  if (value) text.appendMarkdown(literally(` = ${showValue(value, contextOf(note), { withUncertainty: true })}`));
  else if (problems[0]) text.appendMarkdown(`\n\n${literally(problemSentence(problems[0]))}`);
  text.appendMarkdown('\n\n');
  appendFormula(text, result.formula.text, note);
  return { range: contains(result.nameRange, offset) ? result.nameRange : rangeOf(result.formula), text, working: workingOf(result.evaluation, note, document) };
};
