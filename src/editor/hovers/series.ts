// Hover on a series, wherever its name stands, and on a tank or moment of the plan that a formula names.
import * as vscode from 'vscode';
import { momentAt, seriesAt } from '../../assist/explain.ts';
import { nameAt } from '../../assist/navigate.ts';
import { namePlaces } from '../../assist/names.ts';
import { smallChart } from '../../charts/smallChart.ts';
import type { ChartTheme } from '../../charts/types.ts';
import type { Series } from '../../dataset/types.ts';
import type { Note } from '../../experiment/types.ts';
import { toBase64 } from '../../publish/base64.ts';
import type { Find } from '../hovers.ts';
import { tankText } from './plan.ts';
import { literally } from './literally.ts';

/** `mat.DO` in a formula, a figure or a head of a table: its course as a small chart. */
export const hoverSeries: Find = (note, offset) => {
  const found = seriesAt(note, offset);
  if (!found) return null;
  const text = new vscode.MarkdownString();
  return appendChart(text, note, found.series) ? { range: found.range, text } : null;
};

/** A tank, an event, a phase or a time of the lights where it is used; where it is declared the plan speaks for itself. */
export const hoverName: Find = (note, offset) => {
  if (seriesAt(note, offset)) return null;
  const moment = momentAt(note, offset);
  if (moment) return { range: moment.range, text: new vscode.MarkdownString().appendMarkdown(`**${literally(moment.name)}** · `).appendMarkdown(literally(moment.text)) };
  const at = nameAt(namePlaces(note), offset);
  const tank = at?.kind === 'tank' && !at.declares ? note.protocol?.tanks.find((each) => each.id === at.name) : undefined;
  return at && tank ? { range: at.range, text: tankText(tank) } : null;
};

/** Adds the chart of a series; false where it has too few readings to draw. */
export function appendChart(text: vscode.MarkdownString, note: Note, series: Series, mark: number | null = null): boolean {
  const chart = smallChart(note, series, themes[vscode.window.activeColorTheme.kind], mark);
  if (!chart) return false;
  const { facts } = chart;
  const unit = series.unit.print;
  const words = vscode.l10n.t('{0}: {1} readings from {2} to {3}, lowest {4}, highest {5}', series.id, facts.readings, facts.from, facts.to, `${facts.lowest} ${unit}`.trimEnd(), `${facts.highest} ${unit}`.trimEnd());
  // The words are the picture's text alternative, and stand below it for everybody.
  const alternative = words.replace(/[[\]\\]/g, ' ');
  text.appendMarkdown(`\n\n![${alternative}](data:image/svg+xml;base64,${toBase64(new TextEncoder().encode(chart.svg))}|width=${chart.width},height=${chart.height})\n\n`).appendMarkdown(`${literally(words)}\n\n`);
  return true;
}

const themes: Readonly<Record<vscode.ColorThemeKind, ChartTheme>> = {
  [vscode.ColorThemeKind.Light]: 'light', [vscode.ColorThemeKind.Dark]: 'dark',
  [vscode.ColorThemeKind.HighContrast]: 'high-contrast', [vscode.ColorThemeKind.HighContrastLight]: 'high-contrast-light',
};
