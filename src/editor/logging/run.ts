// A run that the keeper started: a countdown in the status bar, a word when a slot is due. Survives a reload; off otherwise.
import * as vscode from 'vscode';
import { planRow, type RowPlan } from '../../edits/planRow.ts';
import type { Note } from '../../experiment/types.ts';
import type { Instant, Zone } from '../../time/instant.ts';
import { formatClock } from '../../time/text.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { runFiles } from './runFiles.ts';
import { RunHolder } from './runHolder.ts';
import { afterEnd, countdown, isQuiet, momentOf, type RunMoment } from './runState.ts';

/** Milliseconds between two looks at what other windows did. */
const lookEvery = 5000;
/** Milliseconds by which a window in the background lets the one in front speak first. */
const background = 3000;

export function registerRun(context: vscode.ExtensionContext, notes: NoteStore, log: vscode.LogOutputChannel): vscode.Disposable {
  const run = new Run(context, notes, log);
  return vscode.Disposable.from(
    run,
    vscode.commands.registerCommand('evenwater.startRun', async (address?: unknown): Promise<boolean> => {
      const document = await documentFor(address);
      const note = document && await notes.noteWithFiles(document);
      if (!document || !note?.protocol) {
        sayNoNote();
        return false;
      }
      if ((note.protocol.schedule?.slots.length ?? 0) === 0) {
        void vscode.window.showInformationMessage(vscode.l10n.t('The plan of this note has no times to be reminded of.'));
        return false;
      }
      await run.start(document.uri);
      return true;
    }),
    vscode.commands.registerCommand('evenwater.endRun', () => run.end()),
  );
}

class Run implements vscode.Disposable {
  readonly #notes: NoteStore;
  readonly #holder: RunHolder;
  readonly #subscriptions: vscode.Disposable;
  #item: vscode.StatusBarItem | null = null;
  #timer: ReturnType<typeof setInterval> | null = null;
  #lookedAt = 0;
  #busy = false;

