// The journal of the command line: each row is on disk here before the note is touched, one file a row, and goes when the
// note holds it. It lives in the user's state folder, so that folders of notes stay clean.
import { createHash } from 'node:crypto';
import os from 'node:os';
import path from 'node:path';
import { pendingText, readPending, type PendingRow } from '../edits/pendingRow.ts';
import { errorCode, type FilePort } from './filePort.ts';

/** `EVENWATER_STATE`, else the usual place of the system for what programs keep between runs. */
export function stateFolder(environment: NodeJS.ProcessEnv = process.env, platform = process.platform): string {
  const home = os.homedir();
  const own = environment['EVENWATER_STATE'];
  if (own) return path.resolve(own);
  if (platform === 'win32') return path.join(environment['LOCALAPPDATA'] ?? path.join(home, 'AppData', 'Local'), 'evenwater');
  if (platform === 'darwin') return path.join(home, 'Library', 'Application Support', 'evenwater');
  const state = environment['XDG_STATE_HOME'];
  return path.join(state && path.isAbsolute(state) ? state : path.join(home, '.local', 'state'), 'evenwater');
}

export class Journal {
  readonly #port: FilePort;
  readonly folder: string;

  /** The journal of one note; `note` is its real path. */
  constructor(port: FilePort, note: string, state = stateFolder()) {
    this.#port = port;
    const name = `${path.basename(note).replace(/[^\w.-]/g, '_')}-${createHash('sha256').update(note).digest('hex').slice(0, 12)}`;
    this.folder = path.join(state, 'journal', name);
  }

  /** Returns when the row is on disk. */
  async add(row: PendingRow): Promise<void> {
    await this.#port.makeFolder(this.folder);
    const file = this.#file(row.id);
    try {
      await this.#port.create(file, new TextEncoder().encode(pendingText(row)));
    } catch (error) {
      if (errorCode(error) !== 'EEXIST') await this.#port.remove(file).catch(() => undefined);
      throw error;
    }
  }

  /** Rows that are still on their way, the first one first. */
  async rows(): Promise<PendingRow[]> {
    const names = await this.#port.list(this.folder).catch(() => []);
    const rows: PendingRow[] = [];
    for (const name of names.filter((each) => each.endsWith('.json')).sort()) {
      const bytes = await this.#port.read(path.join(this.folder, name)).catch(() => null);
      const row = bytes && readPending(new TextDecoder().decode(bytes));
      // One that is torn was never acknowledged; its maker was killed before the note was touched.
      if (row) rows.push(row);
    }
    return rows;
  }

  async remove(row: PendingRow): Promise<void> {
    await this.#port.remove(this.#file(row.id)).catch(() => undefined);
  }

  #file(id: string): string {
    return path.join(this.folder, `${id.replace(/[^\w-]/g, '')}.json`);
  }
}

/** Ids sort by the time they were made. */
export function newId(now: number): string {
  return `${now.toString(36).padStart(9, '0')}-${process.pid.toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
}
