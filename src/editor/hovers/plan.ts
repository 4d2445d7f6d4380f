// Hover in the plan: on a tank its volume and role, on a quantity its instrument, on a key what the key means.
import * as vscode from 'vscode';
import { walkPlan } from '../../assist/planWalk.ts';
import { waterVolume } from '../../protocol/derived.ts';
import { describeKey } from '../../protocol/describedKeys.ts';
import type { MeasuredQuantity, Tank } from '../../protocol/types.ts';
import { instrumentFigure } from '../../formula/show.ts';
import { formatValue } from '../../quantities/format.ts';
import type { Find } from '../hovers.ts';
import { helpWords, interfaceLanguage } from '../language.ts';
import { contains } from '../places.ts';
import { literally } from './literally.ts';

export const hoverPlan: Find = (note, offset) => {
  const tank = note.protocol?.tanks.find((each) => contains(each.idRange, offset));
  if (tank) return { range: tank.idRange, text: tankText(tank) };
  const quantity = note.protocol?.measure.find((each) => contains(each.idRange, offset));
  if (quantity) {
    const series = [...note.dataset.series.values()].filter((each) => each.quantity === quantity.id).map((each) => each.id);
    return { range: quantity.idRange, text: quantityText(quantity, series) };
  }
  const block = note.syntax.blocks.find((each) => each.word === 'protocol');
  if (!block || !contains(block.range, offset)) return null;
  const key = walkPlan(note).keys.find((each) => contains(each.keyRange, offset));
  if (!key) return null;
  const text = new vscode.MarkdownString().appendMarkdown(`**${literally(key.key)}**\n\n`).appendMarkdown(describeKey(interfaceLanguage, key.entry));
  if (key.entry.example !== '') text.appendCodeblock(`${key.entry.key}:${key.entry.example.startsWith('\n') ? '' : ' '}${key.entry.example}`, 'yaml');
  return { range: key.keyRange, text };
};

export function tankText(tank: Tank): vscode.MarkdownString {
  const text = new vscode.MarkdownString().appendMarkdown(`**${literally(tank.label)}**`);
  if (tank.role) text.appendMarkdown(literally(` · ${tank.role.value === 'control' ? vscode.l10n.t('control') : vscode.l10n.t('treatment')}`));
  const volume = waterVolume(tank);
  if (volume) text.appendMarkdown(`\n\n${literally(vscode.l10n.t('Water: {0}', formatValue(volume)))}`);
  for (const [key, fact] of tank.facts) text.appendMarkdown(`\n\n${literally(`${tank.id}.${key} = ${formatValue(fact.value)}`)}`);
  return text;
}

function quantityText(quantity: MeasuredQuantity, series: readonly string[]): vscode.MarkdownString {
  const text = new vscode.MarkdownString().appendMarkdown(`**${literally(helpWords.quantityWord(quantity.what?.value ?? quantity.id))}**`);
  if (quantity.unit) text.appendMarkdown(literally(`, ${quantity.unit.print}`));
  const facts = [
    quantity.with?.value,
    quantity.accuracy ? vscode.l10n.t('accuracy ± {0}', instrumentFigure(quantity.accuracy)) : null,
    quantity.resolution ? vscode.l10n.t('resolution {0}', instrumentFigure(quantity.resolution)) : null,
  ].filter(Boolean);
  if (facts.length > 0) text.appendMarkdown(`\n\n${literally(facts.join(' · '))}`);
  if (series.length > 0) text.appendMarkdown(`\n\n${literally(vscode.l10n.t('Columns: {0}', series.join(', ')))}`);
  return text;
}
