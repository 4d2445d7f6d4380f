// Everything that writing a note does to files, behind one port: tests make it fail at any step, as a full disk would.
import { access, chmod, chown, constants, mkdir, open, readdir, readFile, realpath, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';

export interface FileState { readonly mode: number; readonly owner: number; readonly group: number; readonly modified: number }

export interface FilePort {
  read(file: string): Promise<Uint8Array>;
  state(file: string): Promise<FileState>;
  /** The file itself, where the name is a link. */
  realPath(file: string): Promise<string>;
  /** True when the file may be written: by its mode, and by us. */
  mayWrite(file: string): Promise<boolean>;
  /** Makes a file that was not there (EEXIST otherwise) and returns when its bytes are on disk. */
  create(file: string, bytes: Uint8Array, like?: FileState): Promise<void>;
  /** Puts a file in the place of another in one step, and returns when the folder is on disk. */
  replace(from: string, to: string): Promise<void>;
  remove(file: string): Promise<void>;
  list(folder: string): Promise<string[]>;
  makeFolder(folder: string): Promise<void>;
}

export const diskPort: FilePort = {
  read: (file) => readFile(file),
  async state(file) {
    const { mode, uid, gid, mtimeMs } = await stat(file);
    return { mode, owner: uid, group: gid, modified: mtimeMs };
  },
  realPath: (file) => realpath(file),
  async mayWrite(file) {
    // The superuser may write anything; a file that nobody may write is left alone all the same.
    if (((await stat(file)).mode & 0o222) === 0) return false;
    return access(file, constants.W_OK).then(() => true, () => false);
  },
  async create(file, bytes, like) {
    const handle = await open(file, 'wx', like ? like.mode & 0o777 : 0o600);
    try {
      await handle.writeFile(bytes);
      if (like) {
        await chmod(file, like.mode & 0o7777).catch(() => undefined);
        // Only the superuser can keep another owner; anybody else becomes it, as with any editor.
        await chown(file, like.owner, like.group).catch(() => undefined);
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
  async replace(from, to) {
    await rename(from, to);
    await syncFolder(path.dirname(to));
  },
  remove: (file) => rm(file, { force: true }),
  list: (folder) => readdir(folder),
  async makeFolder(folder) { await mkdir(folder, { recursive: true, mode: 0o700 }); },
};

/** Windows cannot open a folder; there the rename itself is what counts. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  try {
    await handle?.sync().catch(() => undefined);
  } finally {
    await handle?.close();
  }
}

/** The system's short name of an error (`ENOSPC`); empty for anything else. */
export function errorCode(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string' ? error.code : '';
}
