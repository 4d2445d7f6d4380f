// The prompt for a row: one line to type in, and below it which value goes where, its change, and what looks wrong.
import * as vscode from 'vscode';
import type { RowPlan } from '../../edits/planRow.ts';
import { readRowInput } from '../../edits/readRowInput.ts';
import type { Note } from '../../experiment/types.ts';
import { formatClock } from '../../time/text.ts';
import { editSentence } from '../../words/edits.ts';
import { completed, rowView, type RowView, type ValueLine } from './rowView.ts';

interface Item extends vscode.QuickPickItem { readonly word?: string }

/** What was typed when Enter was pressed on a whole row; null when the prompt was left. What looks wrong needs Enter twice. */
export async function promptForRow(note: Note, plan: RowPlan, begun = ''): Promise<string | null> {
  const zone = note.protocol!.zone;
  const pick = vscode.window.createQuickPick<Item>();
  pick.title = titleOf(note, plan);
  pick.placeholder = vscode.l10n.t('{0}; a time in front where it is not the slot\'s, words behind ;', plan.columns.map((column) => column.id).join(' '));
  pick.ignoreFocusOut = true;
  pick.value = begun;
  let warned: string | null = null;
  const show = () => {
    const view = rowView(readRowInput(pick.value, note, plan), plan, zone);
    pick.items = itemsOf(view, warned === pick.value);
    const word = pick.items.find((item) => item.word !== undefined);
    pick.activeItems = word && !view.complete ? [word] : pick.items.slice(0, 1);
    return view;
  };
  show();
  return new Promise((resolve) => {
    pick.onDidChangeValue(() => { warned = null; show(); });
    pick.onDidAccept(() => {
      const view = show();
      const [active] = pick.activeItems;
      if (!view.complete) {
        if (active?.word !== undefined) { pick.value = completed(pick.value, active.word); show(); }
        return;
      }
      if (view.warnings.length > 0 && warned !== pick.value) {
        warned = pick.value;
        show();
        return;
      }
      const { value } = pick;
      resolve(value);
      pick.hide();
    });
    pick.onDidHide(() => { resolve(null); pick.dispose(); });
    pick.show();
  });
}

function titleOf(note: Note, plan: RowPlan): string {
  const zone = note.protocol!.zone;
  if (plan.slot !== null) return vscode.l10n.t('Log a reading: {0} is due', formatClock(plan.slot, zone));
  const time = formatClock(plan.time, zone);
  return plan.next === null ? vscode.l10n.t('Log a reading at {0}', time) : vscode.l10n.t('Log a reading at {0}; the next is due at {1}', time, formatClock(plan.next, zone));
}

function itemsOf(view: RowView, warned: boolean): Item[] {
  const first: Item[] = [];
  if (view.complete && view.warnings.length === 0) first.push({ label: `$(check) ${vscode.l10n.t('Enter logs this row')}`, alwaysShow: true });
  if (view.complete && view.warnings.length > 0) {
    first.push({ label: warned ? `$(warning) ${vscode.l10n.t('Enter once more logs it all the same')}` : `$(warning) ${vscode.l10n.t('Something looks wrong')}`, alwaysShow: true });
  }
  return [
    ...first,
    ...view.errors.map((each): Item => ({ label: `$(error) ${editSentence(each)}`, alwaysShow: true })),
    ...view.warnings.map((each): Item => ({ label: `$(warning) ${editSentence(each)}`, alwaysShow: true })),
    ...view.completions.map((word): Item => ({ label: `$(symbol-text) ${word}`, word, alwaysShow: true })),
    ...view.lines.map((line): Item => ({ label: `${icons[line.state]} ${line.head}  ${line.text === '' ? '…' : line.text}${line.text !== '' && line.text !== '-' && line.unit !== '' ? ` ${line.unit}` : ''}`, description: changeSentence(line), alwaysShow: true })),
  ];
}

const icons: Readonly<Record<ValueLine['state'], string>> = { open: '$(circle-outline)', next: '$(arrow-right)', good: '$(pass)', odd: '$(warning)', wrong: '$(error)' };

function changeSentence(line: ValueLine): string {
  if (!line.last) return '';
  return line.change === '' ? vscode.l10n.t('{0} at {1}', line.last.text, line.last.clock) : vscode.l10n.t('{0} since {1} ({2})', line.change, line.last.clock, line.last.text);
}
