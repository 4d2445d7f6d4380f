// Finds and reads notes and their data files on disk.
import { lstat, readdir, readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import { wrongUse } from './command.ts';

export const noteEnding = '.tank.md';

/** A note read from disk. `name` is the path as the user gave it, with forward slashes. */
export interface NoteFile {
  readonly name: string;
  readonly path: string;
  readonly text: string;
  readonly note: Note;
  /** The file as it is on disk. */
  readonly bytes: Uint8Array;
}

const slashes = (name: string): string => name.split(path.sep).join('/');

/** The notes that the given paths mean: a file is itself; a folder is every `*.tank.md` below it, dot folders and node_modules left out. */
export async function findNotes(paths: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const each of paths) {
    const kind = await stat(each).catch(() => null);
    if (!kind) throw wrongUse('no-file-or-folder', { name: each });
    if (kind.isDirectory()) found.push(...await notesBelow(each)); else found.push(each);
  }
  const unique = [...new Set(found.map(slashes))];
  if (unique.length === 0) throw wrongUse('no-note-found', { ending: noteEnding, paths });
  return unique.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
}

async function notesBelow(folder: string): Promise<string[]> {
  const found: string[] = [];
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => { throw wrongUse('folder-unreadable', { name: folder }); });
  for (const entry of entries) {
    const full = path.join(folder, entry.name);
    if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules') found.push(...await notesBelow(full));
    else if (entry.isFile() && entry.name.endsWith(noteEnding)) found.push(full);
  }
  return found;
}

/** Reads a note and the data files it refers to. Throws WrongUse when the note itself cannot be read. */
export async function readNoteFile(name: string): Promise<NoteFile> {
  const bytes = await readFile(name).catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'ENOENT' ? wrongUse('no-file', { name }) : wrongUse('file-unreadable', { name, error: error.code ?? error.message });
  });
  return { ...await noteFromText(name, decodeNote(name, bytes)), bytes };
}

/** The text of a note's bytes, without a byte order mark. Throws WrongUse for anything but UTF-8. */
export function decodeNote(name: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw wrongUse('not-utf8', { name });
  }
}

/** Reads a note from its text, with the data files beside it. */
export async function noteFromText(name: string, text: string): Promise<Omit<NoteFile, 'bytes'>> {
  const options = { fileIsNote: name.endsWith(noteEnding) };
  const first = readNote(text, undefined, undefined, options);
  if (first.wants.length === 0) return { name: slashes(name), path: name, text, note: first };
  const files = new Map<string, Uint8Array | null>();
  for (const wanted of first.wants) files.set(wanted, await readDataFile(path.dirname(name), wanted));
  return { name: slashes(name), path: name, text, note: readNote(text, files, first, options) };
}

/** Bytes of a data file inside the note's folder tree; null where there is none. A link that leads out of the tree counts as none. */
async function readDataFile(folder: string, wanted: string): Promise<Uint8Array | null> {
  try {
    const base = await realpath(folder);
    const target = await realpath(path.resolve(folder, wanted));
    if (target !== base && !target.startsWith(base + path.sep)) return null;
    if (!(await lstat(target)).isFile()) return null;
    return await readFile(target);
  } catch {
    return null;
  }
}

/** `night.tank.md` and `night.md` both have the stem `night`. */
export function stemOf(name: string): string {
  return path.basename(name).replace(/(\.tank)?\.(md|markdown)$/i, '');
}
