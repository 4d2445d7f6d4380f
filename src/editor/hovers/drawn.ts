// Hover on an option of a figure, summary, limits or methods block: what it is for.
import * as vscode from 'vscode';
import { drawnOptionAt } from '../../assist/drawnTexts.ts';
import type { Find } from '../hovers.ts';
import { helpWords } from '../language.ts';
import { literally } from './literally.ts';

export const hoverDrawn: Find = (note, offset) => {
  const found = drawnOptionAt(note, offset);
  const help = found && (helpWords.optionHelp as Readonly<Record<string, string>>)[`${found.block}.${found.key}`];
  if (!found || !help) return null;
  return { range: found.range, text: new vscode.MarkdownString().appendMarkdown(`**${literally(found.key)}**\n\n`).appendMarkdown(help) };
};
