// A run that the keeper started: a countdown in the status bar, a word when a slot is due. Survives a reload; off otherwise.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as vscode from 'vscode';
import { planRow } from '../../edits/planRow.ts';
import type { Note } from '../../experiment/types.ts';
import type { Instant } from '../../time/instant.ts';
import { formatClock } from '../../time/text.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { countdown, isQuiet, later, leaseTime, mayTake, momentOf, readLease, readRunState, shouldTell, type RunState } from './runState.ts';

const storedAs = 'evenwater.run';

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
  readonly #context: vscode.ExtensionContext;
  readonly #notes: NoteStore;
  readonly #log: vscode.LogOutputChannel;
  /** One name a window, for the lease. */
  readonly #window = Math.random().toString(36).slice(2);
  #state: RunState | null;
  #item: vscode.StatusBarItem | null = null;
  #timer: ReturnType<typeof setInterval> | null = null;
  #telling = false;

  constructor(context: vscode.ExtensionContext, notes: NoteStore, log: vscode.LogOutputChannel) {
    this.#context = context;
    this.#notes = notes;
    this.#log = log;
    this.#state = readRunState(context.workspaceState.get(storedAs));
    if (this.#state) this.#begin(); else this.#showContext();
  }

  async start(note: vscode.Uri): Promise<void> {
    await this.#remember({ note: note.toString(), started: Date.now(), told: [], laterUntil: null });
    this.#begin();
  }

  async end(): Promise<void> {
    await this.#remember(null);
    this.#stop();
  }

  dispose(): void {
    this.#stop();
  }

  #begin(): void {
    this.#showContext();
    this.#item ??= vscode.window.createStatusBarItem('evenwater.run', vscode.StatusBarAlignment.Left, 50);
    this.#item.name = vscode.l10n.t('Evenwater run');
    this.#item.command = { command: 'evenwater.logReading', title: vscode.l10n.t('Log now'), arguments: [vscode.Uri.parse(this.#state!.note)] };
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
    void vscode.commands.executeCommand('setContext', 'evenwater.runIsOn', this.#state !== null);
  }

  async #remember(state: RunState | null): Promise<void> {
    this.#state = state;
    await this.#context.workspaceState.update(storedAs, state ?? undefined);
  }

  async #tick(): Promise<void> {
    const state = this.#state;
    if (!state || !this.#item) return;
    const address = vscode.Uri.parse(state.note);
    const note = await this.#noteOf(address);
    const now = Date.now();
    const plan = note && planRow(note, now);
    if (!note?.protocol || !plan) return;
    const moment = momentOf(plan, now);
    const { zone } = note.protocol;
    if (moment.kind === 'over') {
      this.#show(`$(check) ${vscode.l10n.t('The run is over')}`, vscode.l10n.t('Every planned time has passed.'), false);
      return;
    }
    const clock = formatClock(moment.kind === 'due' ? moment.slot : moment.next, zone);
    if (moment.kind === 'due') this.#show(`$(bell) ${vscode.l10n.t('{0} is due', clock)}`, vscode.l10n.t('Log the readings of {0} now', clock), true);
    else this.#show(`$(watch) ${vscode.l10n.t('{0} in {1}', clock, countdown(moment.left))}`, vscode.l10n.t('The next reading is due at {0}', clock), false);
    const quiet = isQuiet(vscode.workspace.getConfiguration('evenwater', address).get<string>('quietHours', ''), now, zone);
    if (moment.kind === 'due' && shouldTell(state, moment, now, quiet) && !this.#telling) await this.#tell(state, moment.slot, clock);
  }

  #show(text: string, tooltip: string, loud: boolean): void {
    const item = this.#item;
    if (!item || item.text === text) return;
    item.text = text;
    item.tooltip = tooltip;
    item.backgroundColor = loud ? new vscode.ThemeColor('statusBarItem.warningBackground') : undefined;
    item.show();
  }

  async #tell(state: RunState, slot: Instant, clock: string): Promise<void> {
    this.#telling = true;
    try {
      const speaks = await this.#lease(state.note);
      // Whoever speaks, this slot is told.
      await this.#remember({ ...state, told: [...state.told, slot].slice(-200), laterUntil: null });
      if (!speaks) return;
      const logNow = vscode.l10n.t('Log now');
      const notYet = vscode.l10n.t('Later');
      void vscode.window.showInformationMessage(vscode.l10n.t('The readings of {0} are due.', clock), logNow, notYet).then(async (chosen) => {
        if (chosen === logNow) await vscode.commands.executeCommand('evenwater.logReading', vscode.Uri.parse(state.note));
        if (chosen === notYet && this.#state) await this.#remember({ ...this.#state, laterUntil: Date.now() + later });
      });
    } finally {
      this.#telling = false;
    }
  }

  /** True when this window is the one that speaks for the note. */
  async #lease(note: string): Promise<boolean> {
    const file = vscode.Uri.joinPath(this.#context.globalStorageUri, 'runs', `${bytesToHex(sha256(utf8ToBytes(note))).slice(0, 16)}.json`);
    const held = async () => {
      try {
        return readLease(new TextDecoder().decode(await vscode.workspace.fs.readFile(file)));
      } catch {
        return null; // Nobody holds it.
      }
    };
    if (!mayTake(await held(), this.#window, Date.now())) return false;
    try {
      await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(JSON.stringify({ window: this.#window, until: Date.now() + leaseTime })));
      await new Promise((resolve) => { setTimeout(resolve, 300); });
      // Two windows that wrote at once: the last one stands.
      return (await held())?.window === this.#window;
    } catch (error) {
      this.#log.warn(`The lease of a run could not be written: ${String(error)}`);
      return true;
    }
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
