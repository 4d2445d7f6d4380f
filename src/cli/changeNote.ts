// Changes a note on disk so that it is whole at every moment: a lock, a look at what stands there now, a new file beside it,
// one rename. Mode, byte order mark and line breaks stay as they were.
import path from 'node:path';
import type { MessageArguments } from '../problems/problem.ts';
import { said, type CommandSentence } from '../words/commandLine.ts';
import { Told } from './command.ts';
import { errorCode, type FilePort } from './filePort.ts';
import { withLock } from './noteLock.ts';
import { decodeNote } from './noteFiles.ts';

/** What a change makes of the text; `text` null leaves the file as it is. */
export interface Change<T> { readonly text: string | null; readonly value: T }

/** Thrown when the file cannot be written: who to tell what is decided above. */
export class CannotWrite extends Told {
  readonly reason: 'read-only' | 'full' | 'gone' | 'changing' | 'other';
  constructor(reason: CannotWrite['reason'], code: CommandSentence, args: MessageArguments) {
    super(said(code, args));
    this.reason = reason;
  }
}

const mark = [0xef, 0xbb, 0xbf];
const hasMark = (bytes: Uint8Array): boolean => mark.every((byte, at) => bytes[at] === byte);
const same = (a: Uint8Array, b: Uint8Array): boolean => Buffer.from(a.buffer, a.byteOffset, a.length).equals(b);

/**
 * Reads the note, asks `change` for its new text, and puts it on disk; returns when it is there. `change` is asked again
 * when another program wrote the file meanwhile. Throws CannotWrite, NoteIsLocked, or what `change` throws.
 */
export async function changeNote<T>(port: FilePort, name: string, change: (text: string) => Promise<Change<T>>): Promise<T> {
  const file = await telling(name, () => port.realPath(name));
  if (!await telling(name, () => port.mayWrite(file))) throw new CannotWrite('read-only', 'read-only', { name });
  let entered = false;
  try {
    return await withLock(port, file, async () => {
      entered = true;
      await removeLeftovers(port, file);
      for (let round = 0; round < 8; round += 1) {
        const before = await telling(name, () => port.read(file));
        const wanted = await change(decodeNote(name, before));
        if (wanted.text === null) return wanted.value;
        const text = new TextEncoder().encode(wanted.text);
        if (await telling(name, () => put(port, file, before, hasMark(before) ? Buffer.concat([Buffer.from(mark), text]) : text))) return wanted.value;
      }
      throw new CannotWrite('changing', 'keeps-changing', { name });
    });
  } catch (error) {
    throw entered || errorCode(error) === '' ? error : cannotWrite(name, error);
  }
}

const partial = (file: string): string => path.join(path.dirname(file), `.${path.basename(file)}.${process.pid}.part`);

/** False when the file is no longer as it was; then nothing was written. */
async function put(port: FilePort, file: string, before: Uint8Array, after: Uint8Array): Promise<boolean> {
  const beside = partial(file);
  try {
    await port.create(beside, after, await port.state(file));
    if (!same(await port.read(file), before)) {
      await port.remove(beside);
      return false;
    }
    await port.replace(beside, file);
    return true;
  } catch (error) {
    await port.remove(beside).catch(() => undefined);
    throw error;
  }
}

/** What a process that was killed left beside the note. Only we write here: the lock is ours. */
async function removeLeftovers(port: FilePort, file: string): Promise<void> {
  const folder = path.dirname(file);
  const start = `.${path.basename(file)}.`;
  const names = await port.list(folder).catch(() => []);
  for (const each of names) if (each.startsWith(start) && /^(?:\d+\.part|lock-\d+)$/.test(each.slice(start.length))) await port.remove(path.join(folder, each)).catch(() => undefined);
}

async function telling<T>(name: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw errorCode(error) === '' ? error : cannotWrite(name, error);
  }
}

function cannotWrite(name: string, error: unknown): CannotWrite {
  const code = errorCode(error);
  if (code === 'ENOENT') return new CannotWrite('gone', 'no-file', { name });
  if (code === 'ENOSPC' || code === 'EDQUOT') return new CannotWrite('full', 'disk-full', { name });
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return new CannotWrite('read-only', 'not-writable', { name, error: code });
  return new CannotWrite('other', 'not-changed', { name, error: code });
}
