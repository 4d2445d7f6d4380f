// The data files that notes refer to: loaded through the editor's file systems, watched, and handed to readNote as bytes.
// A file that could not be found is remembered as missing until it appears.
import * as vscode from 'vscode';
import type { FileContents } from '../readings/types.ts';

/** Larger files are not read: they would not fit a note's table anyway. */
const largestFile = 64 * 1024 * 1024;

interface Folder {
  readonly contents: Map<string, Uint8Array | null>;
  readonly loading: Map<string, Promise<void>>;
  readonly watchers: Map<string, vscode.Disposable>;
}

export class DataFiles implements vscode.Disposable {
  readonly #folders = new Map<string, Folder>();
  readonly #changed = new vscode.EventEmitter<vscode.Uri>();
  readonly #log: vscode.LogOutputChannel;
  /** A file of this note was loaded, changed or lost. */
  readonly onDidChange = this.#changed.event;

  constructor(log: vscode.LogOutputChannel) {
    this.#log = log;
  }

  /** What is loaded so far for a note. A new map after each change, so that it can serve as a cache key. */
  contentsFor(note: vscode.Uri): FileContents {
    return this.#folders.get(note.toString())?.contents ?? none;
  }

  /** Loads the files that are not there yet, and watches them. */
  want(note: vscode.Uri, paths: readonly string[]): void {
    if (paths.length === 0) return;
    const folder = this.#folderOf(note);
    for (const path of paths) {
      if (folder.contents.has(path) || folder.loading.has(path)) continue;
      const address = insideFolder(note, path);
      if (!address) continue;
      this.#load(note, path, address);
      if (!folder.watchers.has(path)) folder.watchers.set(path, this.#watch(note, path, address));
    }
  }

  /** Resolves when nothing wanted by this note is still loading. */
  async settled(note: vscode.Uri): Promise<void> {
    await Promise.all(this.#folders.get(note.toString())?.loading.values() ?? []);
  }

  forget(note: vscode.Uri): void {
    const folder = this.#folders.get(note.toString());
    if (!folder) return;
    for (const watcher of folder.watchers.values()) watcher.dispose();
    this.#folders.delete(note.toString());
  }

  dispose(): void {
    for (const folder of this.#folders.values()) for (const watcher of folder.watchers.values()) watcher.dispose();
    this.#folders.clear();
    this.#changed.dispose();
  }

  #folderOf(note: vscode.Uri): Folder {
    const key = note.toString();
    const known = this.#folders.get(key);
    if (known) return known;
    const made: Folder = { contents: new Map(), loading: new Map(), watchers: new Map() };
    this.#folders.set(key, made);
    return made;
  }

  #load(note: vscode.Uri, path: string, address: vscode.Uri): void {
    const folder = this.#folderOf(note);
    const reading = this.#read(address).then((bytes) => {
      if (this.#folders.get(note.toString())?.loading.get(path) !== reading) return;
      folder.loading.delete(path);
      const contents = new Map(folder.contents).set(path, bytes);
      this.#folders.set(note.toString(), { ...folder, contents });
      this.#changed.fire(note);
    });
    folder.loading.set(path, reading);
  }

  /** The bytes; null when the file is not there or cannot be read. Never rejects. */
  async #read(address: vscode.Uri): Promise<Uint8Array | null> {
    try {
      const { size } = await vscode.workspace.fs.stat(address);
      if (size <= largestFile) return await vscode.workspace.fs.readFile(address);
      this.#log.warn(`${address.path} has ${size} bytes and is not read: at most ${largestFile} bytes are.`);
    } catch (error) {
      this.#log.info(`${address.path} could not be read: ${error instanceof Error ? error.message : String(error)}`);
    }
    return null;
  }

  #watch(note: vscode.Uri, path: string, address: vscode.Uri): vscode.Disposable {
    const name = address.path.slice(address.path.lastIndexOf('/') + 1);
    const watcher = vscode.workspace.createFileSystemWatcher(new vscode.RelativePattern(vscode.Uri.joinPath(address, '..'), escapeGlob(name)));
    const reload = () => this.#load(note, path, address);
    return vscode.Disposable.from(watcher, watcher.onDidChange(reload), watcher.onDidCreate(reload), watcher.onDidDelete(reload));
  }
}

const none: FileContents = new Map();

/** The address of a data file; null for anything that is not a plain path inside the note's own folder. */
export function insideFolder(note: vscode.Uri, path: string): vscode.Uri | null {
  const parts = path.replaceAll('\\', '/').split('/');
  if (note.scheme === 'untitled' || path === '' || path.includes('\0') || path.includes(':')) return null;
  if (parts.some((part) => part === '..' || part === '')) return null;
  return vscode.Uri.joinPath(note, '..', ...parts);
}

const escapeGlob = (name: string) => name.replace(/[[\]{}*?!]/g, (sign) => `[${sign}]`);
