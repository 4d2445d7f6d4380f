// The prompt for a row: one line to type in, and below it which value goes where, its change, and what looks wrong.
import * as vscode from 'vscode';
import type { RowPlan } from '../../edits/planRow.ts';
import type { Note } from '../../experiment/types.ts';
import { formatClock } from '../../time/text.ts';
import { editSentence } from '../language.ts';
import { entered, opened, pause, paused, readState, typedInto, type PromptState } from './promptModel.ts';
import { PromptText } from './promptText.ts';
import { rowView, type RowView, type ValueLine } from './rowView.ts';

/** What the prompt asks for: the row that is to be logged now. */
export interface Asked { readonly note: Note; readonly plan: RowPlan }
/** `typed` stands in the prompt when it goes: to be logged, or to be kept for the next time. */
export interface Answer extends Asked { readonly logs: boolean; readonly typed: string }

interface Item extends vscode.QuickPickItem { readonly word?: string; readonly isTrouble?: boolean }

/**
 * Asks for a row until it is whole and Enter is pressed, or until the prompt is left. What looks wrong needs Enter twice.
 * @param askAgain the row to be logged at this moment; asked when the first key is typed, so that a prompt left open logs the time of reading
 */
export async function promptForRow(asked: Asked, begun: string, askAgain: () => Asked | null): Promise<Answer> {
  const pick = vscode.window.createQuickPick<Item>();
  let row = asked;
  let state = opened(begun);
  let timer: ReturnType<typeof setTimeout> | undefined;
  pick.ignoreFocusOut = true;
  const show = () => {
    const { input, judged } = readState(state, row.note, row.plan);
    const view = rowView(input, judged, row.plan, row.note.protocol!.zone);
    pick.title = titleOf(row, view);
    pick.placeholder = vscode.l10n.t('{0}; a time in front where it is not the slot\'s, words behind ;', row.plan.columns.map((column) => column.id).join(' '));
    pick.items = itemsOf(view, state);
    pick.activeItems = [activeItem(pick.items, view, state)];
  };
  const rest = () => { state = paused(state); show(); };
  show();
  return new Promise((resolve) => {
    let logs = false;
    const text = new PromptText();
    const put = (to: string | null) => { if (to !== null) pick.value = to; };
    pick.onDidChangeValue((value) => {
      put(text.heard(value));
      if (text.wanted === state.value) return;
      clearTimeout(timer);
      if (state.value === '') row = askAgain() ?? row;
      state = typedInto(text.wanted);
      timer = setTimeout(rest, pause);
      show();
    });
    pick.onDidAccept(() => {
      clearTimeout(timer);
      const after = entered(state, row.note, row.plan, pick.activeItems[0]?.word ?? null);
      if (after.logs) {
        logs = true;
        pick.hide();
        return;
      }
      state = after.state;
      put(text.want(state.value));
      show();
    });
    pick.onDidHide(() => {
      clearTimeout(timer);
      resolve({ ...row, logs, typed: state.value });
      pick.dispose();
    });
    pick.show();
    put(text.want(begun)); // A text that stands there when the prompt opens would be selected, and gone with the first key.
  });
}

/**
 * The item in front, which a screen reader speaks when another comes to the front, and only then: what Enter does while keys
 * fall; once typing has paused, what looks wrong or else the value typed last, with its change.
 */
function activeItem(items: readonly Item[], view: RowView, state: PromptState): Item {
  // A word is picked only once it is begun: a second Enter must not write a word that nobody chose.
  const word = view.wordBegun && !view.complete ? items.find((item) => item.word !== undefined) : undefined;
  const waits = state.rested && state.value !== '' && !isWarned(state);
  const last = view.filled === 0 ? undefined : items.slice(-view.lines.length)[view.filled - 1];
  return word ?? (waits ? items.find((item) => item.isTrouble) ?? last : undefined) ?? items[0]!;
}

/** True once Enter was pressed on a whole row that looks wrong, and nothing was typed since. */
const isWarned = (state: PromptState): boolean => state.warned === state.value;

function titleOf({ note, plan }: Asked, view: RowView): string {
  const zone = note.protocol!.zone;
  if (plan.slot !== null) {
    const slot = formatClock(plan.slot, zone);
    return slot === view.clock ? vscode.l10n.t('Log a reading: {0} is due', slot) : vscode.l10n.t('Log a reading at {0}: {1} is due', view.clock, slot);
  }
  return plan.next === null ? vscode.l10n.t('Log a reading at {0}', view.clock) : vscode.l10n.t('Log a reading at {0}; the next is due at {1}', view.clock, formatClock(plan.next, zone));
}

function itemsOf(view: RowView, state: PromptState): Item[] {
  const errors = [...view.errors, ...state.refusal ? [state.refusal] : []].map(editSentence);
  const warnings = view.warnings.map(editSentence);
  const first = firstLine(view, errors.length > 0, isWarned(state));
  return [
    // Whoever hears the list hears its first line alone when Enter is pressed.
    item(...first, { description: isWarned(state) ? warnings.join(' ') : '' }),
    ...errors.map((each) => item('error', each, { isTrouble: true })),
    ...warnings.map((each) => item('warning', each, { isTrouble: true })),
    ...view.completions.map((word) => item('symbol-text', word, { word })),
    ...view.lines.map((line) => item(icons[line.state], `${line.head}  ${valueText(line)}`, { description: changeSentence(line) })),
  ];
}

/** An icon in the label would be read out by its name. */
const item = (icon: string, label: string, more: Partial<Item> = {}): Item => ({ label, iconPath: new vscode.ThemeIcon(icon), alwaysShow: true, ...more });

/** What Enter does now, with its icon. */
function firstLine(view: RowView, wrong: boolean, warned: boolean): [icon: string, label: string] {
  if (wrong) return ['error', vscode.l10n.t('This row cannot be logged yet')];
  if (view.complete && view.warnings.length > 0) return ['warning', warned ? vscode.l10n.t('Enter once more logs it all the same') : vscode.l10n.t('Something looks wrong')];
  if (view.complete) return ['check', vscode.l10n.t('Enter logs this row at {0}', view.clock)];
  const line = view.lines.find((each) => each.state === 'next') ?? view.lines.at(-1);
  if (!line) return ['error', vscode.l10n.t('This row cannot be logged yet')];
  const what = line.place === '' ? line.head : vscode.l10n.t('{0}, {1}', line.head, line.place);
  return ['arrow-right', line.unit === '' ? vscode.l10n.t('{0} of {1}: {2}', place(view), view.lines.length, what) : vscode.l10n.t('{0} of {1}: {2}, in {3}', place(view), view.lines.length, what, line.unit)];
}

const place = (view: RowView): number => Math.min(view.filled + 1, view.lines.length);

function valueText(line: ValueLine): string {
  if (line.text === '') return '…';
  return line.text === '-' || line.unit === '' ? line.text : `${line.text} ${line.unit}`;
}

const icons: Readonly<Record<ValueLine['state'], string>> = { open: 'circle-outline', next: 'arrow-right', good: 'pass', odd: 'warning', wrong: 'error' };

function changeSentence(line: ValueLine): string {
  if (!line.last) return '';
  return line.change === '' ? vscode.l10n.t('{0} at {1}', line.last.text, line.last.clock) : vscode.l10n.t('{0} since {1} ({2})', line.change, line.last.clock, line.last.text);
}