  constructor(context: vscode.ExtensionContext, notes: NoteStore, log: vscode.LogOutputChannel) {
    this.#notes = notes;
    const world = { now: Date.now, wait: (milliseconds: number) => new Promise<void>((resolve) => { setTimeout(resolve, milliseconds); }) };
    this.#holder = new RunHolder(runFiles(context, log), world, Math.random().toString(36).slice(2));
    this.#subscriptions = vscode.Disposable.from(
      vscode.workspace.onDidOpenTextDocument((document) => { if (document.languageId === 'markdown') void this.#takeUp(); }),
      vscode.window.onDidChangeWindowState(({ focused }) => { if (focused) void this.#takeUp(); }),
    );
    this.#showContext();
    void this.#takeUp();
  }

  async start(note: vscode.Uri): Promise<void> {
    await this.#holder.start(note.toString());
    this.#begin();
  }

  async end(): Promise<void> {
    await this.#holder.end();
    this.#stop();
  }

  dispose(): void {
    this.#subscriptions.dispose();
    this.#stop();
  }

  async #takeUp(): Promise<void> {
    if (await this.#holder.takeUp(isOurs)) this.#begin();
  }

  #begin(): void {
    this.#showContext();
    this.#item ??= vscode.window.createStatusBarItem('evenwater.run', vscode.StatusBarAlignment.Left, 50);
    this.#item.name = vscode.l10n.t('Evenwater run');
    this.#item.command = { command: 'evenwater.logReading', title: vscode.l10n.t('Log now'), arguments: [vscode.Uri.parse(this.#holder.state!.note)] };
    this.#timer ??= setInterval(() => void this.#tick(), 1000);
    void this.#tick();
  }

  #stop(): void {
    if (this.#timer) clearInterval(this.#timer);
    this.#timer = null;
    this.#item?.dispose();
    this.#item = null;
    this.#showContext();
  }

  #showContext(): void {
    void vscode.commands.executeCommand('setContext', 'evenwater.runIsOn', this.#holder.state !== null);
  }

  /** One second of a run; a tick that takes longer than that is not overtaken by the next. */
  async #tick(): Promise<void> {
    if (this.#busy || !this.#item) return;
    this.#busy = true;
    try {
      const now = Date.now();
      if (now - this.#lookedAt >= lookEvery) {
        this.#lookedAt = now;
        await this.#holder.look();
      }
      if (this.#holder.state === null) this.#stop(); else await this.#showAndTell(vscode.Uri.parse(this.#holder.state.note), now);
    } finally {
      this.#busy = false;
    }
  }

  async #showAndTell(address: vscode.Uri, now: Instant): Promise<void> {
    const note = await this.#noteOf(address);
    const plan = note && planRow(note, now);
    if (!note?.protocol || !plan) return;
    const { zone, schedule } = note.protocol;
    const moment = momentOf(plan, now);
    if (moment.kind === 'over' && now > (schedule?.slots.at(-1) ?? now) + afterEnd) {
      await this.end();
      return;
    }
    this.#showMoment(moment, plan, zone);
    if (moment.kind !== 'due' || (!vscode.window.state.focused && moment.since < background)) return;
    const quiet = isQuiet(vscode.workspace.getConfiguration('evenwater', address).get<string>('quietHours', ''), now, zone);
    if (await this.#holder.takesTelling(moment.slot, quiet)) void this.#tell(address, moment.slot, formatClock(moment.slot, zone));
  }

  #showMoment(moment: RunMoment, plan: RowPlan, zone: Zone): void {
    if (moment.kind === 'over') {
      this.#show(`$(check) ${vscode.l10n.t('The run is over')}`, vscode.l10n.t('Every planned time has passed.'), false);
      return;
    }
    const clock = formatClock(moment.kind === 'due' ? moment.slot : moment.next, zone);
    const missed = plan.missed.length === 0 ? '' : ` ${vscode.l10n.t('Not read so far: {0}.', shortList(plan.missed.map((slot) => formatClock(slot, zone))))}`;
    if (moment.kind === 'due') this.#show(`$(bell) ${vscode.l10n.t('{0} is due', clock)}`, vscode.l10n.t('Log the readings of {0} now.', clock) + missed, true);
    else this.#show(`$(watch) ${vscode.l10n.t('{0} in {1}', clock, countdown(moment.left))}`, vscode.l10n.t('The next reading is due at {0}.', clock) + missed, false);
  }

  #show(text: string, tooltip: string, loud: boolean): void {
    const item = this.#item;
    if (!item) return;
    if (item.text !== text) item.text = text;
    if (item.tooltip !== tooltip) {
      item.tooltip = tooltip;
      item.accessibilityInformation = { label: tooltip, role: 'button' }; // A countdown would be read out every second.
      item.backgroundColor = loud ? new vscode.ThemeColor('statusBarItem.warningBackground') : undefined;
    }
    item.show();
  }

  async #tell(note: vscode.Uri, slot: Instant, clock: string): Promise<void> {
    const logNow = vscode.l10n.t('Log now');
    const notYet = vscode.l10n.t('Later');
    const chosen = await vscode.window.showInformationMessage(vscode.l10n.t('The readings of {0} are due.', clock), logNow, notYet);
    if (chosen === logNow) await vscode.commands.executeCommand('evenwater.logReading', note);
    if (chosen === notYet) await this.#holder.putOff(slot);
  }

  async #noteOf(address: vscode.Uri): Promise<Note | null> {
    try {
      return this.#notes.noteOf(await vscode.workspace.openTextDocument(address));
    } catch {
      this.#show(`$(warning) ${vscode.l10n.t('The note of the run cannot be read')}`, address.path, true);
      return null;
    }
  }
}

/** True for a note of this window: in one of its folders, or open in it. */
function isOurs(note: string): boolean {
  return vscode.workspace.getWorkspaceFolder(vscode.Uri.parse(note)) !== undefined || vscode.workspace.textDocuments.some((document) => document.uri.toString() === note);
}

/** The last few times; a long night with a dead battery does not fill the screen. */
const shortList = (clocks: readonly string[]): string => (clocks.length > 4 ? ['…', ...clocks.slice(-4)] : clocks).join(', ');
