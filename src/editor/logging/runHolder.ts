// One window's hold on the runs that were started. What is stored is shared by every window: a run that one of them ends is
// over in all, a reminder that one has given no other repeats, and a window that is loaded again finds its run.
import type { Instant } from '../../time/instant.ts';
import { claimTime, later, mayClaim, newRun, readRunState, runText, shouldTell, toldOf, type RunState } from './runState.ts';

/** Where runs are stored, one text a note. Nothing here throws. */
export interface RunStorage {
  /** Null where no such run is stored; an empty text where that cannot be told. */
  readonly read: (note: string) => Promise<string | null>;
  /** False when it could not be stored. */
  readonly write: (note: string, text: string) => Promise<boolean>;
  readonly remove: (note: string) => Promise<void>;
  /** Texts of all runs. */
  readonly all: () => Promise<readonly string[]>;
}

/** What this window needs to know of the world; a test has its own. */
export interface RunWorld { readonly now: () => Instant; readonly wait: (milliseconds: number) => Promise<void> }

/** Milliseconds after which two windows that claimed a reminder at once see whose claim stands. */
export const claimRest = 300;

export class RunHolder {
  readonly #storage: RunStorage;
  readonly #world: RunWorld;
  readonly #window: string;
  #state: RunState | null = null;
  /** A storage that cannot be written: the run then lives in this window alone. */
  #alone = false;

  constructor(storage: RunStorage, world: RunWorld, window: string) {
    this.#storage = storage;
    this.#world = world;
    this.#window = window;
  }

  get state(): RunState | null {
    return this.#state;
  }

  async start(note: string): Promise<void> {
    if (this.#state && this.#state.note !== note) await this.end();
    await this.#store(newRun(note, this.#world.now()));
  }

  /** Takes up a run that was started earlier or in another window, for a note that this window has to do with. */
  async takeUp(concerns: (note: string) => boolean): Promise<boolean> {
    if (this.#state) return false;
    const runs = (await this.#storage.all()).map(readRunState).filter((each) => each !== null && concerns(each.note));
    this.#state = runs.reduce<RunState | null>((last, each) => (last === null || each!.started > last.started ? each : last), null);
    return this.#state !== null;
  }

  async end(): Promise<void> {
    const { note } = this.#state ?? {};
    this.#state = null;
    this.#alone = false;
    if (note !== undefined) await this.#storage.remove(note);
  }

  /** Sees what other windows did meanwhile; a run that is no longer stored has ended. */
  async look(): Promise<void> {
    const held = this.#state;
    if (!held || this.#alone) return;
    const text = await this.#storage.read(held.note);
    // A text that cannot be read is one that another window is just writing.
    if (this.#state === held) this.#state = text === null ? null : readRunState(text) ?? held;
  }

  /** True when this window is to tell the keeper of the slot now, and no other has done or is about to. */
  async takesTelling(slot: Instant, quiet: boolean): Promise<boolean> {
    if (!this.#state || !shouldTell(this.#state, slot, this.#world.now(), quiet)) return false;
    await this.look();
    const state = this.#state;
    const now = this.#world.now();
    if (!state || !shouldTell(state, slot, now, quiet) || !mayClaim(state, this.#window, now)) return false;
    await this.#store({ ...state, claim: { window: this.#window, until: now + claimTime } });
    if (!this.#alone) await this.#world.wait(claimRest);
    await this.look();
    // Two windows that claimed at once: the last one stands.
    if (this.#state?.claim?.window !== this.#window) return false;
    await this.#store(toldOf(this.#state, slot));
    return true;
  }

  async putOff(slot: Instant): Promise<void> {
    await this.look();
    if (this.#state) await this.#store({ ...this.#state, later: { slot, until: this.#world.now() + later } });
  }

  async #store(state: RunState): Promise<void> {
    this.#state = state;
    this.#alone = !await this.#storage.write(state.note, runText(state));
  }
}
