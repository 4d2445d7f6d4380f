// One writer at a time: a lock file beside the note, taken over when the process that made it is gone.
import os from 'node:os';
import path from 'node:path';
import { errorCode, type FilePort } from './filePort.ts';

/** A lock older than this is left over: writing a note takes far less. */
const oldest = 60_000;
/** A lock that was made but not filled, because its maker was killed in between. */
const oldestEmpty = 1_000;

/** Thrown when another process keeps the note for too long. */
export class NoteIsLocked extends Error {}

export const lockFile = (note: string): string => path.join(path.dirname(note), `.${path.basename(note)}.lock`);

/** Runs `work` while no other process writes the note; waits for a living one for at most `patience` milliseconds. */
export async function withLock<T>(port: FilePort, note: string, work: () => Promise<T>, patience = 10_000): Promise<T> {
  const file = lockFile(note);
  const own = `${process.pid} ${os.hostname()} ${Date.now()}-${Math.random().toString(36).slice(2)}`;
  const end = Date.now() + patience;
  for (;;) {
    try {
      await port.create(file, new TextEncoder().encode(own));
      break;
    } catch (error) {
      // What a full disk lets be made but not filled is taken away again.
      if (errorCode(error) !== 'EEXIST') {
        if (errorCode(error) === 'ENOSPC' || errorCode(error) === 'EDQUOT') await port.remove(file).catch(() => undefined);
        throw error;
      }
    }
    if (await takeAwayStale(port, file)) continue;
    if (Date.now() > end) throw new NoteIsLocked(file);
    await new Promise((resolve) => { setTimeout(resolve, 15 + Math.random() * 25); });
  }
  try {
    return await work();
  } finally {
    await port.remove(file).catch(() => undefined);
  }
}

/** Takes away a lock whose maker is gone. True when it is worth trying again at once. */
async function takeAwayStale(port: FilePort, file: string): Promise<boolean> {
  const before = await look(port, file);
  if (before === null) return true;
  if (!isStale(before.text, Date.now() - before.modified)) return false;
  // Another process may have done the same a moment ago and made its own: only the lock that was looked at goes.
  const aside = `${file}-${process.pid}`;
  await port.replace(file, aside).catch(() => undefined);
  const taken = await look(port, aside);
  if (taken && taken.text !== before.text) await port.replace(aside, file).catch(() => undefined);
  else await port.remove(aside).catch(() => undefined);
  return true;
}

async function look(port: FilePort, file: string): Promise<{ text: string; modified: number } | null> {
  try {
    const { modified } = await port.state(file);
    return { text: new TextDecoder().decode(await port.read(file)), modified };
  } catch {
    return null;
  }
}

function isStale(text: string, age: number): boolean {
  if (text === '') return age > oldestEmpty;
  const [pid, host] = text.split(' ');
  return age > oldest || (host === os.hostname() && !isAlive(Number(pid)));
}

function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}
