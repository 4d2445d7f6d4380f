// Writes files whole or not at all, below one folder.
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { wrongUse } from './command.ts';

/** Writes a file whole or not at all: into a temporary file beside it, then renamed. `name` may have folders, with forward slashes. */
export async function writeWhole(folder: string, name: string, content: string | Uint8Array): Promise<string> {
  const target = path.join(folder, ...name.split('/'));
  const temporary = path.join(path.dirname(target), `.${path.basename(target)}.${process.pid}.tmp`);
  try {
    await mkdir(path.dirname(target), { recursive: true });
    await writeFile(temporary, content);
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined);
    throw wrongUse('not-written', { name: target, error: (error as NodeJS.ErrnoException).code ?? String(error) });
  }
  return target.split(path.sep).join('/');
}

/** Reads a post: UTF-8 text. Throws WrongUse when it cannot be read. */
export async function readPost(name: string): Promise<string> {
  const bytes = await readFile(name).catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'ENOENT' ? wrongUse('no-file', { name }) : wrongUse('file-unreadable', { name, error: error.code ?? error.message });
  });
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: false }).decode(bytes);
  } catch {
    throw wrongUse('post-not-utf8', { name });
  }
}
